// Where the numbered pieces of tape lie: along straight seams beside each other, as frames round flanges.
import { bandOf } from '../../measure/band.ts';
import type { Item, Rig, Tape } from '../../resolve/types.ts';
import { mm, type Outline, partOf, type Run, type Shaped } from './shapes.ts';

/** A numbered piece as a work plan names it, end laps included. `from`, `to`: the stretch of its seam, in nanometres. */
export interface Piece {
  readonly number: number;
  readonly item: string;
  readonly copy: number;
  readonly what: string;
  /** In millimetres. */
  readonly length: number;
  readonly tape: Tape;
  readonly from?: number;
  readonly to?: number;
}

/** A piece with its outline, and where its number is written. */
export interface Laid {
  readonly piece: Piece;
  readonly outline: Extract<Outline, { shape: 'rectangle' }>;
  readonly number: { readonly x: number; readonly y: number };
}

const sides: Readonly<Record<string, number>> = { 'front end': 0, 'outer side': 1, 'rear end': 2 };

/** The outlines of pieces on an item; pieces of what has no place, or of a tape without a width, have none. */
export function laidOn({ item, outlines }: Shaped, pieces: readonly Piece[], rig: Rig): readonly Laid[] {
  return outlines.flatMap((outline, i) => {
    const mine = pieces.filter((piece) => piece.item === item.name && piece.copy === i + 1);
    if (outline.shape === 'runs') return onRuns(item, outline.runs, mine, rig);
    return outline.shape === 'point' ? [] : mine.flatMap((piece) => onFrame(outline, piece, rig));
  });
}

/** Strips side by side, together in the middle of the band, each with an end lap at both ends. */
function onRuns(item: Item, runs: readonly Run[], pieces: readonly Piece[], rig: Rig): readonly Laid[] {
  const band = bandOf(item, rig.policy)?.value;
  const groups = new Map<string, Piece[]>();
  for (const piece of pieces) {
    const side = Object.keys(sides).find((name) => piece.what.startsWith(name)) ?? 'seam';
    const key = `${side} ${piece.from ?? ''} ${piece.to ?? ''}`;
    groups.set(key, [...(groups.get(key) ?? []), piece]);
  }
  return [...groups].flatMap(([key, group]) => {
    const { from, to, tape } = group[0]!;
    const side = Object.keys(sides).find((name) => key.startsWith(name));
    const all = side === undefined ? runs : [runs[sides[side]!] ?? runs[0]!];
    const [run] = side === undefined && (from !== undefined || to !== undefined) ? stretchOf(all, from, to) : all;
    if (run === undefined || tape.width === undefined) return [];
    const [t, v] = [mm(tape.width.value), mm(tape.sideLap.value)];
    const wide = group.length * t - (group.length - 1) * v;
    const start = (band ? mm(band) : 0) / 2 - wide / 2;
    // The first strip of a cap is the one to the rear; of everything else the outermost.
    const turned = item.kind === 'cap' && (item.side ?? item.name) === 'front';
    return group.map((piece, i) => {
      const row = turned ? group.length - 1 - i : i;
      return strip(run, piece, start + row * (t - v), t, (i + 1) / (group.length + 1));
    });
  });
}

function stretchOf(runs: readonly Run[], from = 0, to = Number.POSITIVE_INFINITY): readonly Run[] {
  return partOf(runs, from / 1_000_000, to / 1_000_000);
}

function strip(run: Run, piece: Piece, off: number, wide: number, share: number): Laid {
  const [dx, dy] = [run.to[0] - run.from[0], run.to[1] - run.from[1]];
  const long = Math.hypot(dx, dy);
  const [ux, uy] = [dx / long, dy / long];
  const [nx, ny] = run.inward;
  const before = (piece.length - long) / 2;
  const at = (along: number, across: number) =>
    [run.from[0] + ux * along + nx * across, run.from[1] + uy * along + ny * across] as const;
  const [ax, ay] = at(-before, off);
  const [bx, by] = at(long + before, off + wide);
  const [cx, cy] = at(-before + piece.length * share, off + wide / 2);
  return { piece, outline: box(ax, ay, bx, by), number: { x: cx, y: cy } };
}

function box(ax: number, ay: number, bx: number, by: number): Laid['outline'] {
  return {
    shape: 'rectangle',
    x: Math.min(ax, bx),
    y: Math.min(ay, by),
    w: Math.abs(bx - ax),
    h: Math.abs(by - ay),
  };
}

/** A side of a frame: bite i onto a rectangular flange; round a round one the square that its length tells. */
function onFrame(flange: Exclude<Outline, { shape: 'runs' | 'point' }>, piece: Piece, rig: Rig): readonly Laid[] {
  const { tape, what, length } = piece;
  if (tape.width === undefined) return [];
  const t = mm(tape.width.value);
  const bite = mm(rig.policy.bite.value);
  const inner = (half: number) => (flange.shape === 'round' ? length / 2 - t : half - bite);
  const [cx, cy, halfX, halfY] =
    flange.shape === 'round'
      ? [flange.x, flange.y, inner(0), inner(0)]
      : [flange.x + flange.w / 2, flange.y + flange.h / 2, inner(flange.w / 2), inner(flange.h / 2)];
  const middle = (x: number, y: number, w: number, h: number): readonly Laid[] => [
    { piece, outline: { shape: 'rectangle', x: x - w / 2, y: y - h / 2, w, h }, number: { x, y } },
  ];
  switch (what) {
    case 'front side':
      return middle(cx - halfX - t / 2, cy, t, length);
    case 'rear side':
      return middle(cx + halfX + t / 2, cy, t, length);
    case 'curbside flank':
      return middle(cx, cy - halfY - t / 2, length, t);
    case 'roadside flank':
      return middle(cx, cy + halfY + t / 2, length, t);
    default:
      return [];
  }
}
