import { packByPatterns } from './patterns.ts';
import type { Purse } from './problem.ts';
import { type Outcome, packExactly } from './search.ts';
import type { Load, Task } from './task.ts';

/** One bin of a fixed set: a bought roll or an offcut, with the length in ticks that may be used of it. */
export interface Bin {
  readonly kind: 'roll' | 'offcut';
  readonly index: number;
  readonly cap: number;
}

/** The offcuts and the bought rolls as bins, shortest first. */
export function binsOf(task: Task, purchase: readonly number[]): Bin[] {
  const bins: Bin[] = task.offcuts.map(({ cap }, index) => ({ kind: 'offcut', index, cap }));
  purchase.forEach((count, index) => {
    for (let n = 0; n < count; n++) bins.push({ kind: 'roll', index, cap: task.rolls[index]!.cap });
  });
  return bins.sort((a, b) => a.cap - b.cap);
}

/**
 * Whether the pieces fit into these bins, and how. Bins of equal length are one kind to the search. What the first search
 * leaves open goes to the second, with as many steps again.
 */
export function packBins(task: Task, bins: readonly Bin[], purse: Purse): readonly Load[] | 'no' | 'unknown' {
  const shelves = new Map<number, Bin[]>();
  for (const bin of bins) {
    if (bin.cap <= 0) continue;
    const shelf = shelves.get(bin.cap);
    if (shelf) shelf.push(bin);
    else shelves.set(bin.cap, [bin]);
  }
  const caps = [...shelves.keys()].sort((a, b) => a - b);
  const available = caps.map((cap) => shelves.get(cap)!.length);
  const outcome = eitherSearch(task, caps, available, purse);
  if (outcome.answer !== 'yes') return task.exact ? outcome.answer : 'unknown';
  return outcome.fillings.map(({ bin, counts }) => {
    const { kind, index } = shelves.get(caps[bin]!)!.pop()!;
    return { kind, index, counts };
  });
}

function eitherSearch(task: Task, caps: readonly number[], available: readonly number[], purse: Purse): Outcome {
  const granted = purse.nodes;
  const first = packExactly(task.lengths, task.counts, caps, available, purse);
  if (first.answer !== 'unknown') return first;
  const again: Purse = { nodes: granted };
  const second = packByPatterns(task.lengths, task.counts, caps, available, again);
  purse.nodes -= granted - again.nodes;
  return second;
}

/** Loads from fillings of the same bins in the same order; bins that got nothing are left out. */
export function loadsOf(bins: readonly Bin[], fillings: readonly (readonly number[])[]): Load[] {
  return bins.flatMap(({ kind, index }, i) => {
    const counts = fillings[i]!;
    return counts.some((count) => count > 0) ? [{ kind, index, counts }] : [];
  });
}
