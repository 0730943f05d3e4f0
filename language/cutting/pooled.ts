import { type FleetPurchase, fleetPurchase } from './fleet.ts';
import { leastMoney } from './lattice.ts';
import { slackBound } from './leftover.ts';
import type { LinearPrograms } from './linear.ts';
import { type Menu, makeMenu } from './menu.ts';
import { cutOffcuts } from './offcuts.ts';
import { finishPlan, makeStage, type Stage } from './plan.ts';
import type { CutProblem, CutResult } from './problem.ts';
import { checkNumbers, DEFAULT_NODES } from './rig.ts';
import { fleetChoices } from './splices.ts';
import { cutRolls } from './voluntary.ts';

/** Up to so many pieces the search for one rig is tried first. */
const ONE_RIG = 60;
/** Times the steps of one rig. */
const FLEET = 10;

/**
 * Chooses which rolls to buy for many rigs at once and how to cut them and the offcuts on hand: the same question, aims
 * and answer as `cutRolls`, for thousands of pieces. One purchase for all is cheaper than one for each rig, because the
 * rest of a roll serves the next rig. The leftover is that of the plan found; its bound is the rough one.
 *
 * @param lp a solver of linear programs: with it bounds are closer and more answers are proven
 * @throws RangeError if a length or a price is not a safe integer in its range, which is the caller's bug
 */
export function cutFleet(problem: CutProblem, lp?: LinearPrograms): CutResult {
  checkNumbers(problem);
  const nodes = problem.budget?.nodes ?? DEFAULT_NODES;
  const menu = makeMenu(problem);
  if (menu.rolls.length === 0) return cutOffcuts(problem, menu, nodes);
  const single = problem.pieces.length <= ONE_RIG ? cutRolls(problem) : undefined;
  if (single && (!single.ok || single.plan.proof !== 'none')) return single;

  const solved = solve(problem, menu, lp, nodes * FLEET);
  if ('impossible' in solved) {
    return { ok: false, reason: 'cannot-splice', pieces: solved.impossible.map((piece) => problem.pieces[piece]!.id) };
  }
  const { stage, purchase, cost } = solved;
  const fewest = boundsOf(problem, menu, solved, lp, nodes * FLEET);
  // A fleet's plan wastes less than a roll: splices for money's sake are not looked for, but the bound allows for them.
  const spliced = problem.splice.voluntary ? roughMoney(problem, menu, stage.splices + 1) : Number.POSITIVE_INFINITY;
  const lowerBound = Math.min(fewest.lowerBound, spliced);
  const volumeBound = Math.min(fewest.volumeBound, spliced);
  const total = problem.pieces.reduce((sum, piece) => sum + piece.length, stage.splices * problem.splice.lap);
  const held = problem.offcuts.map((offcut) => Math.max(0, offcut.length));
  const plan = finishPlan(problem, menu, stage, purchase.loads, {
    cost,
    firstFitCost: stage.soleCost + purchase.firstFitCost,
    volumeBound,
    lowerBound,
    leftBound: slackBound(menu.rolls, held, cost, total),
    byLinearProgram: lp !== undefined && !purchase.bySearch,
  });
  if (single?.ok && single.plan.cost <= plan.cost) {
    return single.plan.lowerBound >= plan.lowerBound ? single : { ok: true, plan: { ...plan, ...single.plan } };
  }
  return { ok: true, plan };
}

interface Solved {
  readonly stage: Stage;
  readonly purchase: FleetPurchase;
  readonly cost: number;
  readonly volumeBound: number;
  readonly lowerBound: number;
  /** The bounds hold for all plans with as few splices, not only for those that splice in this way. */
  readonly all: boolean;
}

function solve(
  problem: CutProblem,
  menu: Menu,
  lp: LinearPrograms | undefined,
  nodes: number,
): Solved | { readonly impossible: readonly number[] } {
  const longest = menu.rolls.at(-1)!.length;
  const long = problem.pieces.flatMap(({ length }, piece) => (length > longest ? [{ piece, length }] : []));
  const { choices, complete, impossible } = fleetChoices(long, { ...problem, rolls: menu.rolls });
  if (impossible.length > 0) return { impossible };
  const answers = choices.map((choice) => {
    const stage = makeStage(problem, menu, choice);
    const purchase = fleetPurchase(stage.task, lp, { nodes });
    return { stage, purchase, cost: stage.soleCost + purchase.cost };
  });
  const least = (money: (purchase: FleetPurchase) => number): number =>
    Math.min(...answers.map(({ stage, purchase }) => stage.soleCost + money(purchase)));
  return {
    ...answers.reduce((best, one) => (one.cost < best.cost ? one : best)),
    volumeBound: least((purchase) => purchase.volumeBound),
    lowerBound: least((purchase) => purchase.lowerBound),
    all: complete && !answers.some(({ stage }) => stage.bent),
  };
}

/** Bounds for every plan with as few splices; where parts gave way, those of the problem without a least part. */
function boundsOf(
  problem: CutProblem,
  menu: Menu,
  solved: Solved,
  lp: LinearPrograms | undefined,
  nodes: number,
): { readonly lowerBound: number; readonly volumeBound: number } {
  const { cost, stage } = solved;
  const rough = Math.min(cost, roughMoney(problem, menu, stage.splices));
  const within = (bound: number): number => Math.min(cost, Math.max(rough, bound));
  if (solved.all) return { lowerBound: within(solved.lowerBound), volumeBound: within(solved.volumeBound) };
  if (rough < cost && stage.bent) {
    const free = solve({ ...problem, splice: { ...problem.splice, leastPart: 0 } }, menu, lp, nodes);
    if (!('impossible' in free) && free.all && free.stage.splices === stage.splices) {
      return { lowerBound: within(free.lowerBound), volumeBound: within(free.volumeBound) };
    }
  }
  return { lowerBound: rough, volumeBound: rough };
}

/** What the pieces cost at least whatever the parts, when at least so many splices are needed. */
function roughMoney(problem: CutProblem, menu: Menu, splices: number): number {
  const total = problem.pieces.reduce((sum, piece) => sum + piece.length, splices * problem.splice.lap);
  const need = problem.offcuts.reduce((open, offcut) => open - Math.max(0, offcut.length), total);
  return leastMoney(menu.rolls, false)(0, need);
}
