// Slots for dates, spans of days, days of the year and days of the week.
import * as z from 'zod';
import type { Part } from '../../grammar/lines.ts';
import { Day, readDay } from '../../values/day.ts';
import { readMonthDay, readSeason, Season } from '../../values/season.ts';
import { type Cursor, expected, peek, refuse, slip, takeClause } from '../cursor.ts';
import type { Slot } from '../slot.ts';
import { days, type Day as Weekday } from '../words.ts';

const startsDate = (part: Part) =>
  part.kind === 'date' || (part.kind === 'clause' && (part.text === 'about' || part.text === 'before'));

/** A date, with a time if one is written; `about 2019`, `2019-06`, `before 2021-04-10` are rough. */
export const date: Slot<Day> = {
  what: 'a date',
  example: '2026-04-18',
  schema: Day,
  offers: [{ kind: 'date' }],
  inside: ['about', 'before'],
  accepts: (part) => startsDate(part) || (part.kind === 'mistake' && part.slip === 'SLASHED'),
  read(cursor: Cursor) {
    const start = peek(cursor)?.at[0];
    const about = takeClause(cursor, 'about');
    const before = !about && takeClause(cursor, 'before');
    const part = peek(cursor);
    if (part?.kind === 'mistake') return slip(cursor, part);
    const year = part && bareYear(part);
    if (year !== undefined) {
      cursor.index++;
      return refuse(cursor, 'wrong-date', year.got, year.at);
    }
    if (part?.kind !== 'date' || start === undefined) return expected(cursor, 'a date', '2026-04-18');
    cursor.index++;
    const next = peek(cursor);
    const time = next?.kind === 'time' ? next.text : undefined;
    if (time !== undefined) cursor.index++;
    const got = readDay(part.text, { about, before, ...(time === undefined ? {} : { time }) });
    if (got.ok) return got.value;
    const wrongTime = got.fix === undefined && time !== undefined && next !== undefined;
    return refuse(cursor, 'wrong-date', got, [start, wrongTime ? next.at[1] : part.at[1]]);
  },
};

/** `built 2019`: a year alone is read as a bare number, and what stands behind it as its unit. */
function bareYear(part: Part) {
  const amount = part.kind === 'quantity' ? part.terms[0]?.amount : undefined;
  if (amount === undefined || !/^(19|20|21)\d\d$/.test(amount)) return undefined;
  const got = readDay(amount);
  return got.ok ? undefined : { got, at: [part.at[0], part.at[0] + amount.length] as const };
}

/** `04-15 to 10-15`, both ends included; may wrap over the new year. */
export const season: Slot<Season> = {
  what: 'a season',
  example: '04-15 to 10-15',
  schema: Season,
  offers: [{ kind: 'words', words: ['04-15 to 10-15'] }],
  inside: ['to'],
  accepts: (part) => part.kind === 'monthday',
  read(cursor: Cursor) {
    const from = peek(cursor);
    if (from?.kind !== 'monthday') return expected(cursor, 'a season', '04-15 to 10-15');
    cursor.index++;
    if (!takeClause(cursor, 'to')) return expected(cursor, '`to` and a day of the year', 'to 10-15');
    const to = peek(cursor);
    if (to?.kind !== 'monthday') return expected(cursor, 'a day of the year', '10-15');
    cursor.index++;
    const got = readSeason(from.text, to.text);
    return got.ok ? got.value : refuse(cursor, 'wrong-date', got, readMonthDay(from.text).ok ? to.at : from.at);
  },
};

/** `mon to fri`, or one day. */
export const Weekdays = z.array(z.enum(days)).readonly();
export const weekdays: Slot<readonly Weekday[]> = {
  what: 'days of the week',
  example: 'mon to fri',
  schema: Weekdays,
  offers: [{ kind: 'words', words: days }],
  inside: ['to'],
  accepts: (part) => part.kind === 'word' && (days as readonly string[]).includes(part.text),
  read(cursor: Cursor) {
    const first = weekday(cursor);
    if (first === undefined) return undefined;
    if (!takeClause(cursor, 'to')) return [days[first] as Weekday];
    const last = weekday(cursor);
    if (last === undefined) return undefined;
    return Array.from({ length: ((last - first + 7) % 7) + 1 }, (_, i) => days[(first + i) % 7] as Weekday);
  },
};

function weekday(cursor: Cursor): number | undefined {
  const part = peek(cursor);
  const index = part?.kind === 'word' ? (days as readonly string[]).indexOf(part.text) : -1;
  if (index < 0) return expected(cursor, `a day of the week (${days.map((day) => `\`${day}\``).join(', ')})`, 'mon');
  cursor.index++;
  return index;
}
