import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutFleet } from '../../language/cutting/index.ts';
import { bruteForceVoluntary, faultsOf } from './brute.ts';
import { planOf, problemOf } from './figures.ts';

const EDGES = problemOf(
  [340, 340],
  [
    [600, 6100],
    [300, 3450],
  ],
  [],
  { lap: 2, leastPart: 12 },
);

const small = fc
  .record({
    rolls: fc.array(fc.tuple(fc.integer({ min: 8, max: 14 }), fc.integer({ min: 1, max: 9 })), {
      minLength: 1,
      maxLength: 2,
    }),
    offcuts: fc.array(fc.integer({ min: 2, max: 9 }), { maxLength: 1 }),
    shares: fc.array(fc.integer({ min: 300, max: 999 }), { minLength: 2, maxLength: 4 }),
    lap: fc.integer({ min: 0, max: 2 }),
    leastPart: fc.integer({ min: 1, max: 3 }),
  })
  .map(({ rolls, offcuts, shares, lap, leastPart }) => {
    const longest = Math.max(...rolls.map(([length]) => length));
    const pieces = shares.map((share) => 1 + Math.floor((share * longest) / 1000));
    return problemOf(pieces, rolls, offcuts, { lap, leastPart });
  });

describe('splices for money', () => {
  it('saves a roll of two 28 ft edges, as worked by hand', () => {
    // 50 + 25 ft hold both edges of 28 ft 4 in with one splice; trade notes 2.3 has the prices.
    const problem = { ...EDGES, splice: { ...EDGES.splice, voluntary: true as const } };
    const plan = planOf(problem);
    expect(faultsOf(problem, plan)).toEqual([]);
    expect(plan).toMatchObject({ cost: 9550, lowerBound: 9550, proof: 'volume', splices: 1 });
  });

  it('is told as a hint where it is not allowed', () => {
    expect(planOf(EDGES)).toMatchObject({ cost: 12200, splices: 0, oneSpliceSaves: 2650 });
    expect(planOf(problemOf([300, 300], [[600, 6100]]))).not.toHaveProperty('oneSpliceSaves');
  });

  it('costs what trying everything costs, or says that it is not proven', () => {
    const seen = { cases: 0, equal: 0, helped: 0 };
    fc.assert(
      fc.property(small, (plain) => {
        const problem = { ...plain, splice: { ...plain.splice, voluntary: true as const } };
        const truth = bruteForceVoluntary(problem, 2);
        const plan = planOf(problem);
        const without = planOf(plain);
        expect(faultsOf(problem, plan)).toEqual([]);
        expect(plan.cost).toBeLessThanOrEqual(without.cost);
        expect(plan.lowerBound).toBeLessThanOrEqual(truth.cost);
        if (plan.splices <= 2) expect(plan.cost).toBeGreaterThanOrEqual(truth.cost);
        if (plan.proof !== 'none') expect(plan).toMatchObject(truth);
        if (without.oneSpliceSaves !== undefined) {
          expect(without.cost - without.oneSpliceSaves).toBeGreaterThanOrEqual(bruteForceVoluntary(plain, 1).cost);
        }
        seen.cases++;
        if (plan.cost === truth.cost) seen.equal++;
        if (truth.cost < without.cost) seen.helped++;
      }),
      { numRuns: 300, seed: 71 },
    );
    expect(seen.helped).toBeGreaterThan(20);
    expect(seen.equal / seen.cases).toBeGreaterThan(0.97);
  });

  it('is allowed for in the bound of a fleet, and never makes it dearer', () => {
    fc.assert(
      fc.property(small, (plain) => {
        const problem = { ...plain, splice: { ...plain.splice, voluntary: true as const } };
        const result = cutFleet(problem);
        if (!result.ok) throw new Error(result.reason);
        expect(result.plan.cost).toBeLessThanOrEqual(planOf(plain).cost);
        expect(result.plan.lowerBound).toBeLessThanOrEqual(bruteForceVoluntary(problem, 1).cost);
      }),
      { numRuns: 100, seed: 72 },
    );
  });
});

describe('stretches without splices', () => {
  const edge = (keepOff: readonly (readonly [number, number])[], rolls: [number, number][] = [[300, 3450]]) => {
    const problem = problemOf([410], rolls, [], { lap: 2, leastPart: 12 });
    return { ...problem, pieces: problem.pieces.map((piece) => ({ ...piece, keepOff })) };
  };

  it('a splice moves out of a stretch by the least that is enough', () => {
    // The first part fills the roll: the splice lies at 299 unless it may not.
    expect(planOf(edge([])).joints).toEqual([{ piece: 'p1', after: 1, at: 299, inKeepOff: false }]);
    const problem = edge([[280, 320]]);
    const plan = planOf(problem);
    expect(faultsOf(problem, plan)).toEqual([]);
    expect(plan.joints).toEqual([{ piece: 'p1', after: 1, at: 280, inKeepOff: false }]);
    expect(plan.cost).toBe(6900);
  });

  it('passes several stretches', () => {
    const plan = planOf(
      edge([
        [290, 310],
        [250, 295],
        [200, 240],
      ]),
    );
    expect(plan.joints[0]).toMatchObject({ at: 250, inKeepOff: false });
  });

  it('says so when no stock has the slack', () => {
    const problem = edge([[1, 409]]);
    const plan = planOf(problem);
    expect(faultsOf(problem, plan)).toEqual([]);
    expect(plan.joints).toEqual([{ piece: 'p1', after: 1, at: 299, inKeepOff: true }]);
  });

  it('neither cost nor splices change, and every plan stays one to follow', () => {
    const stretch = fc.tuple(fc.nat(900), fc.integer({ min: 1, max: 200 }));
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 301, max: 900 }), fc.array(stretch, { maxLength: 3 })), {
          minLength: 1,
          maxLength: 3,
        }),
        fc.array(fc.integer({ min: 20, max: 200 }), { maxLength: 4 }),
        (long, short) => {
          const plain = problemOf([...long.map(([length]) => length), ...short], [[300, 3450]], [], {
            lap: 2,
            leastPart: 12,
          });
          const pieces = plain.pieces.map((piece, i) => ({
            ...piece,
            keepOff: (long[i]?.[1] ?? []).map(([from, wide]) => [from, from + wide] as const),
          }));
          const problem = { ...plain, pieces };
          const plan = planOf(problem);
          const before = planOf(plain);
          expect(faultsOf(problem, plan)).toEqual([]);
          expect(plan).toMatchObject({ cost: before.cost, splices: before.splices });
          const count = (joints: typeof plan.joints): number =>
            joints.filter(({ piece, at }) =>
              pieces.find((one) => one.id === piece)!.keepOff.some(([from, to]) => from < at && at < to),
            ).length;
          expect(count(plan.joints)).toBeLessThanOrEqual(count(before.joints));
        },
      ),
      { numRuns: 300, seed: 73 },
    );
  });
});
