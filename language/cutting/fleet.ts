import { bestValue, type Flavour, fillInBulk } from './bulk.ts';
import { demandOf, makeMaster, shelvesOf } from './columns.ts';
import { dive, raiseBound, seed } from './dive.ts';
import { fillInTurn, fillWays } from './fill.ts';
import { firstFit, withCheapestRolls } from './firstfit.ts';
import { leastMoney } from './lattice.ts';
import type { LinearPrograms } from './linear.ts';
import type { Purse } from './problem.ts';
import { cheapestPurchase, needOf } from './purchase.ts';
import { asWhole, leftAfter, remainderOf } from './remainder.ts';
import { type Cutting, cutTail, cutting } from './tail.ts';
import { costOf, type Load, type Task } from './task.ts';

/** The cheapest purchase found for many pieces, and what is proven. */
export interface FleetPurchase extends Cutting {
  readonly volumeBound: number;
  readonly lowerBound: number;
  /** The lower bound comes from trying, not from the linear program. */
  readonly bySearch: boolean;
  readonly firstFitCost: number;
}

/** How many of the last rolls are cut anew, tried in this order. */
const TAILS = [6, 10, 16];
/** A dive stops so many rolls before the end. */
const DIVE_ENDS = 8;
/** Dives are repeated, more and more carefully, while the bound is not reached. */
const BOLDNESS = [0.15, 0.4, 0.05];
/** A fleet of so few pieces is small enough for the search for one rig. */
const SEARCHED = 150;
/** Pricing takes short steps, and many: so many times those of the search for the bound, and for all dives together. */
const BOUND_STEPS = 60;
const DIVE_STEPS = 8;

/**
 * Least money for many pieces. First-fit-decreasing is compared with the volume bound; where they differ, the offcuts
 * are filled as full as possible, then rolls in bulk, and the last ones are chosen and cut by the search for single rigs.
 * What is then still open is for the linear program over all ways to cut a roll: it raises the bound, and its solution is
 * rounded to whole rolls.
 *
 * @throws if a piece fits no roll
 */
export function fleetPurchase(task: Task, lp: LinearPrograms | undefined, purse: Purse): FleetPurchase {
  if (task.total === 0) return { loads: [], cost: 0, volumeBound: 0, lowerBound: 0, bySearch: false, firstFitCost: 0 };
  const first = firstFit(task);
  if (!first) throw new RangeError('a piece fits no roll on sale');
  const firstFitCost = costOf(task, first);
  const searchNodes = Math.ceil(purse.nodes / 8);
  const unit = task.exact ? task.tick : 1;
  const least = leastMoney(
    task.rolls.map(({ usable, price }) => ({ length: usable / unit, price })),
    task.exact,
  );
  const rung = (bound: number): number => least(bound, needOf(task) / unit);
  const volumeBound = Math.min(firstFitCost, rung(0));
  const plans = [cutting(task, first)];
  const cheapest = (): Cutting => plans.reduce((best, plan) => (plan.cost < best.cost ? plan : best));

  const held = cheapest().cost > volumeBound ? fillOffcuts(task, task.counts, purse) : [];
  for (const flavour of flavoursFor(task)) {
    if (cheapest().cost === volumeBound) break;
    const rest = remainderOf(task, leftAfter(task, held));
    const rolls = asWhole(task, rest, fillInBulk(rest.task, flavour, purse));
    plans.push(...finish(task, [...held, ...rolls], { from: volumeBound, below: cheapest().cost }, purse));
  }
  let lowerBound = volumeBound;
  let bySearch = false;
  if (lp && task.exact && cheapest().cost > volumeBound) {
    const shelves = shelvesOf(task);
    lp.covering(demandOf(task.counts, shelves), (program) => {
      const master = makeMaster(task, shelves, program);
      for (const plan of plans) seed(master, plan.loads);
      const steps = { nodes: purse.nodes * BOUND_STEPS };
      lowerBound = Math.max(lowerBound, Math.min(cheapest().cost, raiseBound(master, rung, cheapest().cost, steps)));
      const until = DIVE_ENDS * task.rolls[bestValue(task)]!.cap;
      const diving = { nodes: purse.nodes * DIVE_STEPS };
      for (const boldness of BOLDNESS) {
        if (cheapest().cost === lowerBound || diving.nodes <= 0) return;
        const found = dive(master, boldness, until, diving);
        plans.push(...finish(task, found, { from: lowerBound, below: cheapest().cost }, purse));
      }
    });
  }
  if (cheapest().cost > lowerBound && task.counts.reduce((sum, count) => sum + count, 0) <= SEARCHED) {
    const searched = cheapestPurchase(task, { nodes: searchNodes });
    plans.push(searched);
    bySearch = searched.lowerBound > lowerBound;
    lowerBound = Math.max(lowerBound, searched.lowerBound);
  }
  return { ...cheapest(), volumeBound, lowerBound, bySearch, firstFitCost };
}

/** Fills the free offcuts, shortest first, each as full as the pieces left allow. */
function fillOffcuts(task: Task, left: readonly number[], purse: Purse, free?: readonly boolean[]): Load[] {
  const order = [...task.offcuts.keys()]
    .filter((index) => free?.[index] ?? true)
    .sort((a, b) => task.offcuts[a]!.cap - task.offcuts[b]!.cap);
  if (order.length === 0) return [];
  const [way] = fillWays(task.lengths.length, 3).slice(2);
  const caps = order.map((index) => task.offcuts[index]!.cap);
  const { fillings } = fillInTurn(task.lengths, left, caps, way!, purse);
  return order.flatMap((index, i): Load[] => {
    const counts = fillings[i]!;
    return counts.some((count) => count > 0) ? [{ kind: 'offcut', index, counts }] : [];
  });
}

/** Large pieces leave little room beside them: they come first. Else all rolls get a share of each length. */
function flavoursFor(task: Task): Flavour[] {
  return task.rolls[bestValue(task)]!.cap >= 2 * (task.lengths[0] ?? 0) ? ['mix', 'largest'] : ['largest', 'mix'];
}

/**
 * Completes loads to plans that cost less than `below`: more and more of the last loads are taken back, and what they and
 * no load hold is cut anew. Ends early at `from`, which nothing undercuts.
 */
function finish(
  task: Task,
  loads: readonly Load[],
  money: { readonly from: number; readonly below: number },
  purse: Purse,
): Cutting[] {
  const found: Cutting[] = [];
  let below = money.below;
  const add = (plan: readonly Load[]): void => {
    const cost = costOf(task, plan);
    if (found.length === 0 || cost < below) found.push({ loads: plan, cost });
    below = Math.min(below, cost);
  };
  if (leftAfter(task, loads).every((count) => count === 0)) add(withCheapestRolls(task, loads));
  for (const size of [0, ...TAILS]) {
    if (below <= money.from) break;
    const kept = loads.slice(0, Math.max(0, loads.length - size));
    const free = task.offcuts.map((_, index) => !kept.some((load) => load.kind === 'offcut' && load.index === index));
    const held = fillOffcuts(task, leftAfter(task, kept), purse, free);
    const all = [...kept, ...held];
    const last = remainderOf(task, leftAfter(task, all));
    const spent = costOf(task, all);
    const tail = cutTail(last.task, money.from - spent, below - spent, purse);
    if (tail) add([...all, ...asWhole(task, last, tail)]);
  }
  return found;
}
