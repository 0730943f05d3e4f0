import { fillInTurn, fillWays } from './fill.ts';
import { firstFit, withCheapestRolls } from './firstfit.ts';
import { climb, dominatedSets, makeLadder, purchasesAt } from './ladder.ts';
import { pricing } from './price.ts';
import type { Purse } from './problem.ts';
import { type Bin, binsOf, loadsOf, packBins } from './stock.ts';
import { costOf, type Load, type Task } from './task.ts';

/** The cheapest purchase found for a task, a way to cut it, and what is proven. */
export interface Purchase {
  readonly loads: readonly Load[];
  readonly cost: number;
  /** Money below which no purchase is long enough. */
  readonly volumeBound: number;
  /** Money below which no purchase can be cut to the pieces. */
  readonly lowerBound: number;
  readonly firstFitCost: number;
  /** Roll counts of exactly this cost that may hold the pieces; `complete` false: there may be others. */
  readonly purchases: readonly (readonly number[])[];
  readonly complete: boolean;
}

/** Tries of the filling heuristic for one set of bins. */
const TRIES = 40;
/** Rounds of pricing for one set of bins; proofs come within ten as a rule. Small tables are priced for longer. */
const ROUNDS = 30;
const MOST_ROUNDS = 400;
const SMALL = 6_000;
/** Search steps granted to one set of bins before all others had their turn. */
const FIRST_LOOK = 2_000;
/** Rungs that are searched at all; the first one beyond stays open and so caps the bound. */
const MOST_OPEN = 200;

/**
 * Least money. The first-fit plan is compared with the volume bound on the money ladder; where they differ, the rungs
 * between are climbed: prices prove most rungs too small, the filling heuristic cuts the first that is not, and the exact
 * search decides what is open below.
 * Every piece fits some roll.
 *
 * @throws if a piece fits no roll
 */
export function cheapestPurchase(task: Task, purse: Purse): Purchase {
  const first = firstFit(task);
  if (!first) throw new RangeError('a piece fits no roll on sale');
  const firstFitCost = costOf(task, first);
  const need = needOf(task);
  const ladder = makeLadder(task.rolls, firstFitCost);
  if (!ladder) {
    const bound = Math.min(firstFitCost, valueBound(task, need));
    const found = { loads: first, cost: firstFitCost, purchases: [countsOf(task, first)] };
    return { ...found, volumeBound: bound, lowerBound: bound, firstFitCost, complete: false };
  }

  const volumeBound = climb(ladder, 0, need) ?? firstFitCost;
  const dominated = dominatedSets(task.rolls);
  let best: { readonly loads: readonly Load[]; readonly cost: number } = { loads: first, cost: firstFitCost };
  if (volumeBound < best.cost) {
    const filled = fillEachRoll(task, best.cost, purse);
    if (filled) best = { loads: filled, cost: costOf(task, filled) };
  }
  const open = new Map<number, Rung>();
  for (let cost: number | undefined = volumeBound; cost !== undefined && cost < best.cost; ) {
    if (open.size === MOST_OPEN || purse.nodes <= 0) {
      open.set(cost, { purchases: [], complete: false });
      break;
    }
    const listed = purchasesAt(ladder, cost, need, dominated);
    const purchases = listed.purchases.filter((purchase) => !pricedOut(task, binsOf(task, purchase), purse));
    const loads = firstFound(purchases, (purchase) => tryFilling(task, binsOf(task, purchase), purse));
    if (loads) best = { loads, cost };
    else if (purchases.length > 0 || !listed.complete) open.set(cost, { purchases, complete: listed.complete });
    cost = climb(ladder, cost + 1, need);
  }

  for (let nodes = FIRST_LOOK; purse.nodes > 0 && searchable(open); nodes *= 10) {
    for (const [cost, rung] of open) {
      const { loads, purchases } = look(task, rung, nodes, purse);
      if (loads) {
        best = { loads, cost };
        for (const other of open.keys()) if (other >= cost) open.delete(other);
        break;
      }
      if (purchases.length === 0 && rung.complete) open.delete(cost);
      else open.set(cost, { purchases, complete: rung.complete });
    }
  }
  const lowerBound = Math.min(best.cost, ...open.keys());
  const atCost = purchasesAt(ladder, best.cost, need, dominated);
  return { ...best, volumeBound, lowerBound, firstFitCost, ...atCost };
}

/** The purchases of one rung that are not yet proven too small; `complete` false: some were not even listed. */
interface Rung {
  readonly purchases: readonly (readonly number[])[];
  readonly complete: boolean;
}

