// Whether the items of a roof lie on it, apart from one another, and far enough apart to be treated. Facts, no messages.
import type { Item, Policy, Roof } from '../resolve/types.ts';

/** One copy of an item with a size and a whole place. Nanometres from the front and from the curb side. */
export interface Placed {
  readonly item: Item;
  /** Which of several alike, from 1. */
  readonly copy: number;
  readonly round: boolean;
  readonly along: number;
  readonly across: number;
  /** Half its size, along and across. */
  readonly halfAlong: number;
  readonly halfAcross: number;
}

/** Two items and the gap between their flanges, below 0 where they overlap. */
export interface Pair {
  readonly a: Placed;
  readonly b: Placed;
  readonly gap: number;
}

const FLAT = new Set<Item['kind']>(['opening', 'mount', 'gasket']);

/** The openings, mounts and gaskets that have a size and both measures of their place, copy by copy. */
export function placedItems(items: readonly Item[]): readonly Placed[] {
  return items.flatMap((item) => {
    const { size } = item;
    if (!FLAT.has(item.kind) || size === undefined) return [];
    const round = size.shape === 'round';
    const [halfAlong, halfAcross] =
      size.shape === 'round' ? [size.diameter.nm / 2, size.diameter.nm / 2] : [size.along.nm / 2, size.across.nm / 2];
    return item.places.flatMap(({ along, across }, i) =>
      across === undefined
        ? []
        : [{ item, copy: i + 1, round, along: along.nm, across: across.nm, halfAlong, halfAcross }],
    );
  });
}

/** How far something reaches over the edge of the roof, in nanometres; 0 if it lies inside. */
export function beyondRoof(placed: Placed, roof: Roof): number {
  return Math.max(
    0,
    placed.halfAlong - placed.along,
    placed.along + placed.halfAlong - roof.along.nm,
    placed.halfAcross - placed.across,
    placed.across + placed.halfAcross - roof.across.nm,
  );
}

/** The places of any kind of item, drains among them, whose centre does not lie on the roof: the numbers of the copies. */
export function centresOffRoof(item: Item, roof: Roof): readonly number[] {
  return item.places.flatMap(({ along, across }, i) =>
    along.nm > roof.along.nm || (across !== undefined && across.nm > roof.across.nm) ? [i + 1] : [],
  );
}

/** The gap between two flanges, below 0 where they overlap. */
export function gapBetween(a: Placed, b: Placed): number {
  const [alongApart, acrossApart] = [Math.abs(a.along - b.along), Math.abs(a.across - b.across)];
  if (a.round && b.round) return Math.hypot(alongApart, acrossApart) - a.halfAlong - b.halfAlong;
  const radius = a.round ? a.halfAlong : b.round ? b.halfAlong : 0;
  const [x, y] =
    a.round || b.round
      ? [flatHalf(a, b, 'halfAlong'), flatHalf(a, b, 'halfAcross')]
      : [a.halfAlong + b.halfAlong, a.halfAcross + b.halfAcross];
  const [dx, dy] = [alongApart - x, acrossApart - y];
  const apart = dx > 0 || dy > 0 ? Math.hypot(Math.max(dx, 0), Math.max(dy, 0)) : Math.max(dx, dy);
  return apart - radius;
}

/** The half size of the one of a round and a square that is not round. */
function flatHalf(a: Placed, b: Placed, half: 'halfAlong' | 'halfAcross'): number {
  return a.round ? b[half] : a[half];
}

/** The least gap that leaves room for margins on both sides and the reach of a frame: 2 m + (t - i), at least 2 m. */
export function leastGap(policy: Pick<Policy, 'margin' | 'bite'>, tapeWidth?: number): number {
  const reach = tapeWidth === undefined ? 0 : Math.max(0, tapeWidth - policy.bite.value.nm);
  return 2 * policy.margin.value.nm + reach;
}

/** All pairs whose gap is below `least`, nearest first; those with a gap below 0 overlap. */
export function closePairs(placed: readonly Placed[], least: number): readonly Pair[] {
  const pairs = placed.flatMap((a, i) => placed.slice(i + 1).map((b) => ({ a, b, gap: gapBetween(a, b) })));
  return pairs.filter(({ gap }) => gap < least).sort((p, q) => p.gap - q.gap);
}
