import { firstFit } from './firstfit.ts';
import { longestLeftover } from './leftover.ts';
import type { Menu } from './menu.ts';
import { finishPlan, makeStage } from './plan.ts';
import type { CutProblem, CutResult } from './problem.ts';
import { binsOf, packBins } from './stock.ts';

/** The case with nothing on sale: the offcuts hold all pieces, or the pieces that found no room are named. */
export function cutOffcuts(problem: CutProblem, menu: Menu, nodes: number): CutResult {
  const stage = makeStage(problem, menu, []);
  const { task } = stage;
  const found = firstFit(task) ?? packBins(task, binsOf(task, []), { nodes });
  if (found === 'no' || found === 'unknown') return { ok: false, reason: 'no-rolls', pieces: withoutRoom(problem) };
  const purchase = {
    loads: found,
    cost: 0,
    volumeBound: 0,
    lowerBound: 0,
    firstFitCost: 0,
    purchases: [[]],
    complete: true,
  };
  const { loads, bound } = longestLeftover(task, purchase, 0, { nodes });
  return {
    ok: true,
    plan: finishPlan(problem, menu, stage, loads, {
      cost: 0,
      firstFitCost: 0,
      volumeBound: 0,
      lowerBound: 0,
      leftBound: bound,
    }),
  };
}

/** The pieces, in laying order, that first-fit-decreasing finds no room for. */
function withoutRoom(problem: CutProblem): string[] {
  const rooms = problem.offcuts.map((offcut) => offcut.length).sort((a, b) => a - b);
  const missing = new Set<number>();
  const falling = [...problem.pieces.entries()].sort(([, a], [, b]) => b.length - a.length);
  for (const [place, { length }] of falling) {
    const room = rooms.findIndex((left) => left >= length);
    if (room < 0) missing.add(place);
    else rooms[room]! -= length;
  }
  return problem.pieces.filter((_, place) => missing.has(place)).map((piece) => piece.id);
}