function searchable(open: ReadonlyMap<number, Rung>): boolean {
  return [...open.values()].some((rung) => rung.purchases.length > 0);
}

/** Whether prices prove that the pieces do not fit. */
function pricedOut(task: Task, bins: readonly Bin[], purse: Purse): boolean {
  if (!task.exact) return false;
  const counted = new Map<number, number>();
  for (const { cap } of bins) counted.set(cap, (counted.get(cap) ?? 0) + 1);
  const kinds = [...counted].map(([cap, count]) => ({ cap, count }));
  const price = pricing(task.lengths, task.counts, Math.max(0, ...bins.map((bin) => bin.cap)), purse);
  const before = purse.nodes;
  for (let round = 0; round < MOST_ROUNDS && purse.nodes > 0; round++) {
    if (round >= ROUNDS && before - purse.nodes > SMALL) return false;
    const { worth, carries } = price(kinds);
    if (kinds.reduce((sum, { cap, count }) => sum + count * carries[cap]!, 0) < worth) return true;
  }
  return false;
}

/** One turn of the exact search over a rung: a plan, or the purchases that are still open. */
function look(
  task: Task,
  rung: Rung,
  nodes: number,
  purse: Purse,
): { loads?: readonly Load[]; purchases: (readonly number[])[] } {
  const purchases: (readonly number[])[] = [];
  for (const purchase of rung.purchases) {
    const granted: Purse = { nodes: Math.min(nodes, purse.nodes) };
    const before = granted.nodes;
    const answer = before > 0 ? packBins(task, binsOf(task, purchase), granted) : 'unknown';
    purse.nodes -= Math.max(1, before - granted.nodes);
    if (answer === 'unknown') purchases.push(purchase);
    else if (answer !== 'no') return { loads: answer, purchases };
  }
  return { purchases };
}

/** A plan cheaper than `cost` from rolls of one kind, each filled as full as possible, or undefined. */
function fillEachRoll(task: Task, cost: number, purse: Purse): Load[] | undefined {
  let best: Load[] | undefined;
  for (const [index, roll] of task.rolls.entries()) {
    const purchase = task.rolls.map((_, k) => (k === index ? Math.floor((cost - 1) / roll.price) : 0));
    const bins = binsOf(task, purchase).sort((a, b) => a.kind.localeCompare(b.kind));
    if (bins.reduce((sum, bin) => sum + bin.cap, 0) < task.totalTicks) continue;
    for (const way of fillWays(task.lengths.length, 2)) {
      const filled = fillInTurn(
        task.lengths,
        task.counts,
        bins.map((bin) => bin.cap),
        way,
        purse,
      );
      if (filled.leftTicks > 0) continue;
      const loads = withCheapestRolls(task, loadsOf(bins, filled.fillings));
      if (costOf(task, loads) < (best ? costOf(task, best) : cost)) best = loads;
    }
  }
  return best;
}

/** A plan for these bins by filling one after the other in several ways, or undefined: that proves nothing. */
export function tryFilling(task: Task, bins: readonly Bin[], purse: Purse, tries = TRIES): Load[] | undefined {
  const falling = [...bins].reverse();
  for (const [n, way] of fillWays(task.lengths.length, tries).entries()) {
    if (purse.nodes <= 0) return undefined;
    const turn = n % 4 < 2 ? bins : falling;
    const caps = turn.map((bin) => bin.cap);
    const filled = fillInTurn(task.lengths, task.counts, caps, way, purse);
    if (filled.leftTicks === 0) return loadsOf(turn, filled.fillings);
  }
  return undefined;
}

function firstFound<T, R>(all: readonly T[], find: (one: T) => R | undefined): R | undefined {
  for (const one of all) {
    const found = find(one);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** How many of each roll these loads use. */
function countsOf(task: Task, loads: readonly Load[]): number[] {
  const counts = task.rolls.map(() => 0);
  for (const load of loads) if (load.kind === 'roll') counts[load.index]!++;
  return counts;
}

/** The length needed at the best price per length, rounded up to whole money: the bound where a ladder is too long. */
export function valueBound(task: Task, need: number): number {
  const rate = Math.min(...task.rolls.map((roll) => (roll.usable > 0 ? roll.price / roll.usable : Infinity)));
  return need <= 0 ? 0 : Math.ceil(need * rate * (1 - 1e-12));
}

/** What the rolls must hold at least, in the caller's unit: the pieces less all that the offcuts could take. */
export function needOf(task: Task): number {
  return task.total - task.offcuts.reduce((sum, offcut) => sum + offcut.usable, 0);
}
