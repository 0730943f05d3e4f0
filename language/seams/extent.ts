// How far a seam runs, for stretches of it.
import { straightSides } from '../measure/length.ts';
import type { Item, Roof } from '../resolve/types.ts';

/**
 * The length in nanometres along which stretches of an item are measured, without the working that `seamLength` gives
 * (every item of every rig needs it at each check). Undefined where it is not known, and for several alike items, which
 * have no common beginning.
 */
export function extentOf(item: Item, roof: Roof | undefined): number | undefined {
  if (item.count > 1) return undefined;
  const sides = straightSides(item, roof);
  if (sides) return sides.reduce((sum, side) => sum + side.length.nm, 0);
  if (item.length) return item.length.nm;
  const { size } = item;
  if (!size) return undefined;
  return size.shape === 'round' ? Math.round(Math.PI * size.diameter.nm) : 2 * (size.along.nm + size.across.nm);
}
