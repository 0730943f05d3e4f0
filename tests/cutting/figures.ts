import { type CutPlan, type CutProblem, cutRolls } from '../../language/cutting/index.ts';

/** A problem from bare figures; pieces are named p1, p2 ... in the order given. */
export function problemOf(
  pieces: readonly number[],
  rolls: readonly (readonly [length: number, price: number])[],
  offcuts: readonly number[] = [],
  splice: CutProblem['splice'] = { lap: 2, leastPart: 1 },
): CutProblem {
  return {
    pieces: pieces.map((length, i) => ({ id: `p${i + 1}`, length })),
    rolls: rolls.map(([length, price], i) => ({ id: `r${i + 1}`, length, price })),
    offcuts: offcuts.map((length, i) => ({ id: `o${i + 1}`, length })),
    splice,
  };
}

/** The plan of a problem that has one. */
export function planOf(problem: CutProblem): CutPlan {
  const result = cutRolls(problem);
  if (!result.ok) throw new Error(`no plan: ${result.reason} ${result.pieces}`);
  return result.plan;
}
