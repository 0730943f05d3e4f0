// Bays: an open roof stands indoors while it is open and until rain does it no harm.
import type { Fleet, Rig } from '../resolve/types.ts';
import { addDays } from '../values/calendar.ts';
import type { Clock } from './clocks.ts';
import type { Obstacle } from './obstacle.ts';

interface Stay {
  readonly first: string;
  readonly last: string;
}

/** The indoor bays of a fleet and who stands in them. */
export interface BayPlan {
  readonly bays: readonly { readonly name: string; readonly length?: number }[];
  /** By the name of the bay. */
  readonly stays: ReadonlyMap<string, readonly Stay[]>;
}

export function baysOf(fleet?: Fleet): BayPlan {
  const indoor = (fleet?.bays ?? []).filter(({ where }) => where === 'indoor');
  return {
    bays: indoor.map(({ name, length }) => ({ name: name.name, ...(length ? { length: length.nm } : {}) })),
    stays: new Map(),
  };
}

const fits = ({ roof }: Rig, { length }: BayPlan['bays'][number]): boolean =>
  length === undefined || !roof || roof.along.nm <= length;

/** Whether a rig goes into any bay, free or taken. */
export function fitsAny(rig: Rig, { bays }: BayPlan): boolean {
  return bays.some((bay) => fits(rig, bay));
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
  wanted?: string,
): { readonly name: string } | Obstacle | undefined {
  const fitting = bays.filter((bay) => fits(rig, bay));
  if (fitting.length === 0) return undefined;
  const until = lastIndoors(last, clocks);
  const frees = fitting.map(({ name }) => {
    const mine = stays.get(name) ?? [];
    const inTheWay = mine.find((stay) => stay.first <= until && first <= stay.last);
    return { name, next: inTheWay ? firstEmpty(addDays(inTheWay.last, 1), mine) : first };
  });
  const open = frees.filter(({ next }) => next === first);
  const free = open.find(({ name }) => name === wanted) ?? open[0];
  if (free) return { name: free.name };
  const [next = first] = frees.map((each) => each.next).sort();
  return { because: `${fitting.map(({ name }) => name).join(', ')} is taken until ${addDays(next, -1)}`, next };
}

/** The first day from one on on which nobody stands there; stays come in order of time and do not overlap. */
function firstEmpty(from: string, stays: readonly Stay[]): string {
  let day = from;
  for (const { first, last } of stays) if (first <= day && day <= last) day = addDays(last, 1);
  return day;
}

/** The last day on which the rig needs its bay: rain may fall on it from the next one on. */
export function lastIndoors(last: string, clocks: readonly Clock[]): string {
  const rain = clocks.find(({ clock }) => clock === 'rain');
  if (!rain || rain.safeFrom <= last) return last;
  return addDays(rain.safeFrom, -1);
}

/** The plan with one more rig in a bay. */
export function withStay(plan: BayPlan, bay: string, first: string, last: string, clocks: readonly Clock[]): BayPlan {
  const mine = [...(plan.stays.get(bay) ?? []), { first, last: lastIndoors(last, clocks) }];
  mine.sort((a, b) => (a.first < b.first ? -1 : 1));
  return { ...plan, stays: new Map([...plan.stays, [bay, mine]]) };
}

/** The plan without the rig that came into a bay on a day. */
export function withoutStay(plan: BayPlan, bay: string, first: string): BayPlan {
  const others = (plan.stays.get(bay) ?? []).filter((stay) => stay.first !== first);
  return { ...plan, stays: new Map([...plan.stays, [bay, others]]) };
}
