// Bays: an open roof stands indoors while it is open and until rain does it no harm.
import type { Fleet, Rig } from '../resolve/types.ts';
import { addDays } from '../values/calendar.ts';
import type { Clock } from './clocks.ts';

interface Stay {
  readonly bay: string;
  readonly first: string;
  readonly last: string;
}

/** The indoor bays of a fleet and who stands in them. */
export interface BayPlan {
  readonly bays: readonly { readonly name: string; readonly length?: number }[];
  readonly stays: readonly Stay[];
}

export function baysOf(fleet?: Fleet): BayPlan {
  const indoor = (fleet?.bays ?? []).filter(({ where }) => where === 'indoor');
  return {
    bays: indoor.map(({ name, length }) => ({ name: name.name, ...(length ? { length: length.nm } : {}) })),
    stays: [],
  };
}

/**
 * A free bay that is long enough, as written; undefined where the fleet has none that the rig goes into, so that it is
 * done in the yard.
 */
export function bayFor(
  rig: Rig,
  first: string,
  last: string,
  clocks: readonly Clock[],
  { bays, stays }: BayPlan,
): { readonly name: string } | { readonly name: undefined; readonly because: string } | undefined {
  const fitting = bays.filter(({ length }) => length === undefined || !rig.roof || rig.roof.along.nm <= length);
  if (fitting.length === 0) return undefined;
  const until = lastIndoors(last, clocks);
  const free = fitting.find(({ name }) =>
    stays.every((stay) => stay.bay !== name || stay.last < first || until < stay.first),
  );
  if (free) return { name: free.name };
  return { name: undefined, because: `${fitting.map(({ name }) => name).join(', ')} is taken` };
}

/** The last day on which the rig needs its bay: rain may fall on it from the next one on. */
function lastIndoors(last: string, clocks: readonly Clock[]): string {
  const rain = clocks.find(({ clock }) => clock === 'rain');
  if (!rain || rain.safeFrom <= last) return last;
  return addDays(rain.safeFrom, -1);
}

/** The plan with one more rig in a bay. */
export function withStay(plan: BayPlan, bay: string, first: string, last: string, clocks: readonly Clock[]): BayPlan {
  return { ...plan, stays: [...plan.stays, { bay, first, last: lastIndoors(last, clocks) }] };
}
