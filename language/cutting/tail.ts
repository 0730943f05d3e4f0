import { withCheapestRolls } from './firstfit.ts';
import { climb, dominatedSets, makeLadder, purchasesAt } from './ladder.ts';
import type { Purse } from './problem.ts';
import { tryFilling } from './purchase.ts';
import { binsOf, packBins } from './stock.ts';
import { costOf, type Load, type Task } from './task.ts';

/** Tries of the filling heuristic for one set of rolls, and the steps of the exact search for it. */
const TRIES = 16;
const SEARCH = 3_000;

/**
 * Cuts the last pieces of a fleet, some ten rolls of them, for less than `below` money: the rungs of the money ladder
 * from `from` on are tried upwards, each by filling and then by a short exact search, so the mix of rolls comes out right.
 *
 * @returns undefined when nothing below that money was found
 */
export function cutTail(task: Task, from: number, below: number, purse: Purse): readonly Load[] | undefined {
  if (task.total === 0) return below > 0 ? [] : undefined;
  if (below <= 0) return undefined;
  const ladder = makeLadder(task.rolls, below - 1);
  if (!ladder) return undefined;
  const dominated = dominatedSets(task.rolls);
  for (
    let cost = climb(ladder, Math.max(0, from), task.total);
    cost !== undefined;
    cost = climb(ladder, cost + 1, task.total)
  ) {
    const { purchases } = purchasesAt(ladder, cost, task.total, dominated);
    for (const purchase of purchases) {
      if (purse.nodes <= 0) return undefined;
      const bins = binsOf(task, purchase);
      const filled = tryFilling(task, bins, purse, TRIES);
      if (filled) return withCheapestRolls(task, filled);
      const granted = { nodes: Math.min(SEARCH, purse.nodes) };
      const before = granted.nodes;
      const packed = packBins(task, bins, granted);
      purse.nodes -= before - granted.nodes;
      if (packed !== 'no' && packed !== 'unknown') return withCheapestRolls(task, packed);
    }
  }
  return undefined;
}

/** Loads and what they cost. */
export interface Cutting {
  readonly loads: readonly Load[];
  readonly cost: number;
}

export function cutting(task: Task, loads: readonly Load[]): Cutting {
  return { loads, cost: costOf(task, loads) };
}
