import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { climb, dominatedSets, makeLadder, purchasesAt } from '../../language/cutting/ladder.ts';
import type { RollKind } from '../../language/cutting/task.ts';

const menu = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 1, max: 12 })), { minLength: 1, maxLength: 3 })
  .map((rolls) =>
    rolls
      .toSorted(([a], [b]) => a - b)
      .map(([length, price]): RollKind => ({ length, price, cap: length, usable: length })),
  );

/** All counts of rolls that cost at most `top`. */
function everyPurchase(rolls: readonly RollKind[], top: number): { counts: number[]; cost: number; length: number }[] {
  let all = [{ counts: [] as number[], cost: 0, length: 0 }];
  for (const { length, price } of rolls) {
    all = all.flatMap((one) =>
      Array.from({ length: Math.floor((top - one.cost) / price) + 1 }, (_, count) => ({
        counts: [...one.counts, count],
        cost: one.cost + count * price,
        length: one.length + count * length,
      })),
    );
  }
  return all;
}

describe('the money ladder against all counts of rolls', () => {
  it('climbs to the least money that is long enough', () => {
    fc.assert(
      fc.property(menu, fc.nat(60), fc.nat(20), (rolls, need, from) => {
        const ladder = makeLadder(rolls, 40)!;
        const enough = everyPurchase(rolls, 40).filter((one) => one.cost >= from && one.length >= need);
        const truth = enough.length === 0 ? undefined : Math.min(...enough.map((one) => one.cost));
        expect(climb(ladder, from, need)).toBe(truth);
      }),
      { numRuns: 500, seed: 61 },
    );
  });

  it('lists every purchase of one price that is long enough', () => {
    fc.assert(
      fc.property(menu, fc.nat(40), fc.nat(60), (rolls, cost, need) => {
        const ladder = makeLadder(rolls, 40)!;
        fc.pre(cost % ladder.step === 0);
        const truth = everyPurchase(rolls, 40).filter((one) => one.cost === cost && one.length >= need);
        const { purchases, complete } = purchasesAt(ladder, cost, need, []);
        expect(complete).toBe(true);
        const words = (all: readonly (readonly number[])[]): string[] => all.map((counts) => counts.join(' ')).sort();
        expect(words(purchases)).toEqual(words(truth.map((one) => one.counts)));
      }),
      { numRuns: 500, seed: 62 },
    );
  });

  it('drops a set of rolls exactly when one roll is as long and costs no more', () => {
    fc.assert(
      fc.property(menu, (rolls) => {
        const sets = dominatedSets(rolls);
        for (const { counts, cost, length } of everyPurchase(rolls, 24)) {
          const size = counts.reduce((sum, count) => sum + count, 0);
          const replaced = size >= 2 && rolls.some((roll) => roll.length >= length && roll.price <= cost);
          const listed = sets.some((set) => set.every((count, i) => counts[i]! >= count));
          // A listed set inside a larger purchase drops it too, so only one direction holds for every purchase.
          if (replaced) expect(listed).toBe(true);
        }
        for (const set of sets) {
          const length = set.reduce((sum, count, i) => sum + count * rolls[i]!.length, 0);
          const cost = set.reduce((sum, count, i) => sum + count * rolls[i]!.price, 0);
          expect(rolls.some((roll) => roll.length >= length && roll.price <= cost)).toBe(true);
        }
      }),
      { numRuns: 500, seed: 63 },
    );
  });

  it('gives up on a ladder with too many rungs', () => {
    expect(makeLadder([{ length: 1, price: 3, cap: 1, usable: 1 }], 3e9)).toBeUndefined();
  });
});
