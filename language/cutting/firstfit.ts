import { costOf, type Load, leftOf, type Task } from './task.ts';

interface Open {
  readonly kind: 'roll' | 'offcut';
  readonly index: number;
  room: number;
  readonly counts: number[];
}

/**
 * First-fit-decreasing with the best choice of roll: offcuts first (shortest first), then rolls; one pass per roll on
 * sale as the one that is opened, afterwards every roll is changed for the cheapest that still holds its pieces.
 * The cheapest pass counts. This is both the first answer and the yardstick.
 *
 * @returns undefined if a piece fits no roll and no open offcut
 */
export function firstFit(task: Task): Load[] | undefined {
  const passes = task.rolls.length === 0 ? [0] : task.rolls.keys();
  let best: Load[] | undefined;
  for (const opened of passes) {
    const loads = pass(task, opened);
    if (loads && (!best || costOf(task, loads) < costOf(task, best))) best = loads;
  }
  return best;
}

function pass(task: Task, opened: number): Load[] | undefined {
  const bins: Open[] = task.offcuts
    .map((offcut, index): Open => ({ kind: 'offcut', index, room: offcut.length, counts: task.sizes.map(() => 0) }))
    .sort((a, b) => a.room - b.room);
  for (const [i, size] of task.sizes.entries()) {
    let from = 0;
    for (let n = 0; n < task.counts[i]!; n++) {
      while (from < bins.length && bins[from]!.room < size) from++;
      if (from === bins.length) {
        const roll = rollFor(task, size, opened);
        if (roll === undefined) return undefined;
        bins.push({ kind: 'roll', index: roll, room: task.rolls[roll]!.length, counts: task.sizes.map(() => 0) });
      }
      bins[from]!.room -= size;
      bins[from]!.counts[i]!++;
    }
  }
  const loads = bins.map(({ kind, index, counts }): Load => ({ kind, index, counts }));
  return withCheapestRolls(
    task,
    loads.filter(({ counts }) => counts.some((count) => count > 0)),
  );
}

function rollFor(task: Task, size: number, opened: number): number | undefined {
  if (task.rolls[opened] && task.rolls[opened].length >= size) return opened;
  const longer = task.rolls.findIndex((roll) => roll.length >= size);
  return longer < 0 ? undefined : longer;
}

/** Changes every roll for the cheapest that still holds its pieces; rolls rise in length and price, so the first does. */
export function withCheapestRolls(task: Task, loads: readonly Load[]): Load[] {
  return loads.map((load) => {
    if (load.kind === 'offcut') return load;
    const used = -leftOf(task, 0, load.counts);
    return { ...load, index: task.rolls.findIndex((roll) => roll.length >= used) };
  });
}
