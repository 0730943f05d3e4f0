// Changing a part of a seam: its stretches are split where the part begins and ends.
import type { Place } from '../resolve/types.ts';
import type { Stretch } from './state.ts';

/** The stretches after a change of those that lie in a place. A place without bounds is the whole seam. */
export function changed(
  stretches: readonly Stretch[],
  place: Pick<Place, 'from' | 'to'>,
  change: (stretch: Stretch) => Stretch,
): readonly Stretch[] {
  const low = place.from ?? 0;
  const high = place.to ?? Number.POSITIVE_INFINITY;
  if (low <= 0 && high === Number.POSITIVE_INFINITY) return stretches.map(change);
  if (low >= high) return stretches;
  const out: Stretch[] = [];
  for (const stretch of stretches) {
    const end = stretch.to ?? Number.POSITIVE_INFINITY;
    const begin = Math.max(stretch.from, low);
    const stop = Math.min(end, high);
    if (begin >= stop) {
      out.push(stretch);
      continue;
    }
    if (stretch.from < begin) out.push({ ...stretch, to: begin });
    const inside = begin === stretch.from && stop === end ? stretch : { ...stretch, from: begin };
    out.push(change(stop < end ? { ...inside, to: stop } : inside));
    if (stop < end) out.push({ ...stretch, from: stop });
  }
  return out;
}
