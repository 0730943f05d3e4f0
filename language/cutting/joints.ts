import type { CutPart, CutProblem, Joint, StockCut } from './problem.ts';

/** Every splice of these cuts, in laying order, with the place of the middle of its lap. */
export function jointsOf(problem: CutProblem, cuts: readonly StockCut[]): Joint[] {
  const { lap } = problem.splice;
  const parts = new Map<string, CutPart[]>();
  for (const part of cuts.flatMap((cut) => cut.parts)) {
    if (!part.part) continue;
    const known = parts.get(part.piece);
    if (known) known.push(part);
    else parts.set(part.piece, [part]);
  }
  return problem.pieces.flatMap((piece) => {
    const own = (parts.get(piece.id) ?? []).toSorted((a, b) => a.part![0] - b.part![0]);
    let end = 0;
    return own.slice(0, -1).map((part, k): Joint => {
      end += part.length - (k > 0 ? lap : 0);
      const at = end - lap / 2;
      return { piece: piece.id, after: k + 1, at, inKeepOff: liesIn(at, piece.keepOff) };
    });
  });
}

/** Whether a place lies within one of the stretches, their ends left out. */
export function liesIn(at: number, stretches: readonly (readonly [number, number])[] | undefined): boolean {
  return stretches?.some(([from, to]) => from < at && at < to) ?? false;
}
