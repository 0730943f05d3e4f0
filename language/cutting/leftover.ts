import { fillInTurn, fillWays } from './fill.ts';
import { pricing } from './price.ts';
import type { Purse } from './problem.ts';
import type { Purchase } from './purchase.ts';
import { lowestFrom } from './reach.ts';
import { type Bin, binsOf, loadsOf, packBins } from './stock.ts';
import { type Load, longestLeftOf, type Task } from './task.ts';

/** Loads of the same cost whose longest leftover is `left`; no loads of that cost leave more than `bound`. */
export interface Leftover {
  readonly loads: readonly Load[];
  readonly left: number;
  readonly bound: number;
}

const TRIES = 12;
const FIRST_LOOK = 500;
const ROUNDS = 60;

/** One stock that is to be left as long as possible, and the sums that its pieces may come to, tried from below. */
interface Short {
  readonly bins: readonly Bin[];
  readonly short: number;
  readonly length: number;
  /** Everything below this sum is proven impossible. */
  open: number | undefined;
  /** The sum to try next in this round. */
  at: number | undefined;
}

/**
 * The longest single leftover at the cost of `purchase`. One stock is the short one: it leaves `length - s` exactly when
 * the pieces fit with only `s` of it in use, so each question is again whether pieces fit into fixed bins. The sums `s`
 * are tried from the least that the total length allows; what fits there first is the optimum.
 *
 * @param known a leftover that another plan already reaches; only longer ones are looked for
 */
export function longestLeftover(task: Task, purchase: Purchase, known: number, purse: Purse): Leftover {
  let loads = purchase.loads;
  let left = Math.max(known, longestLeftOf(task, loads));
  const shorts = purchase.purchases.flatMap((counts) => shortsOf(task, counts));

  for (const short of shorts) {
    if (leavesOf(task, short, short.open) <= left) continue;
    for (const found of fillOthers(task, short, purse)) {
      const longest = longestLeftOf(task, found);
      if (longest > left) {
        loads = found;
        left = longest;
      }
      if (leavesOf(task, short, short.open) <= left) break;
    }
  }
  if (!task.exact || !purchase.complete) {
    const held = task.offcuts.map((offcut) => offcut.length);
    return { loads, left, bound: Math.max(left, slackBound(task.rolls, held, purchase.cost, task.total)) };
  }

  for (const short of shorts) raiseByPrices(task, short, left, purse);
  for (let nodes = FIRST_LOOK; purse.nodes > 0 && boundOf(task, shorts) > left; nodes *= 10) {
    for (const short of shorts) short.at = short.open;
    for (let short = best(task, shorts); short && leavesOf(task, short, short.at) > left; short = best(task, shorts)) {
      if (purse.nodes <= 0) break;
      const sum = short.at!;
      const granted: Purse = { nodes: Math.min(nodes, purse.nodes) };
      const before = granted.nodes;
      const answer = packBins(task, shortened(short, sum), granted);
      purse.nodes -= Math.max(1, before - granted.nodes);
      if (answer === 'no' || answer === 'unknown') {
        short.at = lowestFrom(task.sums, 0, sum + 1, short.bins[short.short]!.cap);
        if (answer === 'no') short.open = short.at;
      } else {
        loads = answer;
        left = longestLeftOf(task, answer);
      }
    }
  }
  return { loads, left, bound: Math.max(left, boundOf(task, shorts)) };
}

function shortsOf(task: Task, counts: readonly number[]): Short[] {
  const bins = binsOf(task, counts);
  const whole = bins.reduce((sum, bin) => sum + bin.cap, 0);
  const seen = new Set<string>();
  const shorts: Short[] = [];
  for (const [short, bin] of bins.entries()) {
    const { length } = bin.kind === 'roll' ? task.rolls[bin.index]! : task.offcuts[bin.index]!;
    const key = `${bin.kind} ${length}`;
    if (seen.has(key)) continue;
    seen.add(key);
    // A bought roll is cut: with one left whole the plan would cost less.
    const cut = bin.kind === 'roll' ? (task.lengths.at(-1) ?? 0) : 0;
    const least = Math.max(cut, task.totalTicks - (whole - bin.cap));
    const open = least > bin.cap ? undefined : lowestFrom(task.sums, 0, least, bin.cap);
    shorts.push({ bins, short, length, open, at: open });
  }
  return shorts;
}

