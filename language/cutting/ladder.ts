import { gcd, type RollKind } from './task.ts';

/**
 * The money ladder: any purchase costs a sum of roll prices, so only the rungs of that lattice count. `most[z]` is the
 * most usable length that exactly `z * step` of money buys, -1 where no purchase costs that.
 */
export interface Ladder {
  readonly rolls: readonly RollKind[];
  readonly step: number;
  readonly most: Float64Array;
}

/** 4 million rungs are 32 MB; a purchase beyond is a fleet's. */
const MOST_RUNGS = 4_000_000;
/** Counts of rolls are listed for rigs and tails of fleets only. */
const MOST_VECTORS = 400;

/** Rungs from 0 to `top` money; undefined when there would be too many or none. Prices are above 0. */
export function makeLadder(rolls: readonly RollKind[], top: number): Ladder | undefined {
  const step = rolls.reduce((sum, roll) => gcd(sum, roll.price), 0) || 1;
  const rungs = Math.floor(top / step);
  if (rungs < 0 || rungs > MOST_RUNGS) return undefined;
  const most = new Float64Array(rungs + 1).fill(-1);
  most[0] = 0;
  const prices = rolls.map((roll) => roll.price / step);
  for (let z = 1; z <= rungs; z++) {
    let best = -1;
    for (let k = 0; k < prices.length; k++) {
      const below = z - prices[k]!;
      if (below >= 0 && most[below]! >= 0) best = Math.max(best, most[below]! + rolls[k]!.usable);
    }
    most[z] = best;
  }
  return { rolls, step, most };
}

/** The least money from `from` upwards that buys at least `need` of length; undefined above the top rung. */
export function climb(ladder: Ladder, from: number, need: number): number | undefined {
  for (let z = Math.ceil(from / ladder.step); z < ladder.most.length; z++) {
    if (ladder.most[z]! >= Math.max(0, need)) return z * ladder.step;
  }
  return undefined;
}

/**
 * All counts of rolls that cost exactly `money` and are at least `need` long, without the dominated ones (some of their
 * rolls end to end are no longer than one roll that costs no more). `complete` is false if there are too many to list.
 */
export function purchasesAt(
  ladder: Ladder,
  money: number,
  need: number,
  dominated: readonly (readonly number[])[],
): { readonly purchases: readonly (readonly number[])[]; readonly complete: boolean } {
  const { rolls, step, most } = ladder;
  const purchases: number[][] = [];
  const counts = rolls.map(() => 0);
  let complete = true;
  choose(rolls.length - 1, Math.round(money / step), 0);
  return { purchases, complete };

  function choose(k: number, z: number, length: number): void {
    if (most[z]! < 0 || length + most[z]! < need) return;
    if (z === 0) {
      if (dominated.some((pattern) => pattern.every((count, i) => counts[i]! >= count))) return;
      if (purchases.length < MOST_VECTORS) purchases.push([...counts]);
      else complete = false;
      return;
    }
    if (k < 0 || !complete) return;
    const price = rolls[k]!.price / step;
    for (let count = Math.floor(z / price); count >= 0; count--) {
      counts[k] = count;
      choose(k - 1, z - count * price, length + count * rolls[k]!.usable);
    }
    counts[k] = 0;
  }
}

/**
 * Pairs, triples ... of rolls that one roll replaces: end to end they are no longer and together they cost no less.
 * A plan that buys such a set has an equal or cheaper one, with a leftover at least as long, that does not.
 */
export function dominatedSets(rolls: readonly RollKind[]): number[][] {
  const found: number[][] = [];
  const counts = rolls.map(() => 0);
  add(0, 0, 0, 0);
  return found;

  function add(from: number, size: number, length: number, price: number): void {
    if (found.length >= MOST_VECTORS) return;
    if (size >= 2 && rolls.some((roll) => roll.length >= length && roll.price <= price)) {
      found.push([...counts]);
      return;
    }
    for (let k = from; k < rolls.length; k++) {
      const roll = rolls[k]!;
      if (length + roll.length > rolls.at(-1)!.length) break;
      counts[k]!++;
      add(k, size + 1, length + roll.length, price + roll.price);
      counts[k]!--;
    }
  }
}
