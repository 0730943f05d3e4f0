import { bestValue, type Flavour, fillInBulk } from './bulk.ts';
import { fillInTurn, fillWays } from './fill.ts';
import { firstFit, withCheapestRolls } from './firstfit.ts';
import { leastMoney } from './lattice.ts';
import type { LinearPrograms } from './linear.ts';
import type { Purse } from './problem.ts';
import { needOf } from './purchase.ts';
import { asWhole, leftAfter, remainderOf } from './remainder.ts';
import { type Cutting, cutTail, cutting } from './tail.ts';
import { costOf, type Load, type Task } from './task.ts';

/** The cheapest purchase found for many pieces, and what is proven. */
export interface FleetPurchase extends Cutting {
  readonly volumeBound: number;
  readonly lowerBound: number;
  readonly firstFitCost: number;
}

/** How many of the last rolls are cut anew, tried in this order. */
const TAILS = [6, 10, 16];

/**
 * Least money for many pieces. First-fit-decreasing is compared with the volume bound; where they differ, the offcuts
 * are filled as full as possible, then rolls in bulk, and the last ones are chosen and cut by the search for single rigs.
 *
 * @throws if a piece fits no roll
 */
export function fleetPurchase(task: Task, _lp: LinearPrograms | undefined, purse: Purse): FleetPurchase {
  const first = firstFit(task);
  if (!first) throw new RangeError('a piece fits no roll on sale');
  const firstFitCost = costOf(task, first);
  const unit = task.exact ? task.tick : 1;
  const least = leastMoney(
    task.rolls.map(({ usable, price }) => ({ length: usable / unit, price })),
    task.exact,
  );
  const volumeBound = Math.min(firstFitCost, least(0, needOf(task) / unit));
  let best = cutting(task, first);

  if (best.cost > volumeBound) {
    const held = fillOffcuts(task, purse);
    for (const flavour of flavoursFor(task)) {
      const found = cutInBulk(task, held, flavour, { from: volumeBound, below: best.cost }, purse);
      if (found) best = found;
      if (best.cost === volumeBound) break;
    }
  }
  return { ...best, volumeBound, lowerBound: volumeBound, firstFitCost };
}

/** Fills the offcuts, shortest first, each as full as the pieces allow. */
function fillOffcuts(task: Task, purse: Purse): Load[] {
  const order = [...task.offcuts.keys()].sort((a, b) => task.offcuts[a]!.cap - task.offcuts[b]!.cap);
  const [way] = fillWays(task.lengths.length, 3).slice(2);
  const caps = order.map((index) => task.offcuts[index]!.cap);
  const { fillings } = fillInTurn(task.lengths, task.counts, caps, way!, purse);
  return order.flatMap((index, i): Load[] => {
    const counts = fillings[i]!;
    return counts.some((count) => count > 0) ? [{ kind: 'offcut', index, counts }] : [];
  });
}

/** Large pieces leave little room beside them: they come first. Else all rolls get a share of each length. */
function flavoursFor(task: Task): Flavour[] {
  return task.rolls[bestValue(task)]!.cap >= 2 * (task.lengths[0] ?? 0) ? ['mix', 'largest'] : ['largest', 'mix'];
}

/** Offcuts, rolls in bulk, then the tail, for less than `below`; stops early at `from`, which nothing undercuts. */
function cutInBulk(
  task: Task,
  held: readonly Load[],
  flavour: Flavour,
  money: { readonly from: number; readonly below: number },
  purse: Purse,
): Cutting | undefined {
  const rest = remainderOf(task, leftAfter(task, held));
  const bulk = fillInBulk(rest.task, flavour, purse);
  let best: Cutting | undefined;
  let below = money.below;
  const whole = [...held, ...asWhole(task, rest, withCheapestRolls(rest.task, bulk))];
  if (costOf(task, whole) < below) {
    best = cutting(task, whole);
    below = best.cost;
  }
  for (const size of TAILS) {
    if (below === money.from) break;
    const kept = bulk.slice(0, Math.max(0, bulk.length - size));
    const last = remainderOf(rest.task, leftAfter(rest.task, kept));
    const tail = cutTail(last.task, below - costOf(rest.task, kept), purse);
    if (!tail) continue;
    const loads = [...held, ...asWhole(task, rest, [...kept, ...asWhole(rest.task, last, tail)])];
    best = cutting(task, loads);
    below = best.cost;
  }
  return best;
}
