import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutRolls } from '../../language/cutting/index.ts';
import { bruteForce, faultsOf } from './brute.ts';
import { planOf, problemOf } from './figures.ts';

const menu = fc.array(fc.tuple(fc.integer({ min: 8, max: 40 }), fc.integer({ min: 1, max: 9 })), {
  minLength: 1,
  maxLength: 3,
});
const offcuts = fc.array(fc.integer({ min: 1, max: 30 }), { maxLength: 2 });

/** Pieces that some roll of the menu holds. */
const whole = fc
  .record({ rolls: menu, offcuts, shares: fc.array(fc.integer({ min: 0, max: 999 }), { maxLength: 8 }) })
  .map(({ rolls, offcuts, shares }) => {
    const longest = Math.max(...rolls.map(([length]) => length));
    const pieces = shares.map((share) => 1 + Math.floor((share * longest) / 1000));
    return problemOf(pieces, rolls, offcuts);
  });

describe('cutRolls against trying everything', () => {
  it('finds the least money and the longest leftover', () => {
    const proofs = { volume: 0, lp: 0, search: 0, none: 0 };
    fc.assert(
      fc.property(whole, (problem) => {
        const truth = bruteForce(problem, 0)!;
        const plan = planOf(problem);
        proofs[plan.proof]++;
        expect(faultsOf(problem, plan)).toEqual([]);
        expect({ cost: plan.cost, left: plan.longestLeft }).toEqual({ cost: truth.cost, left: truth.left });
        expect(plan.longestLeftProven).toBe(true);
      }),
      { numRuns: 2500, seed: 11 },
    );
    // All three aims are proven here, and the cases are not all easy ones.
    expect(proofs.none).toBe(0);
    expect(proofs.search).toBeGreaterThan(50);
  });

  it('does so with pieces that share a divisor which the rolls do not have', () => {
    const coarse = whole.map((problem) => ({
      ...problem,
      pieces: problem.pieces.map((piece) => ({ ...piece, length: Math.max(3, piece.length - (piece.length % 3)) })),
    }));
    fc.assert(
      fc.property(coarse, (problem) => {
        const truth = bruteForce(problem, 0)!;
        const plan = planOf(problem);
        expect({ cost: plan.cost, left: plan.longestLeft }).toEqual({ cost: truth.cost, left: truth.left });
      }),
      { numRuns: 500, seed: 12 },
    );
  });

  it('takes the fewest free rolls when some cost nothing', () => {
    const free = fc.tuple(whole, fc.nat(2)).map(([problem, k]) => ({
      ...problem,
      rolls: problem.rolls.map((roll, i) => (i === k % problem.rolls.length ? { ...roll, price: 0 } : roll)),
    }));
    fc.assert(
      fc.property(free, (problem) => {
        const truth = bruteForce(problem, 0)!;
        const plan = planOf(problem);
        expect(faultsOf(problem, plan)).toEqual([]);
        expect({ cost: plan.cost, left: plan.longestLeft }).toEqual({ cost: truth.cost, left: truth.left });
      }),
      { numRuns: 300, seed: 13 },
    );
  });

  it('says no-rolls exactly when the offcuts alone do not hold the pieces', () => {
    const bare = fc
      .tuple(
        fc.array(fc.integer({ min: 1, max: 12 }), { maxLength: 6 }),
        fc.array(fc.integer({ min: 1, max: 20 }), { maxLength: 4 }),
      )
      .map(([pieces, offcuts]) => problemOf(pieces, [], offcuts));
    fc.assert(
      fc.property(bare, (problem) => {
        const truth = bruteForce(problem, 0);
        const result = cutRolls(problem);
        expect(result.ok).toBe(truth !== undefined);
        if (result.ok) {
          expect(faultsOf(problem, result.plan)).toEqual([]);
          expect(result.plan.longestLeft).toBe(truth!.left);
        } else {
          expect(result.reason).toBe('no-rolls');
          expect(result.pieces.length).toBeGreaterThan(0);
        }
      }),
      { numRuns: 500, seed: 14 },
    );
  });
});

describe('splices against all split points', () => {
  const long = fc.record({
    rolls: fc.array(fc.tuple(fc.integer({ min: 6, max: 12 }), fc.integer({ min: 1, max: 9 })), {
      minLength: 1,
      maxLength: 2,
    }),
    offcuts: fc.array(fc.integer({ min: 2, max: 40 }), { maxLength: 2 }),
    long: fc.array(fc.integer({ min: 13, max: 19 }), { minLength: 1, maxLength: 2 }),
    short: fc.array(fc.integer({ min: 1, max: 6 }), { maxLength: 2 }),
    lap: fc.integer({ min: 0, max: 2 }),
    leastPart: fc.integer({ min: 1, max: 4 }),
  });

  it('finds the fewest splices, the least money and the longest leftover', () => {
    fc.assert(
      fc.property(long, ({ rolls, offcuts, long, short, lap }) => {
        const problem = problemOf([...long, ...short], rolls, offcuts, { lap, leastPart: 1 });
        const truth = bruteForce(problem, 8)!;
        const plan = planOf(problem);
        expect(faultsOf(problem, plan)).toEqual([]);
        expect({ splices: plan.splices, cost: plan.cost, left: plan.longestLeft }).toEqual(truth);
      }),
      { numRuns: 300, seed: 21 },
    );
  });

  it('keeps to the least part and never claims more than is true', () => {
    fc.assert(
      fc.property(long, ({ rolls, offcuts, long, short, lap, leastPart }) => {
        const problem = problemOf([...long, ...short], rolls, offcuts, { lap, leastPart });
        const truth = bruteForce(problem, 8);
        const result = cutRolls(problem);
        if (!result.ok) {
          expect(result.reason).toBe('cannot-splice');
          return;
        }
        const { plan } = result;
        expect(faultsOf(problem, plan)).toEqual([]);
        expect(plan.splices).toBeGreaterThanOrEqual(truth!.splices);
        if (plan.splices > truth!.splices) return;
        expect(plan.cost).toBeGreaterThanOrEqual(truth!.cost);
        expect(plan.lowerBound).toBeLessThanOrEqual(truth!.cost);
        if (plan.cost === truth!.cost) expect(plan.longestLeftBound).toBeGreaterThanOrEqual(truth!.left);
      }),
      { numRuns: 300, seed: 22 },
    );
  });
});
