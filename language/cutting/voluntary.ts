import { climb, dominatedSets, makeLadder, purchasesAt } from './ladder.ts';
import { type Menu, makeMenu } from './menu.ts';
import { finishPlan, makeStage, type Stage } from './plan.ts';
import type { CutPlan, CutProblem, CutResult, Purse } from './problem.ts';
import { tryFilling } from './purchase.ts';
import { addCopies, lowestFrom, wordsFor } from './reach.ts';
import { checkNumbers, cutWithFewestSplices, DEFAULT_NODES } from './rig.ts';
import { type SpliceChoice, type Spliced, spliceChoices } from './splices.ts';
import { cheapestStages, longestOf, roughBounds } from './stages.ts';
import { type Bin, binsOf } from './stock.ts';
import { costOf, type Load, type Task } from './task.ts';

/** Rungs of money that are tried at most, and ways to fill for each set of bins. */
const MOST_RUNGS = 40;
const TRIES = 12;
/** Steps for the hint that a splice would save money, where none is allowed for that. */
const HINT = 8_000;

/**
 * Chooses which rolls to buy and how to cut them and the offcuts on hand. Aims in this order: no needless splice (as few
 * splices as possible, and none in a piece that a roll or a free offcut holds), least money, the longest single length
 * left over (an untouched offcut counts). With `splice.voluntary` money comes before the number of splices. The answer
 * says what is proven. With no roll on sale nothing is spliced.
 *
 * @param problem lengths in any one integer unit, money in integer minor units
 * @throws RangeError if a length or a price is not a safe integer in its range, which is the caller's bug
 */
export function cutRolls(problem: CutProblem): CutResult {
  checkNumbers(problem);
  const result = cutWithFewestSplices(problem);
  const menu = makeMenu(problem);
  // Free rolls have a money of their own, in which a splice would only save a free roll.
  if (!result.ok || menu.rolls.length === 0 || menu.scale > 1) return result;
  const { plan } = result;
  const bound = roughBounds(problem, menu, plan.cost, plan.splices + 1).money;
  if (bound >= plan.cost) return result;

  if (!problem.splice.voluntary) {
    const found = withMoreSplices(problem, menu, plan, 1, { nodes: HINT });
    return found ? { ok: true, plan: { ...plan, oneSpliceSaves: plan.cost - found.cost } } : result;
  }
  const found = withMoreSplices(problem, menu, plan, 2, { nodes: problem.budget?.nodes ?? DEFAULT_NODES }) ?? plan;
  const lowerBound = Math.min(found.cost, bound, plan.lowerBound);
  const proof = lowerBound < found.cost ? 'none' : found === plan ? plan.proof : 'volume';
  return { ok: true, plan: { ...found, lowerBound, proof, firstFitCost: plan.firstFitCost } };
}

/**
 * A plan that costs less than `plan` with up to `most` splices more. A splice joins two stocks to one, a lap shorter than
 * both together, in which some piece lies across the joint: so the rungs below are tried with pairs of stocks joined.
 */
function withMoreSplices(
  problem: CutProblem,
  menu: Menu,
  plan: CutPlan,
  most: number,
  purse: Purse,
): CutPlan | undefined {
  const longest = menu.rolls.at(-1)!.length;
  const long = problem.pieces.flatMap(({ length }, piece) => (length > longest ? [{ piece, length }] : []));
  const choice = spliceChoices(long, { ...problem, rolls: menu.rolls }).choices[0];
  if (!choice) return undefined;
  const stage = makeStage(problem, menu, choice);
  // Joining is reckoned in ticks; where they only round lengths up it would not come out even.
  if (!stage.task.exact) return undefined;
  const { task } = stage;
  const ladder = makeLadder(
    menu.rolls.map((roll) => ({ ...roll, cap: Math.floor(roll.length / task.tick), usable: roll.length })),
    plan.cost - stage.soleCost - 1,
  );
  if (!ladder) return undefined;
  const dominated = dominatedSets(ladder.rolls);
  const held = task.offcuts.reduce((sum, offcut) => sum + offcut.length, 0);
  const need = task.total - held + problem.splice.lap;
  let cost = climb(ladder, 0, need);
  for (let rung = 0; rung < MOST_RUNGS && cost !== undefined && purse.nodes > 0; rung++) {
    const { purchases } = purchasesAt(ladder, cost, need, dominated);
    for (let splices = 1; splices <= most; splices++) {
      for (const purchase of purchases) {
        const found = joined(problem, menu, stage, choice, binsOf(task, purchase), splices, plan.cost, purse);
        if (found) return found;
      }
    }
    cost = climb(ladder, cost + 1, need);
  }
  return undefined;
}

