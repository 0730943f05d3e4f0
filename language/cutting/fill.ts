import type { Purse } from './problem.ts';
import { addCopies, has, highestUpTo, wordsFor } from './reach.ts';

/** How the pieces are tried: the order of the lengths, and how many of the longest left go into each bin first. */
export interface FillWay {
  readonly order: readonly number[];
  readonly seeds: number;
}

/** What each bin got, and what found no room. */
export interface Filled {
  readonly fillings: readonly (readonly number[])[];
  readonly left: readonly number[];
  readonly leftTicks: number;
}

/**
 * Fills the bins in turn, each as full as the pieces left allow (bounded subset sum over sets of reachable sums).
 *
 * @param lengths piece lengths in ticks, falling
 * @param counts how many of each
 * @param caps one bin length per bin, in ticks
 */
export function fillInTurn(
  lengths: readonly number[],
  counts: readonly number[],
  caps: readonly number[],
  way: FillWay,
  purse: Purse,
): Filled {
  const left = [...counts];
  const kinds = lengths.length;
  const words = wordsFor(Math.max(0, ...caps));
  const sets = new Int32Array((kinds + 1) * words);
  let leftTicks = lengths.reduce((sum, length, i) => sum + length * left[i]!, 0);

  const fillings = caps.map((cap) => {
    purse.nodes -= 1 + (kinds >>> 1);
    const before = [...left];
    let room = cap;
    for (let i = 0, open = way.seeds; i < kinds && open > 0; i++) {
      while (open > 0 && left[i]! > 0 && lengths[i]! <= room) {
        left[i]!--;
        room -= lengths[i]!;
        open--;
      }
    }
    room -= fillRoom(room);
    leftTicks -= cap - room;
    return before.map((count, i) => count - left[i]!);
  });
  return { fillings, left, leftTicks };

  function fillRoom(room: number): number {
    sets.fill(0, kinds * words);
    sets[kinds * words] = 1;
    for (let k = kinds - 1; k >= 0; k--) {
      const kind = way.order[k]!;
      const at = k * words;
      sets.copyWithin(at, at + words, at + 2 * words);
      if (left[kind]! > 0 && lengths[kind]! <= room) {
        addCopies(sets, at, words, lengths[kind]!, Math.min(left[kind]!, Math.floor(room / lengths[kind]!)));
      }
    }
    const most = highestUpTo(sets, 0, room);
    let open = most;
    for (let k = 0; k < kinds && open > 0; k++) {
      const kind = way.order[k]!;
      let take = Math.min(left[kind]!, Math.floor(open / lengths[kind]!));
      while (!has(sets, (k + 1) * words, open - take * lengths[kind]!)) take--;
      left[kind]! -= take;
      open -= take * lengths[kind]!;
    }
    return most;
  }
}

/** The ways to try, always the same ones: plain orders first, then shuffles from a fixed seed. */
export function fillWays(kinds: number, tries: number): FillWay[] {
  const falling = Array.from({ length: kinds }, (_, i) => i);
  const rising = [...falling].reverse();
  const ways: FillWay[] = [1, 0, 2].flatMap((seeds) => [falling, rising].map((order) => ({ order, seeds })));
  let state = 0x2545f491;
  const below = (limit: number): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) % limit;
  };
  while (ways.length < tries) {
    const order = [...falling];
    for (let i = kinds - 1; i > 0; i--) {
      const j = below(i + 1);
      [order[i], order[j]] = [order[j]!, order[i]!];
    }
    ways.push({ order, seeds: below(3) });
  }
  return ways.slice(0, tries);
}
