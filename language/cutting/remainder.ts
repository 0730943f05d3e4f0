import { type Load, makeTask, type Task } from './task.ts';

/** A task of some of the pieces of another, without its offcuts. `kinds` says which size of the other each size is. */
export interface Remainder {
  readonly task: Task;
  readonly kinds: readonly number[];
}

/** The task that is left of `whole` when only `left` pieces of each size are still to be cut, all of them from rolls. */
export function remainderOf(whole: Task, left: ArrayLike<number>): Remainder {
  const kinds: number[] = [];
  const pieces: number[] = [];
  for (const [kind, size] of whole.sizes.entries()) {
    const count = left[kind]!;
    if (count > 0) kinds.push(kind);
    for (let n = 0; n < count; n++) pieces.push(size);
  }
  return { task: makeTask(pieces, whole.rolls, []), kinds };
}

/** The loads of a remainder as loads of the whole task. */
export function asWhole(whole: Task, { kinds }: Remainder, loads: readonly Load[]): Load[] {
  return loads.map((load) => {
    const counts = whole.sizes.map(() => 0);
    for (const [k, count] of load.counts.entries()) counts[kinds[k]!] = count;
    return { ...load, counts };
  });
}

/** How many pieces of each size the loads leave to be cut. */
export function leftAfter(task: Task, loads: readonly Load[]): number[] {
  const left = [...task.counts];
  for (const { counts } of loads) for (const [kind, count] of counts.entries()) left[kind]! -= count;
  return left;
}
