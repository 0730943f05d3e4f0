import type { CutPart, CutProblem, Joint, Piece, StockCut } from './problem.ts';

/** A part where it lies: the cut that it is made by and its place there. */
interface Placed {
  readonly cut: number;
  readonly place: number;
  readonly part: CutPart;
}

/** Every splice of these cuts, in laying order, with the place of the middle of its lap. */
export function jointsOf(problem: CutProblem, cuts: readonly StockCut[]): Joint[] {
  const parts = partsOf(cuts);
  return problem.pieces.flatMap((piece) => {
    const own = parts.get(piece.id) ?? [];
    const places = placesOf(
      own.map(({ part }) => part.length),
      problem.splice.lap,
    );
    return places.map((at, k): Joint => {
      return { piece: piece.id, after: k + 1, at, inKeepOff: liesIn(at, piece.keepOff) };
    });
  });
}

/**
 * Moves splices out of the stretches that should have none, as far as what is left of the stocks allows: of two parts one
 * grows by as much as the other shrinks, by the least that is enough. Costs and splices stay; the longest leftover is
 * used only where nothing else is enough.
 */
export function moveJoints(problem: CutProblem, cuts: readonly StockCut[]): readonly StockCut[] {
  if (problem.pieces.every((piece) => !piece.keepOff || piece.keepOff.length === 0)) return cuts;
  const { lap, leastPart } = problem.splice;
  const least = Math.max(leastPart, lap + 1);
  const lefts = cuts.map((cut) => cut.left);
  const lengths = cuts.map((cut) => cut.parts.map((part) => part.length));
  const longest = cuts.reduce((best, cut, i) => (cut.left > (cuts[best]?.left ?? -1) ? i : best), 0);
  const parts = partsOf(cuts);

  for (const piece of problem.pieces) {
    const own = parts.get(piece.id);
    if (!own || !piece.keepOff) continue;
    const now = (): number[] => own.map(({ cut, place }) => lengths[cut]![place]!);
    for (let k = 0; k + 1 < own.length; k++) {
      const [front, rear] = [own[k]!, own[k + 1]!];
      const [fore, aft] = [now()[k]!, now()[k + 1]!];
      const together = front.cut === rear.cut;
      const at = placesOf(now(), lap)[k]!;
      const shift = (spared: number): number => {
        const slack = (cut: number): number => (cut === spared ? 0 : lefts[cut]!);
        const back = Math.min(together ? fore : slack(rear.cut), fore - least);
        const ahead = Math.min(together ? aft : slack(front.cut), aft - least);
        return shiftOf(at, piece, back, ahead);
      };
      const by = shift(longest) || shift(-1);
      lengths[front.cut]![front.place]! += by;
      lengths[rear.cut]![rear.place]! -= by;
      lefts[front.cut]! -= by;
      lefts[rear.cut]! += by;
    }
  }
  return cuts.map((cut, i) => ({
    ...cut,
    parts: cut.parts.map((part, place) => ({ ...part, length: lengths[i]![place]! })),
    left: lefts[i]!,
  }));
}

/** How far a splice moves: the least that brings it out of all stretches, 0 where none within the bounds does. */
function shiftOf(at: number, { keepOff, length }: Piece, back: number, ahead: number): number {
  if (!liesIn(at, keepOff)) return 0;
  const ends = keepOff!.flat().filter((end) => end > 0 && end < length);
  // Laps of an odd number of units have their middle at half a unit; parts are whole.
  const shifts = ends.flatMap((end) => [Math.floor(end - at), Math.ceil(end - at)]);
  const possible = shifts.filter((by) => by >= -back && by <= ahead && !liesIn(at + by, keepOff));
  return possible.reduce((best, by) => (Math.abs(by) < Math.abs(best) ? by : best), possible[0] ?? 0);
}

/** Whether a place lies within one of the stretches, their ends left out. */
function liesIn(at: number, stretches: Piece['keepOff']): boolean {
  return stretches?.some(([from, to]) => from < at && at < to) ?? false;
}

/** The middles of the laps between parts of these lengths, from the front end. */
function placesOf(lengths: readonly number[], lap: number): number[] {
  let end = 0;
  return lengths.slice(0, -1).map((length, k) => {
    end += length - (k > 0 ? lap : 0);
    return end - lap / 2;
  });
}

/** The parts of every spliced piece, from the front. */
function partsOf(cuts: readonly StockCut[]): Map<string, Placed[]> {
  const parts = new Map<string, Placed[]>();
  for (const [cut, { parts: own }] of cuts.entries()) {
    for (const [place, part] of own.entries()) {
      if (!part.part) continue;
      const known = parts.get(part.piece);
      if (known) known.push({ cut, place, part });
      else parts.set(part.piece, [{ cut, place, part }]);
    }
  }
  for (const own of parts.values()) own.sort((a, b) => a.part.part![0] - b.part.part![0]);
  return parts;
}
