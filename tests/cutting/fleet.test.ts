import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fleetPurchase } from '../../language/cutting/fleet.ts';
import { type CutPlan, type CutProblem, cutFleet, type LinearPrograms } from '../../language/cutting/index.ts';
import { leastMoney } from '../../language/cutting/lattice.ts';
import { makeMenu } from '../../language/cutting/menu.ts';
import { costOf, makeTask } from '../../language/cutting/task.ts';
import { loadLinearPrograms } from '../../server/solver/highs.ts';
import { bruteForce, faultsOf } from './brute.ts';
import { planOf, problemOf } from './figures.ts';

const solver = (await loadLinearPrograms())!;

function fleetPlan(problem: CutProblem, lp?: LinearPrograms): CutPlan {
  const result = cutFleet(problem, lp);
  if (!result.ok) throw new Error(`no plan: ${result.reason} ${result.pieces}`);
  return result.plan;
}

/** Pieces that some roll holds. */
const small = fc
  .record({
    rolls: fc.array(fc.tuple(fc.integer({ min: 8, max: 40 }), fc.integer({ min: 1, max: 9 })), {
      minLength: 1,
      maxLength: 3,
    }),
    offcuts: fc.array(fc.integer({ min: 1, max: 30 }), { maxLength: 2 }),
    shares: fc.array(fc.integer({ min: 0, max: 999 }), { maxLength: 8 }),
  })
  .map(({ rolls, offcuts, shares }) => {
    const longest = Math.max(...rolls.map(([length]) => length));
    return problemOf(
      shares.map((share) => 1 + Math.floor((share * longest) / 1000)),
      rolls,
      offcuts,
    );
  });

/** Yards of some rigs in quarter inches; some have edges that a 25 ft roll does not hold. */
const yard: fc.Arbitrary<CutProblem> = fc
  .record({
    models: fc.array(
      fc.array(fc.tuple(fc.integer({ min: 56, max: 1960 }), fc.constantFrom(1, 2, 4)), { minLength: 3, maxLength: 8 }),
      { minLength: 1, maxLength: 4 },
    ),
    rigs: fc.integer({ min: 3, max: 12 }),
    menu: fc.constantFrom<[number, number][]>(
      [
        [1200, 3450],
        [2400, 6100],
      ],
      [[1200, 3450]],
      [
        [1440, 3449],
        [2424, 6137],
        [3600, 8889],
      ],
    ),
    offcuts: fc.array(fc.integer({ min: 144, max: 1056 }), { maxLength: 4 }),
  })
  .map(({ models, rigs, menu, offcuts }) => {
    const pieces = Array.from({ length: rigs }, (_, r) =>
      models[r % models.length]!.flatMap(([size, count]) => Array<number>(count).fill(size)),
    ).flat();
    return { ...problemOf(pieces, menu, offcuts, { lap: 8, leastPart: 48 }), budget: { nodes: 5_000 } };
  });

describe('the fleet engine on cases small enough to try everything', () => {
  for (const [name, lp] of [
    ['with linear programs', solver],
    ['without', undefined],
  ] as const) {
    it(`finds the least money and never claims more than is true, ${name}`, () => {
      const seen = { cases: 0, equal: 0, proven: 0 };
      fc.assert(
        fc.property(small, (problem) => {
          const truth = bruteForce(problem, 0)!;
          const menu = makeMenu(problem);
          const task = makeTask(
            problem.pieces.map((piece) => piece.length),
            menu.rolls,
            problem.offcuts.map((offcut) => offcut.length),
          );
          const found = fleetPurchase(task, lp, { nodes: 100_000 });
          expect(costOf(task, found.loads)).toBe(found.cost);
          expect(found.cost).toBeGreaterThanOrEqual(truth.cost);
          expect(found.lowerBound).toBeLessThanOrEqual(truth.cost);
          expect(found.volumeBound).toBeLessThanOrEqual(found.lowerBound);
          seen.cases++;
          if (found.cost === truth.cost) seen.equal++;
          if (found.cost === found.lowerBound) seen.proven++;
        }),
        { numRuns: 600, seed: 91 },
      );
      expect(seen.equal).toBe(seen.cases);
      expect(seen.proven).toBe(seen.cases);
    });
  }
});

