import { climb, makeLadder } from './ladder.ts';
import { longestLeftover, slackBound } from './leftover.ts';
import type { Menu } from './menu.ts';
import type { Stage } from './plan.ts';
import type { CutProblem, Purse } from './problem.ts';
import { cheapestPurchase, needOf, type Purchase, valueBound } from './purchase.ts';
import type { Load } from './task.ts';

/** The cheapest purchase for one choice of splices, rolls that a single part takes included. */
export interface Answer {
  readonly stage: Stage;
  readonly purchase: Purchase;
  readonly cost: number;
  readonly volumeBound: number;
  readonly lowerBound: number;
}

/** Least money over all choices of splices. A choice whose bound is above the best answer is not solved. */
export function cheapestStages(stages: readonly Stage[], purse: Purse): Answer[] {
  const bounded = stages
    .map((stage) => ({ stage, bound: stage.soleCost + valueBound(stage.task, needOf(stage.task)) }))
    .sort((a, b) => a.bound - b.bound);
  const answers: Answer[] = [];
  let best = Number.POSITIVE_INFINITY;
  for (const { stage, bound } of bounded) {
    if (bound > best) break;
    const purchase = cheapestPurchase(stage.task, purse);
    const cost = stage.soleCost + purchase.cost;
    const volumeBound = stage.soleCost + purchase.volumeBound;
    answers.push({ stage, purchase, cost, volumeBound, lowerBound: stage.soleCost + purchase.lowerBound });
    best = Math.min(best, cost);
  }
  return answers;
}

/** The plan with the longest leftover among the answers that cost the same, and the bound over all of them. */
export function longestOf(
  problem: CutProblem,
  menu: Menu,
  answers: readonly Answer[],
  purse: Purse,
): { readonly stage: Stage; readonly loads: readonly Load[]; readonly left: number; readonly bound: number } {
  let best: { stage: Stage; loads: readonly Load[]; left: number } | undefined;
  let bound = 0;
  for (const { stage, purchase } of answers) {
    const alone = longestSoleLeft(problem, menu, stage);
    const found = longestLeftover(stage.task, purchase, best?.left ?? 0, purse);
    const left = Math.max(found.left, alone);
    bound = Math.max(bound, found.bound, alone);
    if (!best || left > best.left) best = { stage, loads: found.loads, left };
  }
  return { ...best!, bound };
}

/** What the stocks leave that one part of a spliced piece takes nearly whole. */
function longestSoleLeft(problem: CutProblem, menu: Menu, stage: Stage): number {
  return stage.soles.reduce((longest, { kind, index, item }) => {
    const { length } = kind === 'roll' ? menu.rolls[index]! : problem.offcuts[index]!;
    return Math.max(longest, length - item.length);
  }, 0);
}

/**
 * Bounds that hold for every way to make the pieces with this many splices, whatever the parts: for the cases where not
 * all choices were listed or a part had to give way.
 */
export function roughBounds(
  problem: CutProblem,
  menu: Menu,
  cost: number,
  splices: number,
): { readonly money: number; readonly left: number } {
  const total = problem.pieces.reduce((sum, piece) => sum + piece.length, splices * problem.splice.lap);
  const offcuts = problem.offcuts.map((offcut) => Math.max(0, offcut.length));
  const need = offcuts.reduce((open, length) => open - length, total);
  const rolls = menu.rolls.map((roll) => ({ ...roll, cap: roll.length, usable: roll.length }));
  const ladder = makeLadder(rolls, cost);
  const rate = Math.min(...rolls.map((roll) => roll.price / roll.length));
  const byRate = need <= 0 ? 0 : Math.ceil(need * rate * (1 - 1e-12));
  return {
    money: ladder ? (climb(ladder, 0, need) ?? cost) : Math.min(cost, byRate),
    left: slackBound(menu.rolls, offcuts, cost, total),
  };
}
