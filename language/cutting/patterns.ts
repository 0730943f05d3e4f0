import type { Purse } from './problem.ts';
import { addCopies, anyBetween, wordsFor } from './reach.ts';
import { MOST_COUNT, type Outcome } from './search.ts';

/** More fillings than this are too many to choose among. */
const MOST_PATTERNS = 3_000;
const MOST_MEMO = 1 << 18;

/** One filling of a bin of the kind `bin`: piece kinds and how many of each, and what stays empty. */
interface Pattern {
  readonly bin: number;
  readonly kinds: readonly number[];
  readonly counts: readonly number[];
  readonly waste: number;
}

/**
 * Decides the same question as `packExactly` where little may be wasted: then few fillings of a bin are allowed at all.
 * They are listed, and the piece that has the fewest of them left is placed first, so dead ends show early.
 *
 * @returns `unknown` when there are too many fillings or the purse is empty
 */
export function packByPatterns(
  lengths: readonly number[],
  counts: readonly number[],
  caps: readonly number[],
  available: readonly number[],
  purse: Purse,
): Outcome {
  const left = Int32Array.from(counts);
  const bins = Int32Array.from(available);
  const kinds = lengths.length;
  const waste =
    caps.reduce((sum, cap, b) => sum + cap * bins[b]!, 0) -
    lengths.reduce((sum, length, i) => sum + length * left[i]!, 0);
  if (waste < 0) return { answer: 'no' };
  if (Math.max(0, ...left, ...bins) > MOST_COUNT) return { answer: 'unknown' };
  const listed = listPatterns(lengths, counts, caps, waste, purse);
  if (!listed) return { answer: 'unknown' };
  const patterns: readonly Pattern[] = listed;
  const failed = new Set<string>();
  const chosen: Pattern[] = [];
  const usable = new Int32Array(kinds);

  const found = descend(waste);
  if (found === undefined) return { answer: 'unknown' };
  if (!found) return { answer: 'no' };
  const fillings = chosen.map((pattern) => {
    const own = new Array<number>(kinds).fill(0);
    for (const [i, kind] of pattern.kinds.entries()) own[kind] = pattern.counts[i]!;
    return { bin: pattern.bin, counts: own };
  });
  return { answer: 'yes', fillings };

  function descend(spare: number): boolean | undefined {
    usable.fill(0);
    const fitting = patterns.filter((pattern) => fits(pattern, spare));
    purse.nodes -= 1 + (patterns.length >>> 4);
    if (purse.nodes < 0) return undefined;
    for (const pattern of fitting) for (const kind of pattern.kinds) usable[kind]!++;
    let scarce = -1;
    for (let kind = 0; kind < kinds; kind++) {
      if (left[kind]! > 0 && (scarce < 0 || usable[kind]! < usable[scarce]!)) scarce = kind;
    }
    if (scarce < 0) return true;
    if (usable[scarce] === 0) return false;
    const key = String.fromCharCode(...left, ...bins);
    if (failed.has(key)) return false;
    for (const pattern of fitting) {
      if (!pattern.kinds.includes(scarce)) continue;
      use(pattern, -1);
      const rest = descend(spare - pattern.waste);
      if (rest) chosen.push(pattern);
      if (rest !== false) return rest;
      use(pattern, 1);
    }
    if (failed.size < MOST_MEMO) failed.add(key);
    return false;
  }

  function fits(pattern: Pattern, spare: number): boolean {
    if (pattern.waste > spare || bins[pattern.bin] === 0) return false;
    for (let i = 0; i < pattern.kinds.length; i++) if (left[pattern.kinds[i]!]! < pattern.counts[i]!) return false;
    return true;
  }

  function use(pattern: Pattern, sign: number): void {
    bins[pattern.bin]! += sign;
    for (let i = 0; i < pattern.kinds.length; i++) left[pattern.kinds[i]!]! += sign * pattern.counts[i]!;
  }
}

/** All fillings that leave at most `waste` empty, or undefined when there are too many. */
function listPatterns(
  lengths: readonly number[],
  counts: readonly number[],
  caps: readonly number[],
  waste: number,
  purse: Purse,
): Pattern[] | undefined {
  const words = wordsFor(Math.max(0, ...caps));
  const sets = new Int32Array((lengths.length + 1) * words);
  sets[lengths.length * words] = 1;
  for (let kind = lengths.length - 1; kind >= 0; kind--) {
    const at = kind * words;
    sets.copyWithin(at, at + words, at + 2 * words);
    addCopies(sets, at, words, lengths[kind]!, Math.min(counts[kind]!, Math.floor((words * 32) / lengths[kind]!)));
  }
  const patterns: Pattern[] = [];
  const taken: [kind: number, count: number][] = [];
  const complete = caps.every((cap, bin) => list(bin, 0, cap));
  return complete ? patterns : undefined;

  function list(bin: number, kind: number, room: number): boolean {
    if (--purse.nodes < 0) return false;
    if (kind === lengths.length) {
      if (taken.length === 0) return true;
      patterns.push({ bin, kinds: taken.map(([k]) => k), counts: taken.map(([, count]) => count), waste: room });
      return patterns.length <= MOST_PATTERNS;
    }
    if (!anyBetween(sets, kind * words, room - waste, room)) return true;
    for (let count = Math.min(counts[kind]!, Math.floor(room / lengths[kind]!)); count >= 0; count--) {
      if (count > 0) taken.push([kind, count]);
      const go = list(bin, kind + 1, room - count * lengths[kind]!);
      if (count > 0) taken.pop();
      if (!go) return false;
    }
    return true;
  }
}
