// Which tape lies under which: wind first (of two pieces that cross, the one nearer the front lies on top), water where wind
// does not decide, the steep front cap as the exception.
import type { Item, Rig } from '../resolve/types.ts';

type Place = 'rear' | 'side' | 'front';

/** Where a seam runs, as far as tape on it crosses other tape; slides, joints and frames cross nothing. */
export function edgeOf(item: Item): Place | undefined {
  if (item.wall) return undefined;
  if (item.kind === 'edge') return 'side';
  if (item.kind !== 'cap') return undefined;
  return (item.side ?? item.name) === 'front' ? 'front' : 'rear';
}

const fromRear: readonly Place[] = ['rear', 'side', 'front'];

/** Whether tape on the first item lies under tape on the second, where both cross. */
export function laidUnder(first: Item, second: Item): boolean {
  const [a, b] = [edgeOf(first), edgeOf(second)];
  return a !== undefined && b !== undefined && fromRear.indexOf(a) < fromRear.indexOf(b);
}

/** Why an item is laid when it is laid; `under` are the items that it laps over. */
export function layNotes(item: Item, under: readonly string[], rig: Pick<Rig, 'falls'>): readonly string[] {
  const place = edgeOf(item);
  if (place === undefined) {
    if (item.kind === 'slide') return ['with the slide out; it crosses no other tape, so it may be laid at any time'];
    return ['it crosses no other tape, so it may be laid at any time'];
  }
  if (place === 'rear') return ['the rear comes first: of two pieces that cross, the one nearer the front lies on top'];
  const over =
    under.length > 0
      ? `over ${under.join(', ')}: of two pieces that cross, the one nearer the front lies on top`
      : 'nothing that it laps over is laid in this visit';
  const steep =
    'if the front falls forward more steeply than 1 in 12, water decides: upper strip on top, its forward edge beaded';
  return place === 'front' && rig.falls?.value === 'front' ? [over, steep] : [over];
}
