import * as z from 'zod';
import { addDays, daysBetween, daysInMonth, isValidDate } from './calendar.ts';
import { articled, exampleOf } from './kinds.ts';
import { done, type Read, refused } from './quantity.ts';

/** A year that has a 29 February: a day of the year is valid if it is valid in it. */
const LEAP = '2000';

/** A day of the year as text, `04-15`. `02-29` is one; in other years the season goes on from or to its neighbour. */
export const MonthDay = z.string().refine((text) => isValidDate(`${LEAP}-${text}`), 'no day of the year');
export type MonthDay = z.infer<typeof MonthDay>;

/** The part of each year between two days, both included; it wraps over the new year if `to` comes before `from`. */
export const Season = z.strictObject({ from: MonthDay, to: MonthDay, text: z.string() }).readonly();
export type Season = z.infer<typeof Season>;

/** Reads `04-15`, with a message and a fix for `4-15`, and a message for what is no day: `02-30`, `18-20`, `2-`. */
export function readMonthDay(text: string): Read<MonthDay> {
  const match = /^(\d{1,2})-(\d{1,2})$/.exec(text);
  if (match === null) {
    return refused(`${articled('monthday')} is month and day, as in \`${exampleOf('monthday')}\`; \`${text}\` is none`);
  }
  const [month, day] = match.slice(1).map((part) => part.padStart(2, '0')) as [string, string];
  const padded = `${month}-${day}`;
  if (!isValidDate(`${LEAP}-${padded}`)) {
    const swapped = `${day}-${month}`;
    if (Number(month) > 12 && isValidDate(`${LEAP}-${swapped}`)) {
      return refused(`there is no month ${month}; the month comes first: \`${swapped}\``, swapped);
    }
    if (Number(month) < 1 || Number(month) > 12) {
      return refused(`there is no month ${month}; a day of the year is month and day, as in \`04-15\``);
    }
    return refused(`month ${month} has ${daysInMonth(`${LEAP}-${month}`)} days; there is no \`${padded}\``);
  }
  return padded === text ? done(text) : refused(`month and day have two digits each; write \`${padded}\``, padded);
}

/** The day as it is written. */
export function printMonthDay(day: MonthDay): string {
  return day;
}

/** Reads the two days of a season; the fix of a refusal stands for the one day that is refused. */
export function readSeason(from: string, to: string): Read<Season> {
  const first = readMonthDay(from);
  if (!first.ok) return first;
  const last = readMonthDay(to);
  if (!last.ok) return last;
  return done({ from, to, text: `${from} to ${to}` });
}

/** The season as it is written: `04-15 to 10-15`. */
export function printSeason(season: Season): string {
  return season.text;
}

/** True if the date lies in the season, its first and last day included. */
export function inSeason(date: string, season: Season): boolean {
  const day = date.slice(5);
  return season.from <= season.to ? season.from <= day && day <= season.to : season.from <= day || day <= season.to;
}

/** The date itself if it is in season, else the first day of the next season. */
export function nextInSeason(date: string, season: Season): string {
  if (inSeason(date, season)) return date;
  const year = date.slice(0, 4);
  const start = starts(year, season);
  return start >= date ? start : starts(nextYear(year), season);
}

/** The last day of the season that the date lies in, or of the next one if it lies in none. */
export function seasonEnd(date: string, season: Season): string {
  const day = nextInSeason(date, season);
  const year = day.slice(0, 4);
  const end = ends(year, season);
  return end >= day ? end : ends(nextYear(year), season);
}

/** How many days of the season are left, the date and the last day included; 0 out of season. */
export function daysLeft(date: string, season: Season): number {
  return inSeason(date, season) ? daysBetween(date, seasonEnd(date, season)) + 1 : 0;
}

/** A season that opens on 29 February opens on 1 March in other years; one that closes on it closes on the 28th. */
function starts(year: string, season: Season): string {
  const date = `${year}-${season.from}`;
  return isValidDate(date) ? date : `${year}-03-01`;
}

function ends(year: string, season: Season): string {
  const date = `${year}-${season.to}`;
  return isValidDate(date) ? date : addDays(`${year}-03-01`, -1);
}

function nextYear(year: string): string {
  return String(Number(year) + 1).padStart(4, '0');
}
