/**
 * Bounded knapsacks over the same pieces at changing prices, solved exactly for every bin length up to the limit at once.
 * With whole-number prices below 2^53 in sum no rounding is involved.
 */
export interface Knapsack {
  /** The most that pieces in a bin of each length are worth, as of the last `solve`. */
  readonly carries: Float64Array;
  /** Steps that one `solve` takes, in units of the search's purse. */
  readonly steps: number;
  solve(prices: Float64Array): void;
  /** Calls back with the pieces of a best filling of a bin of this length. */
  filling(room: number, take: (kind: number, count: number) => void): void;
}

/**
 * @param lengths in ticks
 * @param counts how many of each
 * @param limit longest bin in ticks
 */
export function makeKnapsack(lengths: readonly number[], counts: ArrayLike<number>, limit: number): Knapsack {
  const chunks = lengths.flatMap((length, kind) =>
    chunksOf(counts[kind]!, Math.floor(limit / length)).map((size) => ({ kind, size })),
  );
  const stride = limit + 1;
  const chosen = new Uint8Array(chunks.length * stride);
  const carries = new Float64Array(stride);

  return {
    carries,
    steps: 1 + ((chunks.length * stride) >>> 6),
    solve(prices) {
      carries.fill(0);
      chosen.fill(0);
      for (const [c, { kind, size }] of chunks.entries()) {
        const price = prices[kind]! * size;
        if (price > 0) consider(carries, chosen, c * stride, lengths[kind]! * size, price);
      }
    },
    filling(room, take) {
      let open = room;
      for (let c = chunks.length - 1; c >= 0; c--) {
        if (chosen[c * stride + open] === 0) continue;
        const { kind, size } = chunks[c]!;
        take(kind, size);
        open -= size * lengths[kind]!;
      }
    },
  };
}

/** One more piece of `length` worth `price`: for every bin from the longest down, whether it is better with it. */
function consider(carries: Float64Array, chosen: Uint8Array, at: number, length: number, price: number): void {
  for (let room = carries.length - 1; room >= length; room--) {
    const worth = carries[room - length]! + price;
    if (worth > carries[room]!) {
      carries[room] = worth;
      chosen[at + room] = 1;
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
