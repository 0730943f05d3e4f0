// In which order tape is laid: wind first (of two pieces that cross, the one nearer the front lies on top), so the rear
// comes first and the front last; of side by side strips of a cap the rear one first.
import type { Item, Rig } from '../resolve/types.ts';

/** A key to sort pieces by, its parts from the weightiest on. */
export type LayKey = readonly number[];

/** Rear cap, slides, side edges (roadside, curbside), joints, frames from the rear forward, front cap. */
export function layKey(item: Item, rig: Pick<Rig, 'items'>, copy: number, within: number): LayKey {
  const along = item.places[copy - 1]?.along.nm ?? item.places[0]?.along.nm ?? 0;
  const row = rig.items.findIndex((each) => each.name === item.name);
  return [rank(item), item.kind === 'edge' ? (item.side === 'curbside' ? 1 : 0) : -along, row, copy, within];
}

/** Less than, equal to or greater than 0 as the first is laid before, with or after the second. */
export function compareKeys(a: LayKey, b: LayKey): number {
  for (const [i, part] of a.entries()) {
    const difference = part - (b[i] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}

function rank(item: Item): number {
  switch (item.kind) {
    case 'cap':
      return (item.side ?? item.name) === 'front' ? 5 : 0;
    case 'slide':
      return 1;
    case 'edge':
      return 2;
    case 'joint':
      return 3;
    default:
      return 4;
  }
}
