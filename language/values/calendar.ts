import { Temporal } from 'temporal-polyfill';

/**
 * Calendar arithmetic on ISO dates as text (`2026-04-18`), which compare as text. Dates have no zone.
 *
 * **The rule at month ends:** a day that a month does not have becomes its last day (Temporal "constrain"): 2019-01-31
 * plus 1 month is 2019-02-28. RFC 5545 recurrences *skip* such a date instead, so what is exported to a calendar is
 * single dated events. The k-th occurrence is `start + k x period`, never the one before plus a period: so the 31st
 * comes back after a short month and nothing drifts.
 *
 * Answers are remembered by their text, since a check of many files asks for the same few thousand dates.
 */

/** A period in months and days; a `Period` is one. */
export interface Span {
  readonly months: number;
  readonly days: number;
}

/** More answers than this are not kept; the memory is then started again. */
const KEPT = 50_000;

const dates = new Map<string, Temporal.PlainDate>();
const epochDays = new Map<string, number>();
const sums = new Map<string, string>();
const monthLengths = new Map<string, number>();

function remembered<K, V>(memory: Map<K, V>, key: K, make: () => V): V {
  const known = memory.get(key);
  if (known !== undefined) return known;
  if (memory.size >= KEPT) memory.clear();
  const made = make();
  memory.set(key, made);
  return made;
}

function plain(date: string): Temporal.PlainDate {
  return remembered(dates, date, () => Temporal.PlainDate.from(date, { overflow: 'reject' }));
}

const FULL_DATE = /^\d{4}-\d{2}-\d{2}$/;

/** True for an ISO date that is in the calendar: `2024-02-29` but not `2026-02-29`. */
export function isValidDate(text: string): boolean {
  if (!FULL_DATE.test(text)) return false;
  const month = Number(text.slice(5, 7));
  const day = Number(text.slice(8, 10));
  return month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(text.slice(0, 7));
}

/** The number of days of a month given as `2026-02`. */
export function daysInMonth(month: string): number {
  return remembered(monthLengths, month, () => Temporal.PlainYearMonth.from(month).daysInMonth);
}

/**
 * `date + times x period`: months first, held at the month's end, then days. `times` may be negative or 0. Beyond the
 * years of four digits it is the last, or the first, day of these: a booking without an end is often written with
 * 9999-12-31. Throws a RangeError if the date is none.
 */
export function addPeriod(date: string, period: Span, times = 1): string {
  const months = period.months * times;
  const days = period.days * times;
  return remembered(sums, `${date} ${months} ${days}`, () => sumOf(plain(date), months, days));
}

const [firstDay, lastDay] = ['0000-01-01', '9999-12-31'] as const;

function sumOf(date: Temporal.PlainDate, months: number, days: number): string {
  // Temporal throws some 270,000 years from here; long before, the years have more digits than dates that compare as text.
  const year = date.year + months / 12 + days / 365;
  if (Math.abs(year) > 20_000) return year < 0 ? firstDay : lastDay;
  const sum = date.add({ months, days });
  return sum.year > 9999 ? lastDay : sum.year < 0 ? firstDay : sum.toString();
}

/** The date so many days later, or earlier for a negative number. */
export function addDays(date: string, days: number): string {
  return addPeriod(date, { months: 0, days });
}

/** Days from one date to another: 1 from a day to the next, negative backwards. */
export function daysBetween(from: string, to: string): number {
  return epochDay(to) - epochDay(from);
}

/** Days since 1970-01-01, a number that sorts and subtracts. */
export function epochDay(date: string): number {
  return remembered(epochDays, date, () => plain('1970-01-01').until(plain(date), { largestUnit: 'day' }).days);
}

/** The date of a day number since 1970-01-01. */
export function dateOfEpochDay(day: number): string {
  return addDays('1970-01-01', day);
}

/** The greatest whole number of months, then days, from one date to a later one: `from + months + days = to`. */
export function periodBetween(from: string, to: string): Span {
  const { months, days } = plain(from).until(plain(to), { largestUnit: 'month' });
  return { months, days };
}

/** The day of the week, 1 for Monday to 7 for Sunday (ISO 8601). */
export function weekday(date: string): number {
  return plain(date).dayOfWeek;
}

/**
 * A time of day (`14:30`) on a date, so many minutes later; part minutes are rounded up, so that a clock is never shown
 * to end too early.
 */
export function addMinutes(
  date: string,
  time: string,
  minutes: number,
): { readonly date: string; readonly time: string } {
  const end = plain(date)
    .toPlainDateTime(time)
    .add({ minutes: Math.ceil(minutes) });
  return { date: end.toPlainDate().toString(), time: end.toPlainTime().toString({ smallestUnit: 'minute' }) };
}
