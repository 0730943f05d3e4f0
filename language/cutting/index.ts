import { firstFit } from './firstfit.ts';
import { makeMenu } from './menu.ts';
import { cutOffcuts } from './offcuts.ts';
import { finishPlan, makeStage } from './plan.ts';
import type { CutProblem, CutResult } from './problem.ts';
import { spliceChoices } from './splices.ts';
import { cheapestStages, longestOf, roughBounds } from './stages.ts';
import { costOf } from './task.ts';

export { type Container, type ContainerPurchase, cheapestContainers } from './containers.ts';
export type * from './problem.ts';

/** Enough for nearly every rig; a search that uses it up takes some tenths of a second. */
const DEFAULT_NODES = 200_000;

/**
 * Chooses which rolls to buy and how to cut them and the offcuts on hand. Aims in this order: no needless splice (as few
 * splices as possible, and none in a piece that a roll or a free offcut holds), least money, the longest single length
 * left over (an untouched offcut counts). The answer says what is proven. With no roll on sale nothing is spliced.
 *
 * @param problem lengths in any one integer unit, money in integer minor units
 * @throws RangeError if a length or a price is not a safe integer in its range, which is the caller's bug
 */
export function cutRolls(problem: CutProblem): CutResult {
  checkNumbers(problem);
  const nodes = problem.budget?.nodes ?? DEFAULT_NODES;
  const menu = makeMenu(problem);
  if (menu.rolls.length === 0) return cutOffcuts(problem, menu, nodes);

  const longest = menu.rolls.at(-1)!.length;
  const long = problem.pieces.flatMap(({ length }, piece) => (length > longest ? [{ piece, length }] : []));
  const { choices, complete, impossible } = spliceChoices(long, { ...problem, rolls: menu.rolls });
  if (impossible.length > 0) {
    return { ok: false, reason: 'cannot-splice', pieces: impossible.map((piece) => problem.pieces[piece]!.id) };
  }
  const stages = choices.map((choice) => makeStage(problem, menu, choice));
  const answers = cheapestStages(stages, { nodes });
  const cost = Math.min(...answers.map((answer) => answer.cost));
  const cheapest = answers.filter((answer) => answer.cost === cost);
  const { stage, loads, left, bound } = longestOf(problem, menu, cheapest, { nodes });

  const plain = stages[0]!;
  const proven = {
    volumeBound: Math.min(...answers.map((answer) => answer.volumeBound)),
    lowerBound: Math.min(...answers.map((answer) => answer.lowerBound)),
    leftBound: bound,
  };
  const rough = roughBounds(problem, menu, cost, stage.splices);
  const unsure = { volumeBound: rough.money, lowerBound: rough.money, leftBound: Math.max(left, rough.left) };
  const sure = complete && stages.every((one) => !one.bent);
  return {
    ok: true,
    plan: finishPlan(problem, menu, stage, loads, {
      cost,
      firstFitCost: plain.soleCost + costOf(plain.task, firstFit(plain.task)!),
      ...(sure ? proven : unsure),
    }),
  };
}

function checkNumbers(problem: CutProblem): void {
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
