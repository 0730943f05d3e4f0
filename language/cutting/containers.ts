import { gcd } from './task.ts';

/** A size on sale: a cartridge, a can, or a case of 12 cartridges as one container of their whole volume. */
export interface Container {
  readonly id: string;
  /** Millilitres, above 0. */
  readonly volume: number;
  /** Integer minor units of money, not below 0. */
  readonly price: number;
}

/** Volumes in millilitres. */
export interface ContainerPurchase {
  readonly buy: readonly { readonly id: string; readonly count: number }[];
  readonly cost: number;
  /** Bought. */
  readonly volume: number;
  /** Left when the need is served from what is on hand and what is bought. */
  readonly spare: number;
  readonly onHandUsed: number;
  /** What no purchase covers because nothing is on sale; 0 otherwise. */
  readonly short: number;
  /** False only if the need was so large that part of it was bought at the best price per volume without a search. */
  readonly proven: boolean;
}

/** Volumes are sums of measured figures: a cover that misses the need by this share of it counts as a cover. */
const TOLERANCE = 1e-9;
const MOST_RUNGS = 2_000_000;

/**
 * The cheapest containers that cover what the need exceeds the stock on hand. Of equally cheap covers the one with the
 * least surplus, then the one with the fewest containers, then the first in the order of `onSale`.
 * A dynamic program over money finds the least cost, a search with its bounds the best cover of that cost.
 *
 * @param need millilitres
 * @param onHand millilitres
 * @throws RangeError if a volume is not above 0 or a price is not an integer from 0
 */
export function cheapestContainers(need: number, onSale: readonly Container[], onHand: number): ContainerPurchase {
  for (const { id, volume, price } of onSale) {
    if (!(volume > 0) || !Number.isSafeInteger(price) || price < 0) throw new RangeError(`container ${id}`);
  }
  const slack = need * TOLERANCE;
  const onHandUsed = Math.max(0, Math.min(need, onHand));
  const missing = need - onHandUsed;
  if (missing <= slack || onSale.length === 0) {
    const short = missing <= slack ? 0 : missing;
    const spare = Math.max(0, onHand - need);
    return { buy: [], cost: 0, volume: 0, spare, onHandUsed, short, proven: true };
  }

  const bulk = bulkOf(missing, onSale);
  const counts = cover(missing - slack - bulk.count * onSale[bulk.index]!.volume, onSale, slack);
  counts[bulk.index]! += bulk.count;
  const volume = counts.reduce((sum, count, i) => sum + count * onSale[i]!.volume, 0);
  return {
    buy: onSale.flatMap(({ id }, i) => (counts[i]! > 0 ? [{ id, count: counts[i]! }] : [])),
    cost: counts.reduce((sum, count, i) => sum + count * onSale[i]!.price, 0),
    volume,
    spare: Math.max(0, volume - missing),
    onHandUsed,
    short: 0,
    proven: bulk.count === 0,
  };
}

/** How many of the best value to buy unsearched so that the table of money stays small. */
function bulkOf(missing: number, onSale: readonly Container[]): { readonly index: number; readonly count: number } {
  let index = 0;
  onSale.forEach((one, i) => {
    if (one.price * onSale[index]!.volume < onSale[index]!.price * one.volume) index = i;
  });
  const { volume, price } = onSale[index]!;
  const step = onSale.reduce((sum, one) => gcd(sum, one.price), 0) || 1;
  const rungs = (Math.ceil(missing / volume) * price) / step;
  return { index, count: rungs <= MOST_RUNGS ? 0 : Math.ceil(((rungs - MOST_RUNGS) * step) / price) };
}

/** Counts of the best cover of `need`; volumes closer than `slack` are equal. */
function cover(need: number, onSale: readonly Container[], slack: number): number[] {
  const step = onSale.reduce((sum, one) => gcd(sum, one.price), 0) || 1;
  const most = mostVolume(need, onSale, step);
  const order = [...onSale.keys()].sort((a, b) => onSale[b]!.volume - onSale[a]!.volume || a - b);
  const counts = onSale.map(() => 0);
  let best: { counts: number[]; volume: number; containers: number } | undefined;
  const seen = new Map<string, number>();
  choose(0, most.length - 1, 0, 0);
  return best!.counts;

  function choose(k: number, money: number, volume: number, containers: number): void {
    if (best && volume > best.volume + slack) return;
    const index = order[k];
    if (index === undefined) {
      if (money === 0 && volume >= need && better(volume, containers))
        best = { counts: [...counts], volume, containers };
      return;
    }
    const free = onSale.some((one) => one.price === 0);
    if (most[money]! < 0 || (!free && volume + most[money]! < need)) return;
    const key = `${k} ${money} ${volume.toPrecision(11)}`;
    if ((seen.get(key) ?? Number.POSITIVE_INFINITY) <= containers) return;
    seen.set(key, containers);
    const one = onSale[index]!;
    const price = one.price / step;
    const top = price > 0 ? Math.floor(money / price) : Math.max(0, Math.ceil((need - volume) / one.volume));
    for (let count = top; count >= 0; count--) {
      counts[index] = count;
      choose(k + 1, money - count * price, volume + count * one.volume, containers + count);
    }
    counts[index] = 0;
  }

  function better(volume: number, containers: number): boolean {
    if (!best || volume < best.volume - slack) return true;
    return volume <= best.volume + slack && containers < best.containers;
  }
}

/** For each rung of money up to the least that covers `need`: the most volume that exactly this money buys, or -1. */
function mostVolume(need: number, onSale: readonly Container[], step: number): number[] {
  if (need <= 0 || onSale.some((one) => one.price === 0)) return [0];
  const most = [0];
  for (let z = 1; most[z - 1]! < need; z++) {
    let best = -1;
    for (const { price, volume } of onSale) {
      const below = z - price / step;
      if (below >= 0 && most[below]! >= 0) best = Math.max(best, most[below]! + volume);
    }
    most.push(best);
  }
  return most;
}
