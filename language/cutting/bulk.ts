import type { Purse } from './problem.ts';
import { addCopies, has, highestUpTo, wordsFor } from './reach.ts';
import type { Load, Task } from './task.ts';

/** How rolls are begun: with the largest piece left, or with pieces drawn in proportion to all that are left. */
export type Flavour = 'largest' | 'mix';

/** With so many lengths to choose from nearly every sum can be made; more would only cost time. */
const MOST_KINDS = 48;

/**
 * Cuts all pieces from the roll of best value (or the next longer one that holds the piece), one roll after the other:
 * some pieces first, then the rest of the roll filled as full as the pieces left allow. The last rolls come out badly
 * and are meant to be cut anew.
 */
export function fillInBulk(task: Task, flavour: Flavour, purse: Purse): Load[] {
  const { lengths } = task;
  const left = Int32Array.from(task.counts);
  const words = wordsFor(Math.max(0, ...task.rolls.map((roll) => roll.cap)));
  const sets = new Int32Array((lengths.length + 1) * words);
  const best = bestValue(task);
  const drawn = flavour === 'mix' ? proportional(task.counts) : [];
  const early = new Int32Array(lengths.length);
  let next = 0;
  let open = task.counts.reduce((sum, count) => sum + count, 0);

  const loads: Load[] = [];
  while (open > 0) {
    const counts = lengths.map(() => 0);
    const largest = left.findIndex((count) => count > 0);
    const index = Math.max(
      best,
      task.rolls.findIndex((roll) => roll.cap >= lengths[largest]!),
    );
    let room = task.rolls[index]!.cap;
    if (flavour === 'largest') take(largest, 1);
    else draw(room / 2);
    fillRoom(false);
    if (room > 0) fillRoom(true);
    loads.push({ kind: 'roll', index, counts });

    function take(kind: number, count: number): void {
      counts[kind]! += count;
      left[kind]! -= count;
      room -= count * lengths[kind]!;
      open -= count;
    }

    /** Takes pieces in their order of drawing until the roll is filled down to `until`. */
    function draw(until: number): void {
      for (; next < drawn.length && room > until; next++) {
        const kind = drawn[next]!;
        if (early[kind]! > 0) early[kind]!--;
        else if (lengths[kind]! > room) return;
        else take(kind, 1);
      }
    }

    /** Fills the room by the greatest sum that the pieces left can make, or that a sample of them can. */
    function fillRoom(thoroughly: boolean): void {
      const kinds = sample(thoroughly ? lengths.length : MOST_KINDS);
      purse.nodes -= 1 + (kinds.length >>> 3);
      sets.fill(0, kinds.length * words, (kinds.length + 1) * words);
      sets[kinds.length * words] = 1;
      for (let k = kinds.length - 1; k >= 0; k--) {
        const kind = kinds[k]!;
        sets.copyWithin(k * words, (k + 1) * words, (k + 2) * words);
        addCopies(sets, k * words, words, lengths[kind]!, Math.min(left[kind]!, Math.floor(room / lengths[kind]!)));
      }
      let sum = highestUpTo(sets, 0, room);
      for (const [k, kind] of kinds.entries()) {
        if (sum === 0) break;
        let count = Math.min(left[kind]!, Math.floor(sum / lengths[kind]!));
        while (!has(sets, (k + 1) * words, sum - count * lengths[kind]!)) count--;
        sum -= count * lengths[kind]!;
        take(kind, count);
        if (flavour === 'mix') early[kind]! += count;
      }
    }

    /** Some lengths that still fit, evenly spread from long to short. */
    function sample(most: number): number[] {
      const fitting: number[] = [];
      for (let kind = 0; kind < lengths.length; kind++) {
        if (left[kind]! > 0 && lengths[kind]! <= room) fitting.push(kind);
      }
      if (fitting.length <= most) return fitting;
      return Array.from({ length: most }, (_, i) => fitting[Math.floor((i * fitting.length) / most)]!);
    }
  }
  return loads;
}

/** The roll, by its place on the menu, that gives the most usable length for the money. */
export function bestValue(task: Task): number {
  return task.rolls.reduce((best, roll, k) => {
    const { usable, price } = task.rolls[best]!;
    return roll.usable * price > usable * roll.price ? k : best;
  }, 0);
}

/** All pieces, each kind evenly spread over the whole: piece `n` of `count` lies at `(n + 1/2) / count`. */
function proportional(counts: readonly number[]): number[] {
  return counts
    .flatMap((count, kind) => Array.from({ length: count }, (_, n) => ({ kind, at: (n + 0.5) / count })))
    .sort((a, b) => a.at - b.at || a.kind - b.kind)
    .map(({ kind }) => kind);
}
