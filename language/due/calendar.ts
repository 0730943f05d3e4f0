// When a rig is laid up and when it leaves: no date falls inside storage, and some things are done before it leaves.
import type { Origin, RigView } from '../resolve/types.ts';
import { addDays } from '../values/calendar.ts';

/** Days, both ends included. */
export interface Span {
  readonly first: string;
  readonly last: string;
  readonly origin: Origin;
}

export interface Calendar {
  /** In order of time. */
  readonly stored: readonly Span[];
  /** Trips and bookings, in order of time. */
  readonly away: readonly Span[];
}

export function calendarOf({ rig, booked }: RigView): Calendar {
  return { stored: inOrder(rig.stored), away: inOrder([...rig.trips, ...(booked ?? [])]) };
}

function inOrder(spans: readonly Span[]): readonly Span[] {
  return [...spans].sort((a, b) => (a.first < b.first ? -1 : a.first > b.first ? 1 : 0));
}

/** The first time that the rig leaves after a day. */
export function departureAfter(day: string, { away }: Calendar): Span | undefined {
  return away.find((span) => span.first > day);
}

/**
 * The earlier of a deadline and the day before the rig next leaves after `from`, but not before `from` itself.
 */
export function orBeforeDeparture(
  deadline: string,
  from: string,
  calendar: Calendar,
): { readonly date: string; readonly departure?: Span } {
  const departure = departureAfter(from, calendar);
  if (!departure) return { date: deadline };
  const eve = addDays(departure.first, -1);
  return eve < deadline ? { date: eve, departure } : { date: deadline };
}

/**
 * Where a deadline inside storage goes: to the day before it, so that the rig is laid up in order, as long as that day is
 * still ahead and after what the deadline follows from (`notBefore`); else to the day after it. Undefined outside storage.
 */
export function movedOutOfStorage(
  date: string,
  notBefore: string | undefined,
  asOf: string,
  { stored }: Calendar,
): { readonly date: string; readonly to: 'before storage' | 'after storage' } | undefined {
  const span = stored.find(({ first, last }) => first <= date && date <= last);
  if (!span) return undefined;
  const eve = addDays(span.first, -1);
  const inAnother = stored.some(({ first, last }) => first <= eve && eve <= last);
  if (eve >= asOf && !inAnother && (notBefore === undefined || eve > notBefore))
    return { date: eve, to: 'before storage' };
  let after = addDays(span.last, 1);
  for (const next of stored) if (next.first <= after && after <= next.last) after = addDays(next.last, 1);
  return { date: after, to: 'after storage' };
}