function joined(
  problem: CutProblem,
  menu: Menu,
  stage: Stage,
  choice: SpliceChoice,
  bins: readonly Bin[],
  splices: number,
  below: number,
  purse: Purse,
): CutPlan | undefined {
  const { task } = stage;
  const lap = problem.splice.lap;
  const length = (bin: Bin): number => (bin.kind === 'roll' ? task.rolls : task.offcuts)[bin.index]!.length;
  for (const pairs of pairings(bins, splices)) {
    if (purse.nodes <= 0) return undefined;
    const used = new Set(pairs.flat());
    const alone = bins.filter((_, i) => !used.has(i));
    // Beyond the menu: that is how the loads of joined stocks are known again.
    const both = pairs.map(([a, b], n): Bin => {
      const together = length(bins[a]!) + length(bins[b]!) - lap;
      return { kind: 'roll', index: task.rolls.length + n, cap: Math.floor(together / task.tick) };
    });
    const room = [...alone, ...both].reduce((sum, bin) => sum + bin.cap, 0);
    if (room < task.totalTicks) continue;
    const loads = tryFilling(task, [...alone, ...both], purse, TRIES);
    if (!loads) continue;
    const cuts = pairs.map(([a, b], n) => {
      const load = loads.find((one) => one.kind === 'roll' && one.index === task.rolls.length + n);
      return load && across(task, load, length(bins[a]!), length(bins[b]!), problem.splice);
    });
    const found = spliced(problem, menu, stage, choice, cuts, below, purse);
    if (found) return found;
  }
  return undefined;
}

/** All ways to choose so many pairs of bins, bins of equal kind and length once. */
function* pairings(bins: readonly Bin[], pairs: number): Generator<[number, number][]> {
  const seen = new Set<string>();
  const key = (bin: Bin): string => (bin.kind === 'roll' ? `r${bin.index}` : `o${bin.index}`);
  function* choose(open: number, taken: readonly [number, number][]): Generator<[number, number][]> {
    if (open === 0) {
      const name = taken.map(([a, b]) => `${key(bins[a]!)} ${key(bins[b]!)}`).sort();
      if (seen.has(name.join())) return;
      seen.add(name.join());
      yield [...taken];
      return;
    }
    const used = new Set(taken.flat());
    const tried = new Set<string>();
    for (let a = taken.at(-1)?.[0] ?? 0; a < bins.length; a++) {
      for (let b = a + 1; b < bins.length; b++) {
        if (used.has(a) || used.has(b) || tried.has(`${key(bins[a]!)} ${key(bins[b]!)}`)) continue;
        tried.add(`${key(bins[a]!)} ${key(bins[b]!)}`);
        yield* choose(open - 1, [...taken, [a, b]]);
      }
    }
  }
  yield* choose(pairs, []);
}

/** The piece that lies across the joint of two stocks, and its parts; undefined where none can. */
function across(
  task: Task,
  load: Load,
  first: number,
  second: number,
  { lap, leastPart }: CutProblem['splice'],
): { readonly length: number; readonly fore: number; readonly aft: number } | undefined {
  const least = Math.max(leastPart, lap + 1);
  const total = load.counts.reduce((sum, count, kind) => sum + count * task.sizes[kind]!, 0);
  const words = wordsFor(Math.floor(first / task.tick));
  for (const [kind, size] of task.sizes.entries()) {
    if (load.counts[kind] === 0 || size + lap < 2 * least || first < least || second < least) continue;
    const sums = new Int32Array(words);
    sums[0] = 1;
    for (const [other, count] of load.counts.entries()) {
      const copies = other === kind ? count - 1 : count;
      if (copies > 0) addCopies(sums, 0, words, task.lengths[other]!, copies);
    }
    const low = Math.max(0, Math.ceil((total - second - size + least) / task.tick));
    const high = Math.floor((first - least) / task.tick);
    const beside = low > high ? undefined : lowestFrom(sums, 0, low, high);
    if (beside === undefined) continue;
    const fore = Math.min(first - beside * task.tick, size + lap - least);
    return { length: size, fore, aft: size + lap - fore };
  }
  return undefined;
}

/** Solves the problem with these pieces spliced so; undefined unless that costs less than `below`. */
function spliced(
  problem: CutProblem,
  menu: Menu,
  stage: Stage,
  choice: SpliceChoice,
  cuts: readonly (ReturnType<typeof across> | undefined)[],
  below: number,
  purse: Purse,
): CutPlan | undefined {
  const more: Spliced[] = [];
  for (const cut of cuts) {
    if (!cut) return undefined;
    const item = stage.items.find(
      ({ piece, length, part }) => length === cut.length && !part && !more.some((one) => one.piece === piece),
    );
    if (!item) return undefined;
    more.push({ piece: item.piece, sole: [], shared: cut.fore, rest: cut.aft, bent: false });
  }
  const answers = cheapestStages([makeStage(problem, menu, [...choice, ...more])], purse);
  if (answers[0]!.cost >= below) return undefined;
  const { stage: best, loads, left } = longestOf(problem, menu, answers, purse);
  const cost = best.soleCost + costOf(best.task, loads);
  const rough = roughBounds(problem, menu, cost, best.splices);
  return finishPlan(problem, menu, best, loads, {
    cost,
    firstFitCost: cost,
    volumeBound: rough.money,
    lowerBound: rough.money,
    leftBound: Math.max(left, rough.left),
  });
}
