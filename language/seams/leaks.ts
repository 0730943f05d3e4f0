// The history of leaks: open, repaired, closed by a later look.
import type { Event } from '../resolve/types.ts';
import { damp } from './moisture.ts';
import type { Leak, SeamState, Stretch } from './state.ts';

/** A leak from its record, with how often it came back. */
export function leakOf(event: Event, suspects: readonly string[], before: readonly Leak[]): Leak {
  const inside = 'inside' in event.record ? event.record.inside : undefined;
  const words = inside?.toLowerCase();
  const earlier = before.filter(
    (leak) =>
      (words !== undefined && leak.inside?.toLowerCase() === words) ||
      leak.suspects.some((item) => suspects.includes(item)),
  );
  return { event, ...(inside === undefined ? {} : { inside }), suspects, repairs: [], earlier: earlier.length };
}

/** A leak after work on items: a repair of a suspect counts, or any repair where nobody is suspected. */
export function afterRepair(leak: Leak, event: Event, items: readonly string[]): Leak {
  if (leak.closed) return leak;
  const mended = leak.suspects.length === 0 ? items : items.filter((item) => leak.suspects.includes(item));
  return mended.length === 0 ? leak : { ...leak, repairs: [...leak.repairs, { event, items: mended }] };
}

/**
 * A leak after a look. It is closed by a look (or a water test, recorded as one) on a later day than the last repair,
 * since a repair proves nothing before water has stood on it, that finds each mended stretch sound and without wet, and
 * no suspect wet.
 */
export function afterLook(leak: Leak, event: Event, seams: ReadonlyMap<string, SeamState>): Leak {
  const last = leak.repairs.at(-1);
  if (leak.closed || !last || event.first <= last.event.last) return leak;
  const events = new Set(leak.repairs.map((repair) => repair.event));
  const mended = new Set(leak.repairs.flatMap((repair) => repair.items));
  let proved = 0;
  for (const name of new Set([...mended, ...leak.suspects])) {
    const state = seams.get(name);
    if (!state || state.removed) continue;
    for (const stretch of state.stretches) {
      if (isDamp(stretch)) return leak;
      if (!mended.has(name) || !Object.values(stretch.lastOf).some((each) => events.has(each))) continue;
      if (stretch.condition?.word !== 'sound' || stretch.condition.event !== event) return leak;
      proved++;
    }
  }
  return proved > 0 ? { ...leak, closed: event } : leak;
}

const isDamp = (stretch: Stretch) => stretch.wet !== undefined || damp(stretch.readings.at(-1));
