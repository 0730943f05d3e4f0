import { firstFit } from './firstfit.ts';
import { type Menu, makeMenu } from './menu.ts';
import { cutOffcuts } from './offcuts.ts';
import { type Findings, finishPlan, makeStage, type Stage } from './plan.ts';
import type { CutProblem, CutResult } from './problem.ts';
import { spliceChoices } from './splices.ts';
import { cheapestStages, longestOf, roughBounds } from './stages.ts';
import { costOf, type Load } from './task.ts';

/** Enough for nearly every rig; a search that uses it up takes some tenths of a second. */
export const DEFAULT_NODES = 200_000;

/** The plan with no needless splice: as few as possible, none in a piece that a roll or a free offcut holds. */
export function cutWithFewestSplices(problem: CutProblem): CutResult {
  checkNumbers(problem);
  const nodes = problem.budget?.nodes ?? DEFAULT_NODES;
  const menu = makeMenu(problem);
  if (menu.rolls.length === 0) return cutOffcuts(problem, menu, nodes);

  const solved = solve(problem, menu, nodes);
  if ('impossible' in solved) {
    return { ok: false, reason: 'cannot-splice', pieces: solved.impossible.map((piece) => problem.pieces[piece]!.id) };
  }
  const { stage, loads, cost, firstFitCost } = solved;
  const findings = { cost, firstFitCost, ...(solved.bent ? relaxed(problem, menu, solved, nodes) : solved) };
  return { ok: true, plan: finishPlan(problem, menu, stage, loads, findings) };
}

interface Solved {
  readonly stage: Stage;
  readonly loads: readonly Load[];
  readonly cost: number;
  readonly firstFitCost: number;
  readonly volumeBound: number;
  readonly lowerBound: number;
  readonly left: number;
  readonly leftBound: number;
  /** A part had to give way for a remainder: the bounds hold only for plans that splice in this way. */
  readonly bent: boolean;
}

function solve(problem: CutProblem, menu: Menu, nodes: number): Solved | { readonly impossible: readonly number[] } {
  const longest = menu.rolls.at(-1)!.length;
  const long = problem.pieces.flatMap(({ length }, piece) => (length > longest ? [{ piece, length }] : []));
  const { choices, complete, impossible } = spliceChoices(long, { ...problem, rolls: menu.rolls });
  if (impossible.length > 0) return { impossible };

  const stages = choices.map((choice) => makeStage(problem, menu, choice));
  const answers = cheapestStages(stages, { nodes });
  const cheapest = Math.min(...answers.map((answer) => answer.cost));
  const { stage, loads, left, bound } = longestOf(
    problem,
    menu,
    answers.filter((answer) => answer.cost === cheapest),
    { nodes },
  );
  const plain = stages[0]!;
  // A search for the leftover may come upon a cheaper plan where the purchase was not proven.
  const cost = stage.soleCost + costOf(stage.task, loads);
  const rough = roughBounds(problem, menu, cost, stage.splices);
  return {
    stage,
    loads,
    cost,
    firstFitCost: plain.soleCost + costOf(plain.task, firstFit(plain.task)!),
    volumeBound: complete ? Math.min(...answers.map((answer) => answer.volumeBound)) : rough.money,
    lowerBound: complete ? Math.min(...answers.map((answer) => answer.lowerBound)) : rough.money,
    left,
    leftBound: complete ? bound : Math.max(left, rough.left),
    bent: stages.some((one) => one.bent),
  };
}

/** Bounds for a plan with a bent splice: those of the problem without a least part, where as many splices are needed. */
function relaxed(
  problem: CutProblem,
  menu: Menu,
  bent: Solved,
  nodes: number,
): Omit<Findings, 'cost' | 'firstFitCost'> {
  const rough = roughBounds(problem, menu, bent.cost, bent.stage.splices);
  const money = { volumeBound: rough.money, lowerBound: rough.money };
  const leftBound = Math.max(bent.left, rough.left);
  const free = solve({ ...problem, splice: { ...problem.splice, leastPart: 0 } }, menu, nodes);
  if ('impossible' in free || free.stage.splices !== bent.stage.splices) return { ...money, leftBound };
  return {
    volumeBound: Math.min(bent.cost, Math.max(rough.money, free.volumeBound)),
    lowerBound: Math.min(bent.cost, Math.max(rough.money, free.lowerBound)),
    leftBound: free.cost === bent.cost ? Math.max(bent.left, Math.min(rough.left, free.leftBound)) : leftBound,
  };
}

/** @throws RangeError for a figure that no caller should pass */
export function checkNumbers(problem: CutProblem): void {
  const whole = (value: number, least: number, what: string): void => {
    if (!Number.isSafeInteger(value) || value < least) throw new RangeError(`${what} is ${value}`);
  };
  for (const piece of problem.pieces) whole(piece.length, 1, `length of piece ${piece.id}`);
  for (const roll of problem.rolls) whole(roll.price, 0, `price of roll ${roll.id}`);
  for (const stock of [...problem.rolls, ...problem.offcuts]) {
    whole(stock.length, Number.MIN_SAFE_INTEGER, `length of stock ${stock.id}`);
  }
  whole(problem.splice.lap, 0, 'lap');
  whole(problem.splice.leastPart, 0, 'least part');
}
