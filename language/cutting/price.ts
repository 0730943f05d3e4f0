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
  const chunks = counts.flatMap((count, kind) =>
    chunksOf(count, Math.floor(limit / lengths[kind]!)).map((size) => ({ kind, size })),
  );
  const stride = limit + 1;
  const chosen = new Uint8Array(chunks.length * stride);
  const carries = new Float64Array(stride);
  const prices = new Float64Array(kinds);

  // How far below zero the next step aims, as a share of the worth: boldly at first, then ever closer.
  let aim = 0.05;

  return (bins) => {
    purse.nodes -= 1 + ((chunks.length * stride) >>> 6);
    for (let kind = 0; kind < kinds; kind++) prices[kind] = Math.round(perLength[kind]! * lengths[kind]!);
    knapsack();
    const worth = prices.reduce((sum, price, kind) => sum + price * counts[kind]!, 0);
    const excess = bins.reduce((sum, { cap, count }) => sum + count * carries[cap]!, 0) - worth;
    if (excess >= 0) move(bins, excess + worth * aim);
    aim = Math.max(0.0002, aim * 0.9);
    return { worth, carries };
  };

  /** Most worth for every bin length at once; `chosen` remembers which chunks make it. */
  function knapsack(): void {
    carries.fill(0);
    chosen.fill(0);
    for (const [c, { kind, size }] of chunks.entries()) {
      const length = lengths[kind]! * size;
      const price = prices[kind]! * size;
      if (price <= 0) continue;
      const at = c * stride;
      for (let room = limit; room >= length; room--) {
        const worth = carries[room - length]! + price;
        if (worth > carries[room]!) {
          carries[room] = worth;
          chosen[at + room] = 1;
        }
      }
    }
  }

  /** Raises the price of what the best fillings of the bins leave out, lowers it of what they hold too often. */
  function move(bins: readonly BinKind[], gap: number): void {
    const wanting = Float64Array.from(counts);
    for (const { cap, count } of bins) {
      let room = cap;
      for (let c = chunks.length - 1; c >= 0; c--) {
        if (chosen[c * stride + room] === 0) continue;
        const { kind, size } = chunks[c]!;
        wanting[kind]! -= count * size;
        room -= size * lengths[kind]!;
      }
    }
    const square = wanting.reduce((sum, more, kind) => sum + (more * lengths[kind]!) ** 2, 0);
    if (square === 0) return;
    for (let kind = 0; kind < kinds; kind++) {
      perLength[kind] = Math.max(0, perLength[kind]! + (gap / square) * wanting[kind]! * lengths[kind]!);
    }
  }
}

/** 1, 2, 4 ... and the remainder: sums of some of them make every number up to `count` (and no more than can be used). */
function chunksOf(count: number, usable: number): number[] {
  const chunks: number[] = [];
  for (let open = Math.min(count, usable), size = 1; open > 0; size *= 2) {
    chunks.push(Math.min(size, open));
    open -= Math.min(size, open);
  }
  return chunks;
}
