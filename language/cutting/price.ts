import { makeKnapsack } from './knapsack.ts';
import type { Purse } from './problem.ts';

/** What all pieces are worth at the present prices, and the most worth that a bin of each length up to the limit carries. */
export interface Priced {
  readonly worth: number;
  readonly carries: Float64Array;
}

/** A kind of bin and how many there are of it. */
export interface BinKind {
  readonly cap: number;
  readonly count: number;
}

/** Prices are whole numbers of about this size per bin, so every sum is exact. */
const UNIT = 2 ** 30;

/**
 * Proofs that pieces do not fit, by pricing them: if at some prices the pieces are worth more than all bins together can
 * carry, they do not fit. Prices start as lengths (the volume argument) and move towards such a proof along the
 * subgradient of the difference (Polyak's step), as the dual of the pattern linear program would have them. Prices and
 * worths are integers and the bounded knapsack is solved exactly, so no proof rests on rounding.
 *
 * @param lengths in ticks, falling
 * @param counts how many of each
 * @param limit longest bin in ticks
 * @returns each call prices the bins given, then moves the prices where the bins carry too much
 */
export function pricing(
  lengths: readonly number[],
  counts: readonly number[],
  limit: number,
  purse: Purse,
): (bins: readonly BinKind[]) => Priced {
  const kinds = lengths.length;
  const perLength = new Float64Array(kinds).fill(UNIT / Math.max(1, limit));
  const sack = makeKnapsack(lengths, counts, limit);
  const { carries } = sack;
  const prices = new Float64Array(kinds);

  // How far below zero the next step aims, as a share of the worth: boldly at first, then ever closer.
  let aim = 0.05;

  return (bins) => {
    purse.nodes -= sack.steps;
    for (let kind = 0; kind < kinds; kind++) prices[kind] = Math.round(perLength[kind]! * lengths[kind]!);
    sack.solve(prices);
    const worth = prices.reduce((sum, price, kind) => sum + price * counts[kind]!, 0);
    const excess = bins.reduce((sum, { cap, count }) => sum + count * carries[cap]!, 0) - worth;
    if (excess >= 0) move(bins, excess + worth * aim);
    aim = Math.max(0.0002, aim * 0.9);
    return { worth, carries };
  };

  /** Raises the price of what the best fillings of the bins leave out, lowers it of what they hold too often. */
  function move(bins: readonly BinKind[], gap: number): void {
    const wanting = Float64Array.from(counts);
    for (const { cap, count } of bins) {
      sack.filling(cap, (kind, size) => {
        wanting[kind]! -= count * size;
      });
    }
    const square = wanting.reduce((sum, more, kind) => sum + (more * lengths[kind]!) ** 2, 0);
    if (square === 0) return;
    for (let kind = 0; kind < kinds; kind++) {
      perLength[kind] = Math.max(0, perLength[kind]! + (gap / square) * wanting[kind]! * lengths[kind]!);
    }
  }
}