/**
 * Proves sums impossible by prices: what the other stocks carry at most, the short one must carry, and a sum at which it
 * carries less is too small. The prices aim at the last sum that would leave more than `left`; where that is out of
 * reach, at the first one still open.
 */
function raiseByPrices(task: Task, short: Short, left: number, purse: Purse): void {
  const { cap } = short.bins[short.short]!;
  const others = short.bins.filter((_, i) => i !== short.short).map((bin) => ({ cap: bin.cap, count: 1 }));
  const price = pricing(task.lengths, task.counts, Math.max(...short.bins.map((bin) => bin.cap)), purse);
  const goal = Math.min(cap, Math.ceil((short.length - left) / task.tick) - 1);
  for (let round = 0; round < ROUNDS && purse.nodes > 0; round++) {
    if (short.open === undefined || short.open > goal) return;
    const { worth, carries } = price([...others, { cap: round < ROUNDS / 2 ? goal : short.open, count: 1 }]);
    const must = others.reduce((sum, other) => sum - carries[other.cap]!, worth);
    while (short.open !== undefined && carries[short.open]! < must) {
      short.open = lowestFrom(task.sums, 0, short.open + 1, cap);
    }
  }
}

/** What the short stock leaves when its pieces come to `sum` ticks; below every length when no sum is left. */
function leavesOf(task: Task, short: Short, sum: number | undefined): number {
  return sum === undefined ? -1 : short.length - sum * task.tick;
}

function boundOf(task: Task, shorts: readonly Short[]): number {
  return shorts.reduce((bound, short) => Math.max(bound, leavesOf(task, short, short.open)), -1);
}

function best(task: Task, shorts: readonly Short[]): Short | undefined {
  let found: Short | undefined;
  for (const short of shorts) {
    if (!found || leavesOf(task, short, short.at) > leavesOf(task, found, found.at)) found = short;
  }
  return found;
}

function shortened(short: Short, cap: number): Bin[] {
  return short.bins.map((bin, i) => (i === short.short ? { ...bin, cap } : bin));
}

/** Fills all other bins as full as possible; what is left goes into the short one if it has room. */
function* fillOthers(task: Task, short: Short, purse: Purse): Generator<Load[]> {
  const last = short.bins[short.short]!;
  const others = short.bins.filter((_, i) => i !== short.short);
  for (const [n, way] of fillWays(task.lengths.length, TRIES).entries()) {
    if (purse.nodes <= 0) return;
    const turn = n % 4 < 2 ? others : [...others].reverse();
    const caps = turn.map((bin) => bin.cap);
    const filled = fillInTurn(task.lengths, task.counts, caps, way, purse);
    if (filled.leftTicks === 0 && last.kind === 'roll') continue;
    if (filled.leftTicks <= last.cap) yield loadsOf([...turn, last], [...filled.fillings, filled.left]);
  }
}

/**
 * No single leftover is longer than what this money can buy and what is on hand, less the pieces, nor than the longest
 * stock. Rough, but true also where nothing is searched.
 */
export function slackBound(
  rolls: readonly { readonly length: number; readonly price: number }[],
  offcuts: readonly number[],
  cost: number,
  total: number,
): number {
  const longest = Math.max(0, ...rolls.map((roll) => roll.length), ...offcuts);
  const rate = Math.max(0, ...rolls.map((roll) => roll.length / roll.price));
  const bought = cost === 0 ? 0 : Math.floor(cost * rate * (1 + 1e-12));
  return Math.min(longest, bought + offcuts.reduce((sum, length) => sum + length, 0) - total);
}
