import type { Purse } from './problem.ts';
import { addCopies, anyBetween, highestUpTo, wordsFor } from './reach.ts';

/** One bin of the kind `bin` filled with `counts` pieces of each length. */
export interface Filling {
  readonly bin: number;
  readonly counts: readonly number[];
}

/** `unknown`: the purse ran out first; nothing is proven. */
export type Outcome =
  | { readonly answer: 'yes'; readonly fillings: readonly Filling[] }
  | { readonly answer: 'no' }
  | { readonly answer: 'unknown' };

/** Above this many words of reach sets a search would take too much memory and could not finish anyway. */
const MOST_WORDS = 1 << 24;
const MOST_MEMO = 1 << 18;
/** Counts are written into the memo's keys as one character each. */
export const MOST_COUNT = 0xffff;

interface Level {
  readonly sets: Int32Array;
  readonly active: Int32Array;
  readonly before: Int32Array;
}

/**
 * Decides exactly whether the pieces fit into a fixed set of bins (bin completion). The largest piece left must go into
 * some bin: all useful fillings of that bin with it are tried. A filling is useful only if
 * - its waste and the least waste of every other bin stay within the total waste (sets of reachable sums say both),
 * - no piece left over still fits into it, and no piece in it can be changed for a longer one left over
 *   (Martello and Toth's dominance): either change would leave the rest easier.
 * States that failed are remembered by their exact counts, so a proof never rests on a hash.
 *
 * @param lengths piece lengths in ticks, falling
 * @param counts how many of each
 * @param caps bin lengths in ticks, all different
 * @param available how many bins of each
 */
export function packExactly(
  lengths: readonly number[],
  counts: readonly number[],
  caps: readonly number[],
  available: readonly number[],
  purse: Purse,
): Outcome {
  const left = Int32Array.from(counts);
  const bins = Int32Array.from(available);
  const kinds = lengths.length;
  const words = wordsFor(Math.max(0, ...caps));
  const depth = bins.reduce((sum, count) => sum + count, 0);
  if (depth * kinds * words > MOST_WORDS || Math.max(...left, ...bins) > MOST_COUNT) return { answer: 'unknown' };

  const levels: Level[] = [];
  const failed = new Set<string>();
  const fillings: Filling[] = [];

  const waste =
    caps.reduce((sum, cap, b) => sum + cap * bins[b]!, 0) -
    lengths.reduce((sum, length, i) => sum + length * left[i]!, 0);
  if (waste < 0) return { answer: 'no' };
  const found = descend(0, waste);
  if (found === undefined) return { answer: 'unknown' };
  return found ? { answer: 'yes', fillings } : { answer: 'no' };

  /** Packs all pieces left into the bins left; undefined when the purse is empty. */
  function descend(at: number, spare: number): boolean | undefined {
    let active = 0;
    const level = levelAt(at);
    for (let i = 0; i < kinds; i++) if (left[i]! > 0) level.active[active++] = i;
    if (active === 0) return true;
    purse.nodes -= 1 + (active >>> 2);
    if (purse.nodes < 0) return undefined;
    const key = String.fromCharCode(...left, ...bins);
    if (failed.has(key)) return false;

    level.before.set(left);
    reachSets(level, active);
    let unavoidable = 0;
    for (let b = 0; b < caps.length; b++) {
      if (bins[b]! > 0) unavoidable += bins[b]! * (caps[b]! - highestUpTo(level.sets, 0, caps[b]!));
    }
    if (unavoidable <= spare) {
      const seed = level.active[0]!;
      for (let b = 0; b < caps.length; b++) {
        const cap = caps[b]!;
        if (bins[b]! === 0 || cap < lengths[seed]!) continue;
        const own = cap - highestUpTo(level.sets, 0, cap);
        bins[b]!--;
        left[seed]!--;
        const inside = fill(at, active, b, 0, cap - lengths[seed]!, spare - unavoidable + own, spare, 1 << 30);
        left[seed]!++;
        bins[b]!++;
        if (inside !== false) return inside;
      }
    }
    if (failed.size < MOST_MEMO) failed.add(key);
    return false;
  }

  /**
   * Chooses how many of the `k`-th kind (and the shorter ones) go into the open room. `allow` is the most room that may
   * stay empty at the end, `unused` the shortest length so far of which a piece stays outside.
   */
  function fill(
    at: number,
    active: number,
    bin: number,
    k: number,
    room: number,
    allow: number,
    spare: number,
    unused: number,
  ): boolean | undefined {
    if (--purse.nodes < 0) return undefined;
    const level = levels[at]!;
    if (k === active || room < lengths[level.active[active - 1]!]!) {
      if (room > allow) return false;
      const rest = descend(at + 1, spare - room);
      if (rest) fillings.push({ bin, counts: Array.from(level.before, (count, i) => count - left[i]!) });
      return rest;
    }
    if (!anyBetween(level.sets, k * words, room - allow, room)) return false;
    const kind = level.active[k]!;
    const length = lengths[kind]!;
    const stock = left[kind]!;
    for (let take = Math.min(stock, Math.floor(room / length)); take >= 0; take--) {
      let narrow = allow;
      if (take > 0) narrow = Math.min(narrow, unused - length - 1);
      if (take < stock) narrow = Math.min(narrow, length - 1);
      if (narrow < 0) continue;
      left[kind] = stock - take;
      const inside = fill(at, active, bin, k + 1, room - take * length, narrow, spare, take < stock ? length : unused);
      left[kind] = stock;
      if (inside !== false) return inside;
    }
    return false;
  }

  /** For every kind the sums that it and the shorter ones can make; the last block holds 0 alone. */
  function reachSets(level: Level, active: number): void {
    const { sets } = level;
    sets.fill(0, active * words, (active + 1) * words);
    sets[active * words] = 1;
    for (let k = active - 1; k >= 0; k--) {
      const kind = level.active[k]!;
      const at = k * words;
      sets.copyWithin(at, at + words, at + 2 * words);
      addCopies(sets, at, words, lengths[kind]!, Math.min(left[kind]!, Math.floor((words * 32) / lengths[kind]!)));
    }
  }

  function levelAt(at: number): Level {
    levels[at] ??= {
      sets: new Int32Array((kinds + 1) * words),
      active: new Int32Array(kinds),
      before: new Int32Array(kinds),
    };
    return levels[at];
  }
}
