import * as z from 'zod';
import { addDays, daysInMonth, isValidDate } from './calendar.ts';
import { articled, exampleOf } from './kinds.ts';
import { done, type Read, refused } from './quantity.ts';

const IsoDate = z.string().refine(isValidDate, 'no date of the calendar');
const TimeOfDay = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/);

/**
 * When something happened or will: the first and the last day that it may have been, both included, as ISO dates that
 * compare as text; a full date has both the same. `rough` if the day is not known for sure (a month, `about`, `before`).
 */
export const Day = z
  .strictObject({ first: IsoDate, last: IsoDate, text: z.string(), rough: z.boolean(), time: TimeOfDay.optional() })
  .readonly();
export type Day = z.infer<typeof Day>;

/** What may stand around a date: a time after it, `about` or `before` in front of it. */
export interface Around {
  readonly time?: string;
  readonly about?: boolean;
  readonly before?: boolean;
}

/** Dates before this have an open beginning: `before 2021-04-10`. */
export const OPEN_BEGINNING = '0001-01-01';

const YEARS = { first: 1900, last: 2199 } as const;
const MONTHS = 'January February March April May June July August September October November December'.split(' ');

/**
 * Reads `2026-04-18` (with a time `14:30`), a month `2019-06`, and behind `about` or `before` also a year. `about`
 * widens nothing beyond the named day, month or year; `before` ends the day before it. A fix stands for the whole
 * date, with `about` or `before` but without the time.
 */
export function readDay(text: string, around: Around = {}): Read<Day> {
  const { time } = around;
  const front = around.before ? 'before ' : around.about ? 'about ' : '';
  const named = namedDays(text, front);
  if (!named.ok) return named;
  const { first, last } = named.value;
  if (time !== undefined) {
    const fault = timeFault(time, text, first === last && front === '');
    if (fault !== undefined) return fault;
  }
  const written = time === undefined ? front + text : `${text} ${time}`;
  const day = around.before
    ? { first: OPEN_BEGINNING, last: addDays(first, -1), text: written, rough: true }
    : { first, last, text: written, rough: front !== '' || first !== last };
  return done(time === undefined ? day : { ...day, time });
}

/** The date as it was written: `2026-04-18 14:30`, `about 2019`, `before 2021-04-10`. */
export function printDay(day: Day): string {
  return day.text;
}

/** A full date as a value. The date must be one of the calendar. */
export function dayOf(date: string): Day {
  return { first: date, last: date, text: date, rough: false };
}

/** The first and last day of the year, month or day that a text names. */
function namedDays(text: string, front: string): Read<{ first: string; last: string }> {
  const match = /^(\d{4})(?:-(\d{2})(?:-(\d{2}))?)?$/.exec(text);
  if (match === null) return misspelt(text, front);
  const [, year = '', month, day] = match;
  if (Number(year) < YEARS.first || Number(year) > YEARS.last) {
    return refused(`the year ${year} is not between ${YEARS.first} and ${YEARS.last}`);
  }
  if (month === undefined) {
    if (front === '') return refused(`a year alone is a rough date; write \`about ${year}\``, `about ${year}`);
    return done({ first: `${year}-01-01`, last: `${year}-12-31` });
  }
  if (month < '01' || month > '12') return wrongMonth(year, month, day, front);
  const days = daysInMonth(`${year}-${month}`);
  if (day === undefined) return done({ first: `${year}-${month}-01`, last: `${year}-${month}-${days}` });
  if (day < '01' || Number(day) > days) return refused(`${MONTHS[Number(month) - 1]} ${year} has ${days} days`);
  return done({ first: text, last: text });
}

/** `2026-18-04`: the day was written before the month. */
function wrongMonth(year: string, month: string, day: string | undefined, front: string): Read<never> {
  const swapped = `${year}-${day ?? ''}-${month}`;
  if (day !== undefined && isValidDate(swapped)) {
    return refused(`there is no month ${month}; the month comes before the day: \`${swapped}\``, front + swapped);
  }
  return refused(`there is no month ${month}; a date is year, month, day, as in \`${exampleOf('date')}\``);
}

/** A date that is half typed or in another form: says the form, with a fix where only one date can be meant. */
function misspelt(text: string, front: string): Read<never> {
  const hyphens = text.includes('-');
  const loose = (hyphens ? /^(\d{4})-(\d{1,2})(?:-(\d{1,2}))?$/ : /^(\d{4})(\d{2})(\d{2})$/).exec(text);
  if (loose !== null) {
    const parts = loose.slice(1).filter((part) => part !== undefined);
    const better = parts.map((part) => part.padStart(2, '0')).join('-');
    const read = namedDays(better, front);
    if (!read.ok) return read;
    const form = hyphens ? 'month and day have two digits each' : 'a date has hyphens between year, month and day';
    return refused(`${form}; write \`${better}\``, front + better);
  }
  const slashed = /^(\d{1,2})[/.](\d{1,2})[/.](\d{4})$/.exec(text);
  if (slashed !== null) return slashedDate(slashed, front);
  if (/^\d{1,4}-[\d-]*$/.test(text)) {
    return refused(`\`${text}\` is half a date; a date is year, month, day, as in \`${exampleOf('date')}\``);
  }
  return refused(`${articled('date')} is expected here, such as \`${exampleOf('date')}\`; \`${text}\` is none`);
}

/** `4/18/2026` can only be 18 April; `4/5/2026` may be either, so there is no fix. */
function slashedDate(match: RegExpExecArray, front: string): Read<never> {
  const [a = '', b = '', year = ''] = match.slice(1).map((part) => part.padStart(2, '0'));
  const monthFirst = `${year}-${a}-${b}`;
  const dayFirst = `${year}-${b}-${a}`;
  const candidates = [...new Set([monthFirst, dayFirst])].filter(isValidDate);
  if (candidates.length === 0) {
    return refused(`a date is year, month, day, as in \`${exampleOf('date')}\`; \`${match[0]}\` is none`);
  }
  const write = candidates.map((date) => `\`${date}\``).join(' or ');
  return refused(
    `a date is year, month, day; write ${write}`,
    candidates.length === 1 ? front + candidates[0] : undefined,
  );
}

function timeFault(time: string, text: string, full: boolean): Read<never> | undefined {
  if (!full) return refused(`a time needs a full date, as in \`${exampleOf('date')} ${exampleOf('time')}\``);
  if (TimeOfDay.safeParse(time).success) return undefined;
  const short = /^(\d):([0-5]\d)$/.exec(time);
  if (short !== null) return refused(`a time has two digits each; write \`${text} 0${time}\``);
  return refused(`\`${time}\` is no time of day; write it as in \`${exampleOf('time')}\`, from 00:00 to 23:59`);
}
