import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CutProblem } from '../../language/cutting/index.ts';
import { faultsOf } from './brute.ts';
import { planOf, problemOf } from './figures.ts';

/** Roofs of realistic size: quarter inches, equal pieces in twos and fours, some pieces longer than a 25 ft roll. */
const roof: fc.Arbitrary<CutProblem> = fc
  .record({
    sizes: fc.array(fc.tuple(fc.integer({ min: 56, max: 1960 }), fc.constantFrom(1, 2, 4)), {
      minLength: 3,
      maxLength: 9,
    }),
    menu: fc.constantFrom<[number, number][]>(
      [
        [1200, 3450],
        [2400, 6100],
      ],
      [[1200, 3450]],
      [
        [1440, 4137],
        [2424, 6149],
        [3600, 8883],
      ],
    ),
    offcuts: fc.array(fc.integer({ min: 144, max: 1056 }), { maxLength: 3 }),
  })
  .map(({ sizes, menu, offcuts }) => {
    const pieces = sizes.flatMap(([size, count]) => Array<number>(count).fill(size));
    return { ...problemOf(pieces, menu, offcuts, { lap: 8, leastPart: 48 }), budget: { nodes: 20_000 } };
  });

const permuted = <T>(all: readonly T[], seed: number): T[] =>
  all
    .map((one, i) => ({ one, key: ((i + 1) * (2 * seed + 1) * 7919) % 10_007 }))
    .sort((a, b) => a.key - b.key)
    .map(({ one }) => one);

/** First-fit-decreasing into rolls of one kind, offcuts first, written apart from the engine. */
function firstFitCost(problem: CutProblem, roll: CutProblem['rolls'][number]): number {
  const rooms = problem.offcuts.map((offcut) => offcut.length).sort((a, b) => a - b);
  for (const { length } of [...problem.pieces].sort((a, b) => b.length - a.length)) {
    const place = rooms.findIndex((room) => room >= length);
    if (place >= 0) rooms[place]! -= length;
    else rooms.push(roll.length - length);
  }
  return (rooms.length - problem.offcuts.length) * roll.price;
}

const RUNS = { numRuns: 150, seed: 31 };

describe('a changed problem', () => {
  it('is always answered by a plan that can be followed, at the same cost each time', () => {
    fc.assert(
      fc.property(roof, (problem) => {
        const plan = planOf(problem);
        expect(faultsOf(problem, plan)).toEqual([]);
        expect(planOf(problem)).toEqual(plan);
      }),
      RUNS,
    );
  });

  it('never costs more than first-fit-decreasing into rolls of any one kind that holds all pieces', () => {
    fc.assert(
      fc.property(roof, (problem) => {
        const longest = Math.max(...problem.pieces.map((piece) => piece.length));
        const { cost } = planOf(problem);
        for (const roll of problem.rolls) {
          if (roll.length >= longest) expect(cost).toBeLessThanOrEqual(firstFitCost(problem, roll));
        }
      }),
      RUNS,
    );
  });

  it('costs the same when pieces, rolls and offcuts are told in another order', () => {
    fc.assert(
      fc.property(roof, fc.nat(1000), (problem, seed) => {
        const plan = planOf(problem);
        const other = planOf({
          ...problem,
          pieces: permuted(problem.pieces, seed),
          rolls: permuted(problem.rolls, seed),
          offcuts: permuted(problem.offcuts, seed),
        });
        expect(other.splices).toBe(plan.splices);
        if (plan.proof !== 'none' && other.proof !== 'none') expect(other.cost).toBe(plan.cost);
        if (plan.longestLeftProven && other.longestLeftProven) expect(other.longestLeft).toBe(plan.longestLeft);
      }),
      RUNS,
    );
  });

  it('is cut alike when every length is doubled', () => {
    fc.assert(
      fc.property(roof, (problem) => {
        const double = <T extends { readonly length: number }>(all: readonly T[]): T[] =>
          all.map((one) => ({ ...one, length: 2 * one.length }));
        const plan = planOf(problem);
        const twice = planOf({
          ...problem,
          pieces: double(problem.pieces),
          rolls: double(problem.rolls),
          offcuts: double(problem.offcuts),
          splice: { lap: 16, leastPart: 96 },
        });
        expect(twice).toMatchObject({ cost: plan.cost, splices: plan.splices, proof: plan.proof });
        if (plan.longestLeftProven) expect(twice.longestLeft).toBe(2 * plan.longestLeft);
      }),
      RUNS,
    );
  });

  it('does not cost more, nor more splices, with one more offcut', () => {
    fc.assert(
      fc.property(roof, fc.integer({ min: 144, max: 1056 }), (problem, length) => {
        const plan = planOf(problem);
        const more = planOf({ ...problem, offcuts: [...problem.offcuts, { id: 'more', length }] });
        expect(more.splices).toBe(plan.splices);
        if (more.proof !== 'none') expect(more.cost).toBeLessThanOrEqual(plan.cost);
        expect(more.lowerBound).toBeLessThanOrEqual(plan.cost);
      }),
      RUNS,
    );
  });

  it('does not cost more with one more roll on sale', () => {
    fc.assert(
      fc.property(roof, fc.integer({ min: 1, max: 9000 }), (problem, price) => {
        const plan = planOf(problem);
        const more = planOf({ ...problem, rolls: [...problem.rolls, { id: 'more', length: 1100, price }] });
        if (more.proof !== 'none') expect(more.cost).toBeLessThanOrEqual(plan.cost);
      }),
      RUNS,
    );
  });
});
