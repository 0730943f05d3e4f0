import { addCopies, highestUpTo, wordsFor } from './reach.ts';

/** A roll on the menu: `cap` is the most that can be cut from it, in ticks; `usable` bounds that in the caller's unit. */
export interface RollKind {
  readonly length: number;
  readonly price: number;
  readonly cap: number;
  readonly usable: number;
}

/** A length on hand, seen the same way. */
export interface OnHand {
  readonly length: number;
  readonly cap: number;
  readonly usable: number;
}

/**
 * One ordinary cutting problem without splices: pieces grouped by length (falling), measured in ticks, the greatest
 * common divisor of the pieces. Lengths with too fine a divisor are rounded up to a coarser tick; such a task is not
 * `exact`: what fits in ticks fits indeed, but what does not fit in ticks proves nothing.
 */
export interface Task {
  readonly tick: number;
  readonly exact: boolean;
  /** Distinct piece lengths in the caller's unit, falling. */
  readonly sizes: readonly number[];
  /** The same in ticks. */
  readonly lengths: readonly number[];
  readonly counts: readonly number[];
  /** Sum of all pieces, in the caller's unit and in ticks. */
  readonly total: number;
  readonly totalTicks: number;
  /** Rising in length and in price. */
  readonly rolls: readonly RollKind[];
  readonly offcuts: readonly OnHand[];
  /** Which sums of pieces, in ticks, can be made at all. */
  readonly sums: Int32Array;
}

/** What one roll (by its place in the menu) or offcut is cut to: how many pieces of each size. */
export interface Load {
  readonly kind: 'roll' | 'offcut';
  readonly index: number;
  readonly counts: readonly number[];
}

/** The finest resolution of the tables: 50 ft in 1/64 in is 38,400 ticks, 60 m in millimetres 60,000. */
const MOST_TICKS = 65_536;

/** Greatest common divisor of two whole numbers, not both 0. */
export function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b);
}

/** Groups the pieces, finds the tick and shrinks every stock to the greatest sum of pieces that it can hold. */
export function makeTask(
  pieces: readonly number[],
  rolls: readonly { readonly length: number; readonly price: number }[],
  offcuts: readonly number[],
): Task {
  const grouped = new Map<number, number>();
  for (const length of pieces) grouped.set(length, (grouped.get(length) ?? 0) + 1);
  const sizes = [...grouped.keys()].sort((a, b) => b - a);
  const counts = sizes.map((size) => grouped.get(size)!);

  const longest = Math.max(0, ...rolls.map((roll) => roll.length), ...offcuts);
  const divisor = sizes.reduce((sum, size) => gcd(sum, size), 0) || Math.max(1, longest);
  const coarse = Math.ceil(longest / MOST_TICKS);
  const exact = divisor >= coarse;
  const tick = exact ? divisor : coarse;
  const lengths = sizes.map((size) => Math.ceil(size / tick));

  const limit = Math.floor(longest / tick);
  const sums = new Int32Array(wordsFor(limit));
  sums[0] = 1;
  lengths.forEach((length, i) => {
    if (length <= limit) addCopies(sums, 0, sums.length, length, Math.min(counts[i]!, Math.floor(limit / length)));
  });
  const measure = (length: number): OnHand => {
    const cap = highestUpTo(sums, 0, Math.floor(length / tick));
    return { length, cap, usable: exact ? cap * tick : length };
  };
  return {
    tick,
    exact,
    sizes,
    lengths,
    counts,
    total: sizes.reduce((sum, size, i) => sum + size * counts[i]!, 0),
    totalTicks: lengths.reduce((sum, length, i) => sum + length * counts[i]!, 0),
    rolls: rolls.map((roll) => ({ ...measure(roll.length), price: roll.price })),
    offcuts: offcuts.map(measure),
    sums,
  };
}

/** What is left of a stock of `length` after `counts`, in the caller's unit. */
export function leftOf(task: Task, length: number, counts: readonly number[]): number {
  return counts.reduce((left, count, i) => left - count * task.sizes[i]!, length);
}

/** The longest single length left over by these loads, offcuts that none of them touches included. */
export function longestLeftOf(task: Task, loads: readonly Load[]): number {
  const touched = new Set<number>();
  let longest = 0;
  for (const load of loads) {
    const stock = load.kind === 'roll' ? task.rolls[load.index]! : task.offcuts[load.index]!;
    if (load.kind === 'offcut') touched.add(load.index);
    longest = Math.max(longest, leftOf(task, stock.length, load.counts));
  }
  task.offcuts.forEach((offcut, i) => {
    if (!touched.has(i)) longest = Math.max(longest, offcut.length);
  });
  return longest;
}

/** What the rolls of these loads cost. */
export function costOf(task: Task, loads: readonly Load[]): number {
  return loads.reduce((cost, load) => cost + (load.kind === 'roll' ? task.rolls[load.index]!.price : 0), 0);
}
