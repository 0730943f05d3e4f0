// How long after something else something happened, as far as dates tell.
import type { Event } from '../../resolve/types.ts';
import { daysBetween } from '../../values/calendar.ts';

/** Hours from one record to another: the least and the most that their dates and times leave open. */
export interface Elapsed {
  readonly least: number;
  readonly most: number;
}

const minutes = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3));

/** A record without a time of day may be of any moment of its day, one with a rough date of any of its days. */
export function elapsed(from: Event, to: Event): Elapsed {
  const early = (event: Event) => (event.time === undefined ? 0 : minutes(event.time));
  const late = (event: Event) => (event.time === undefined ? 24 * 60 : minutes(event.time));
  const least = daysBetween(from.last, to.first) * 24 * 60 + early(to) - late(from);
  const most = daysBetween(from.first, to.last) * 24 * 60 + late(to) - early(from);
  return { least: Math.max(0, least / 60), most: Math.max(0, most / 60) };
}

/** `yes` within so many hours for sure, `no` for sure, or `open`: the dates do not tell. */
export function within({ least, most }: Elapsed, hours: number): 'yes' | 'no' | 'open' {
  if (most <= hours) return 'yes';
  return least > hours ? 'no' : 'open';
}

/** `the same day`, `1 day later`, `7 days later`. */
export function daysLater(from: Event, to: Event): string {
  const days = daysBetween(from.last, to.last);
  if (days === 0) return 'the same day';
  return days < 0 ? `${-days} days before` : `${days} ${days === 1 ? 'day' : 'days'} later`;
}
