// Where every seam and item lies on the roof, in millimetres: x from the front, y from the curb side.
import { bandOf } from '../../measure/band.ts';
import type { Item, Rig, Roof } from '../../resolve/types.ts';

export type Point = readonly [x: number, y: number];

/** A straight side of a seam. `inward` points to where its band lies; `thick` is the width of the band. */
export interface Run {
  readonly from: Point;
  readonly to: Point;
  readonly inward: Point;
  readonly thick: number;
}

/** The outline of one copy of an item. A point has a place and no size. */
export type Outline =
  | { readonly shape: 'rectangle'; readonly x: number; readonly y: number; readonly w: number; readonly h: number }
  | { readonly shape: 'round'; readonly x: number; readonly y: number; readonly r: number }
  | { readonly shape: 'point'; readonly x: number; readonly y: number }
  | { readonly shape: 'runs'; readonly runs: readonly Run[] };

/** An item with the outlines of its copies; without any where it has no place on the roof. */
export interface Shaped {
  readonly item: Item;
  readonly outlines: readonly Outline[];
  /** Why it is not drawn. */
  readonly missing?: string;
}

const NM_PER_MM = 1_000_000;
export const mm = ({ nm }: { readonly nm: number }): number => nm / NM_PER_MM;

/** Every item of the rig in its order. The membrane is the roof itself and has no outline of its own. */
export function shapesOf(rig: Rig): readonly Shaped[] {
  const { roof } = rig;
  return rig.items.map((item) => {
    if (item.wall) return { item, outlines: [], missing: 'on a wall' };
    if (item.kind === 'field') return { item, outlines: [], missing: 'the whole roof' };
    if (roof === undefined) return { item, outlines: [], missing: 'the roof has no size' };
    const outlines = outlinesOf(item, roof, rig);
    return outlines.length > 0 ? { item, outlines } : { item, outlines, missing: 'no place is written' };
  });
}

function outlinesOf(item: Item, roof: Roof, rig: Rig): readonly Outline[] {
  const band = bandOf(item, rig.policy)?.value;
  const thick = band ? mm(band) : 0;
  switch (item.kind) {
    case 'edge':
    case 'cap':
      return sideRun(item, roof, thick);
    case 'slide':
      return slideRuns(item, roof, thick);
    case 'joint':
    case 'channel':
    case 'insert':
      return lineRuns(item, roof, thick);
    default:
      return item.places.flatMap(({ along, across }): readonly Outline[] =>
        across === undefined ? [] : [flat(item, mm(along), mm(across))],
      );
  }
}

function flat({ size }: Item, x: number, y: number): Outline {
  if (size === undefined) return { shape: 'point', x, y };
  if (size.shape === 'round') return { shape: 'round', x, y, r: mm(size.diameter) / 2 };
  const [w, h] = [mm(size.along), mm(size.across)];
  return { shape: 'rectangle', x: x - w / 2, y: y - h / 2, w, h };
}

/** A side edge runs from the front, a cap from the curb side: as records measure them. */
function sideRun(item: Item, roof: Roof, thick: number): readonly Outline[] {
  const [along, across] = [mm(roof.along), mm(roof.across)];
  const run = (from: Point, to: Point, inward: Point): Outline[] => [
    { shape: 'runs', runs: [{ from, to, inward, thick }] },
  ];
  switch (item.side ?? item.name) {
    case 'curbside':
      return run([0, 0], [along, 0], [0, 1]);
    case 'roadside':
      return run([0, across], [along, across], [0, -1]);
    case 'front':
      return run([0, 0], [0, across], [1, 0]);
    case 'rear':
      return run([along, 0], [along, across], [-1, 0]);
    default:
      return [];
  }
}

/** Two ends and the outer side of a slide roof, which lies beside the roof; its place is the middle of its length. */
function slideRuns(item: Item, roof: Roof, thick: number): readonly Outline[] {
  const place = item.places[0];
  if (item.size?.shape !== 'rectangle' || place === undefined || item.side === undefined) return [];
  const [a, b] = [mm(item.size.along), mm(item.size.across)];
  const [along, across] = [mm(roof.along), mm(roof.across)];
  if (item.side === 'curbside' || item.side === 'roadside') {
    const [low, high] = [mm(place.along) - a / 2, mm(place.along) + a / 2];
    const [near, out] = item.side === 'curbside' ? [0, -b] : [across, across + b];
    const back: Point = item.side === 'curbside' ? [0, 1] : [0, -1];
    return three([low, near], [low, out], [high, out], [high, near], [1, 0], back, [-1, 0], thick);
  }
  if (place.across === undefined) return [];
  const [low, high] = [mm(place.across) - b / 2, mm(place.across) + b / 2];
  const [near, out] = item.side === 'front' ? [0, -a] : [along, along + a];
  const back: Point = item.side === 'front' ? [1, 0] : [-1, 0];
  return three([near, low], [out, low], [out, high], [near, high], [0, 1], back, [0, -1], thick);
}

function three(
  a: Point,
  b: Point,
  c: Point,
  d: Point,
  first: Point,
  back: Point,
  last: Point,
  thick: number,
): readonly Outline[] {
  const runs = [
    { from: a, to: b, inward: first, thick },
    { from: b, to: c, inward: back, thick },
    { from: c, to: d, inward: last, thick },
  ];
  return [{ shape: 'runs', runs }];
}

/** Joints, channels and inserts about their middle, along the roof unless they are said to be at the front or the rear. */
function lineRuns(item: Item, roof: Roof, thick: number): readonly Outline[] {
  const length = item.length ?? item.run;
  if (length === undefined) return [];
  const half = mm(length) / 2;
  return item.places.flatMap(({ along, across }): readonly Outline[] => {
    const x = mm(along);
    if (item.side === 'front' || item.side === 'rear') {
      if (across === undefined) return [];
      const y = mm(across);
      return [{ shape: 'runs', runs: [{ from: [x, y - half], to: [x, y + half], inward: [1, 0], thick }] }];
    }
    const y = across !== undefined ? mm(across) : ofSide(item, roof);
    if (y === undefined) return [];
    return [{ shape: 'runs', runs: [{ from: [x - half, y], to: [x + half, y], inward: [0, 1], thick }] }];
  });
}

function ofSide({ side }: Item, roof: Roof): number | undefined {
  if (side === 'curbside') return 0;
  return side === 'roadside' ? mm(roof.across) : undefined;
}

/** What of runs that follow each other lies between two distances from their beginning. */
export function partOf(runs: readonly Run[], from: number, to: number): readonly Run[] {
  let start = 0;
  return runs.flatMap((run) => {
    const [dx, dy] = [run.to[0] - run.from[0], run.to[1] - run.from[1]];
    const length = Math.hypot(dx, dy);
    const [low, high] = [Math.max(0, from - start), Math.min(length, to - start)];
    start += length;
    if (high <= low || length === 0) return [];
    const at = (d: number): Point => [run.from[0] + (dx * d) / length, run.from[1] + (dy * d) / length];
    return [{ ...run, from: at(low), to: at(high) }];
  });
}

/** A run as the rectangle of its band, at least so thick. */
export function ribbon({ from, to, inward, thick }: Run, least: number): Extract<Outline, { shape: 'rectangle' }> {
  const deep = Math.max(thick, least);
  const xs = [from[0], to[0], from[0] + inward[0] * deep, to[0] + inward[0] * deep];
  const ys = [from[1], to[1], from[1] + inward[1] * deep, to[1] + inward[1] * deep];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { shape: 'rectangle', x, y, w: Math.max(...xs) - x, h: Math.max(...ys) - y };
}
