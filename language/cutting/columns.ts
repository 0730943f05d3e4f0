import { type Knapsack, makeKnapsack } from './knapsack.ts';
import type { Column, CoveringProgram } from './linear.ts';
import type { Purse } from './problem.ts';
import type { Load, Task } from './task.ts';

/** One way to cut a roll or an offcut of one length (a shelf), as counts of some kinds of pieces. */
export interface Pattern {
  /** `on` is the place of the roll on the menu, or of the shelf. */
  readonly from: 'roll' | 'shelf';
  readonly on: number;
  readonly kinds: readonly number[];
  readonly counts: readonly number[];
}

/** Offcuts that hold the same lengths, by their places in the task. */
export interface Shelf {
  readonly cap: number;
  readonly offcuts: readonly number[];
}

/** The linear program over the patterns found so far: a row for every kind of piece, then one for every shelf. */
export interface Master {
  readonly task: Task;
  readonly shelves: readonly Shelf[];
  readonly patterns: readonly Pattern[];
  readonly program: CoveringProgram;
  add(patterns: readonly Pattern[]): void;
}

/** Duals become whole multiples of this part of the least money, so that no bound rests on rounding. */
const UNITS = 2 ** 16;
/** So many patterns for one kind of roll come from one pricing. */
const VARIANTS = 4;

export function shelvesOf(task: Task): Shelf[] {
  const byCap = new Map<number, number[]>();
  for (const [index, { cap }] of task.offcuts.entries()) {
    if (cap > 0) byCap.set(cap, [...(byCap.get(cap) ?? []), index]);
  }
  return [...byCap].sort(([a], [b]) => a - b).map(([cap, offcuts]) => ({ cap, offcuts }));
}

/** What the rows of the master must get when so many pieces and offcuts are open. */
export function demandOf(
  left: ArrayLike<number>,
  shelves: readonly { readonly offcuts: ArrayLike<number> }[],
): number[] {
  return [...Array.from(left), ...shelves.map(({ offcuts }) => -offcuts.length)];
}

export function makeMaster(task: Task, shelves: readonly Shelf[], program: CoveringProgram): Master {
  const patterns: Pattern[] = [];
  const known = new Set<string>();
  return {
    task,
    shelves,
    patterns,
    program,
    add(more) {
      const fresh = more.filter((pattern) => {
        const key = `${pattern.from} ${pattern.on} ${pattern.kinds.join()} ${pattern.counts.join()}`;
        return !known.has(key) && known.add(key);
      });
      patterns.push(...fresh);
      program.add(fresh.map((pattern) => columnOf(task, pattern)));
    },
  };
}

function columnOf(task: Task, { from, on, kinds, counts }: Pattern): Column {
  if (from === 'roll') return { price: task.rolls[on]!.price, rows: kinds, values: counts };
  return { price: 0, rows: [...kinds, task.sizes.length + on], values: [...counts, -1] };
}

export function patternOf(shelves: readonly Shelf[], { kind, index, counts }: Load): Pattern {
  const kinds = counts.flatMap((count, k) => (count > 0 ? [k] : []));
  const on = kind === 'roll' ? index : shelves.findIndex(({ offcuts }) => offcuts.includes(index));
  return { from: kind === 'roll' ? 'roll' : 'shelf', on, kinds, counts: kinds.map((k) => counts[k]!) };
}

/** The duals of the pieces as whole numbers, and what the best patterns at these prices say. */
export interface Pricing {
  /** Money below which no fractional cutting of all pieces is possible; true whatever the duals are. */
  readonly bound: number;
  /** Patterns worth more than they cost. */
  readonly better: readonly Pattern[];
}

export type Pricer = (duals: ArrayLike<number>) => Pricing;

/**
 * Prices patterns of at most `left` pieces of each kind. The bound is Farley's: prices are scaled so that no roll carries
 * more than it costs; what the pieces are worth then, less the most that the offcuts carry, is money that must be spent.
 */
export function makePricer(task: Task, shelves: readonly Shelf[], left: ArrayLike<number>, purse: Purse): Pricer {
  const { lengths } = task;
  const caps = [...task.rolls.map((roll) => roll.cap), ...shelves.map((shelf) => shelf.cap)];
  const sack = makeKnapsack(lengths, left, Math.max(0, ...caps));
  const prices = new Float64Array(lengths.length);

  return (duals) => {
    purse.nodes -= sack.steps;
    for (let kind = 0; kind < lengths.length; kind++) prices[kind] = Math.max(0, Math.floor(duals[kind]! * UNITS));
    sack.solve(prices);
    const better: Pattern[] = [];
    const consider = (from: 'roll' | 'shelf', on: number, cap: number, cost: number): void => {
      if (sack.carries[cap]! <= cost) return;
      better.push(...variants(cap, cost).map((counts) => ({ from, on, ...sparse(counts) })));
    };
    for (const [on, roll] of task.rolls.entries())
      consider('roll', on, roll.cap, Math.ceil(roll.price * UNITS * 1.000001));
    for (const [on, shelf] of shelves.entries()) {
      // The dual of a shelf is what one offcut more would save.
      const saves = Math.max(0, duals[lengths.length + on]! * UNITS);
      consider('shelf', on, shelf.cap, Math.ceil(saves * 1.000001) + lengths.length);
    }
    return { bound: farley(), better };

    /** The best filling, and those of shorter rooms completed: they bring other kinds of pieces. */
    function variants(cap: number, cost: number): Int32Array[] {
      const step = Math.max(1, Math.floor(lengths.at(-1)! / 2));
      const found: Int32Array[] = [];
      for (let n = 0; n <= VARIANTS && cap - n * step > 0; n++) {
        const counts = filled(sack, cap - n * step, cap);
        let worth = 0;
        for (const [kind, count] of counts.entries()) worth += count * prices[kind]!;
        if (worth > cost) found.push(counts);
      }
      return found;
    }
  };

  /** The best filling of `room`, completed by the dearest pieces that still fit into `cap`. */
  function filled(best: Knapsack, room: number, cap: number): Int32Array {
    const counts = new Int32Array(lengths.length);
    let open = cap;
    best.filling(room, (kind, count) => {
      counts[kind]! += count;
      open -= count * lengths[kind]!;
    });
    for (const [kind, length] of lengths.entries()) {
      if (open < lengths.at(-1)!) break;
      const more = Math.min(left[kind]! - counts[kind]!, Math.floor(open / length));
      if (more <= 0 || prices[kind] === 0) continue;
      counts[kind]! += more;
      open -= more * length;
    }
    return counts;
  }

  function farley(): number {
    let scale = Number.POSITIVE_INFINITY;
    for (const roll of task.rolls) {
      if (sack.carries[roll.cap]! > 0) scale = Math.min(scale, (roll.price * UNITS) / sack.carries[roll.cap]!);
    }
    let worth = 0;
    for (let kind = 0; kind < lengths.length; kind++) worth += prices[kind]! * left[kind]!;
    for (const shelf of shelves) worth -= shelf.offcuts.length * sack.carries[shelf.cap]!;
    return worth <= 0 || scale === Number.POSITIVE_INFINITY ? 0 : Math.ceil((worth / UNITS) * scale * (1 - 1e-12));
  }
}

function sparse(counts: Int32Array): Pick<Pattern, 'kinds' | 'counts'> {
  const kinds = [...counts.keys()].filter((kind) => counts[kind]! > 0);
  return { kinds, counts: kinds.map((kind) => counts[kind]!) };
}