describe('a yard of rigs', () => {
  const RUNS = { numRuns: 60, seed: 92 };

  it('is always answered by a plan that can be followed, the same each time', () => {
    fc.assert(
      fc.property(yard, (problem) => {
        const plan = fleetPlan(problem, solver);
        expect(faultsOf(problem, plan)).toEqual([]);
        expect(fleetPlan(problem, solver)).toEqual(plan);
      }),
      RUNS,
    );
  });

  it('is never dearer, and its bound never lower, with linear programs than without', () => {
    fc.assert(
      fc.property(yard, (problem) => {
        const plan = fleetPlan(problem, solver);
        const without = fleetPlan(problem);
        expect(faultsOf(problem, without)).toEqual([]);
        expect(plan.cost).toBeLessThanOrEqual(without.cost);
        expect(plan.lowerBound).toBeGreaterThanOrEqual(without.lowerBound);
        expect(without.lowerBound).toBeLessThanOrEqual(plan.cost);
        expect(plan.lowerBound).toBeLessThanOrEqual(plan.cost);
      }),
      RUNS,
    );
  });

  it('twice the size costs at most twice as much', () => {
    fc.assert(
      fc.property(yard, (problem) => {
        const double = <T extends { readonly id: string }>(all: readonly T[]): T[] =>
          all.flatMap((one) => [one, { ...one, id: `${one.id} again` }]);
        const plan = fleetPlan(problem, solver);
        const twice = fleetPlan(
          { ...problem, pieces: double(problem.pieces), offcuts: double(problem.offcuts) },
          solver,
        );
        expect(twice.lowerBound).toBeLessThanOrEqual(2 * plan.cost);
        if (twice.proof !== 'none') expect(twice.cost).toBeLessThanOrEqual(2 * plan.cost);
      }),
      RUNS,
    );
  });

  it('does not cost more with one more offcut', () => {
    fc.assert(
      fc.property(yard, fc.integer({ min: 144, max: 1056 }), (problem, length) => {
        const plan = fleetPlan(problem, solver);
        const more = fleetPlan({ ...problem, offcuts: [...problem.offcuts, { id: 'more', length }] }, solver);
        expect(more.lowerBound).toBeLessThanOrEqual(plan.cost);
        if (more.proof !== 'none') expect(more.cost).toBeLessThanOrEqual(plan.cost);
      }),
      RUNS,
    );
  });

  it('costs no more than its rigs one by one', () => {
    fc.assert(
      fc.property(yard, (problem) => {
        const half = Math.ceil(problem.pieces.length / 2);
        const part = (pieces: CutProblem['pieces']): number => planOf({ ...problem, pieces, offcuts: [] }).cost;
        const apart = part(problem.pieces.slice(0, half)) + part(problem.pieces.slice(half));
        const together = fleetPlan({ ...problem, offcuts: [] }, solver);
        expect(together.lowerBound).toBeLessThanOrEqual(apart);
        if (together.proof !== 'none') expect(together.cost).toBeLessThanOrEqual(apart);
      }),
      RUNS,
    );
  });

  it('goes on without a solver that gives up', () => {
    const broken: LinearPrograms = { covering: () => undefined };
    fc.assert(
      fc.property(yard, (problem) => {
        expect(fleetPlan(problem, broken).cost).toBe(fleetPlan(problem).cost);
      }),
      { numRuns: 10, seed: 93 },
    );
  });
});

it('proves two pieces to a roll by the linear program where the length alone would not', () => {
  // 400 pieces of a bit more than a third of a roll: two to a roll, though 136 rolls are long enough.
  const plan = fleetPlan(problemOf(Array<number>(400).fill(34), [[100, 500]]), solver);
  expect(plan).toMatchObject({ cost: 100_000, lowerBound: 100_000 });
  expect(plan.proof).not.toBe('none');
});

it('says where a fleet piece cannot be spliced, and that nothing is on sale', () => {
  expect(cutFleet(problemOf([20, 4], [[5, 100]], [], { lap: 5, leastPart: 1 }))).toEqual({
    ok: false,
    reason: 'cannot-splice',
    pieces: ['p1'],
  });
  expect(cutFleet(problemOf([10], []))).toEqual({ ok: false, reason: 'no-rolls', pieces: ['p1'] });
});

it('the money bound of fixed size never exceeds the least money, and meets it for long needs', () => {
  const menu = fc.array(fc.tuple(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 1, max: 12 })), {
    minLength: 1,
    maxLength: 3,
  });
  fc.assert(
    fc.property(menu, fc.nat(400), fc.nat(60), (rolls, need, from) => {
      const longest = new Float64Array(2_000).fill(Number.NEGATIVE_INFINITY);
      longest[0] = 0;
      for (let money = 1; money < longest.length; money++) {
        for (const [length, price] of rolls) {
          if (price <= money) longest[money] = Math.max(longest[money]!, longest[money - price]! + length);
        }
      }
      const truth = longest.findIndex((length, money) => money >= from && length >= need);
      const kinds = rolls.map(([length, price]) => ({ length, price }));
      const bound = leastMoney(kinds, true)(from, need);
      expect(bound).toBeLessThanOrEqual(truth < 0 ? Number.POSITIVE_INFINITY : truth);
      if (truth >= 150) expect(bound).toBe(truth);
    }),
    { numRuns: 1000, seed: 94 },
  );
});
