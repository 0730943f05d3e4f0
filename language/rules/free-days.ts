// Which days are free for work on a rig, going by spans of days, the season and the days of the week alone.
import type { Origin } from '../resolve/types.ts';
import { addDays, addPeriod, weekday } from '../values/calendar.ts';
import { inSeason, nextInSeason, type Season } from '../values/season.ts';

/** Days that are taken, both ends included, and by what: `stored`, `booked`. */
export interface Taken {
  readonly first: string;
  readonly last: string;
  readonly by: string;
  readonly origin: Origin;
}

export interface FreeDays {
  readonly taken: readonly Taken[];
  /** Missing for what may be done at any time of the year. */
  readonly season?: Season;
  /** The days of the week on which a crew works, 1 for Monday; missing for an owner. */
  readonly weekdays?: readonly number[];
}

/** Why a day is not free. */
export interface Hindrance {
  readonly why: string;
  readonly origin?: Origin;
}

/** Beyond this nobody plans: a season comes round in a year. */
const AHEAD = { months: 36, days: 0 };

/** The first free day from a day on, and what hindered the days before it, each thing once. No day: none within three years. */
export function firstFree(from: string, days: FreeDays): { readonly day?: string; readonly hindrances: Hindrance[] } {
  const end = addPeriod(from, AHEAD);
  const hindrances = new Map<string, Hindrance>();
  for (let day = from; day <= end; ) {
    const next = afterHindrance(day, days);
    if (!next) return { day, hindrances: [...hindrances.values()] };
    hindrances.set(next.why, next);
    day = next.open;
  }
  return { hindrances: [...hindrances.values()] };
}

/** What takes a day, and the first day that this leaves open; undefined for a free day. */
function afterHindrance(
  day: string,
  { taken, season, weekdays }: FreeDays,
): (Hindrance & { open: string }) | undefined {
  const span = taken.find(({ first, last }) => first <= day && day <= last);
  if (span) {
    const why = span.first === span.last ? `${span.by} on ${span.first}` : `${span.by} ${span.first} to ${span.last}`;
    return { why, origin: span.origin, open: addDays(span.last, 1) };
  }
  if (season && !inSeason(day, season))
    return { why: `out of season (${season.text})`, open: nextInSeason(day, season) };
  if (weekdays && weekdays.length > 0 && !weekdays.includes(weekday(day)))
    return { why: 'no day on which the crew works', open: addDays(day, 1) };
  return undefined;
}
