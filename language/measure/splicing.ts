// Where along a straight seam a splice of tape should not lie: near its corners, and beside openings.
import type { Item, Rig } from '../resolve/types.ts';
import { type Placed, placedItems } from './fit.ts';

/** A splice keeps this far from corners and openings, in nanometres: 12 in (common practice, no source). */
export const SPLICE_CLEAR = 12 * 25_400_000;

/** Part of a seam, in nanometres from its beginning. */
export type Span = readonly [from: number, to: number];

/** The openings, mounts and gaskets that lie within a foot of an edge or a cap, each with the span that it takes of it. */
export function besideSeam(
  { kind, side }: Item,
  { roof, items }: Pick<Rig, 'roof' | 'items'>,
): readonly { readonly placed: Placed; readonly span: Span }[] {
  if (!roof || (kind !== 'edge' && kind !== 'cap')) return [];
  return placedItems(items).flatMap((placed) => {
    const { along, across, halfAlong, halfAcross } = placed;
    const gaps = {
      curbside: across - halfAcross,
      roadside: roof.across.nm - across - halfAcross,
      front: along - halfAlong,
      rear: roof.along.nm - along - halfAlong,
    };
    if (side === undefined || gaps[side] >= SPLICE_CLEAR) return [];
    const [at, half] = kind === 'edge' ? [along, halfAlong] : [across, halfAcross];
    return [{ placed, span: [at - half, at + half] }];
  });
}

/**
 * The stretches of a piece of tape, from its own front end, in which no splice should lie. `start`: where on the seam the
 * piece begins, below 0 where it laps over the corner; `length`: of the piece; `whole`: of the seam.
 */
export function keepOffOf(
  item: Item,
  rig: Pick<Rig, 'roof' | 'items'>,
  piece: { readonly start: number; readonly length: number },
  whole: number,
): readonly Span[] {
  const spans: Span[] = [[0, 0], [whole, whole], ...besideSeam(item, rig).map(({ span }) => span)];
  return spans.flatMap(([from, to]): Span[] => {
    const low = Math.max(0, from - SPLICE_CLEAR - piece.start);
    const high = Math.min(piece.length, to + SPLICE_CLEAR - piece.start);
    return low < high ? [[low, high]] : [];
  });
}
