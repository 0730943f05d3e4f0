import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays } from '../../language/values/calendar.ts';
import { type Around, Day, dayOf, OPEN_BEGINNING, printDay, readDay } from '../../language/values/day.ts';
import { certain } from '../../language/values/quantity.ts';
import { refusal } from './reading.ts';

const day = (text: string, around?: Around) => certain(readDay(text, around));
const dates = fc.integer({ min: 0, max: 109_000 }).map((n) => addDays('1900-01-01', n));
const times = fc
  .tuple(fc.nat(23), fc.nat(59))
  .map(([h, m]) => `${String(h).padStart(2, '0')}:${String(m).padStart(2, '0')}`);

/** Takes a printed day apart as the line reader would. */
function readPrinted(text: string) {
  const [, front, date = '', time] = /^(about |before )?([\d-]+)(?: (\d\d:\d\d))?$/.exec(text) ?? [];
  const around = { about: front === 'about ', before: front === 'before ' };
  return day(date, time === undefined ? around : { ...around, time });
}

describe('reading a day', () => {
  it('full, with a time, and rough', () => {
    expect(day('2026-04-18')).toEqual({ first: '2026-04-18', last: '2026-04-18', text: '2026-04-18', rough: false });
    expect(day('2026-04-18', { time: '14:30' })).toMatchObject({ time: '14:30', text: '2026-04-18 14:30' });
    expect(day('2019-06')).toEqual({ first: '2019-06-01', last: '2019-06-30', text: '2019-06', rough: true });
    expect(day('2024-02').last).toBe('2024-02-29');
  });

  it('about a year, a month, a day: nothing wider than what is named', () => {
    expect(day('2019', { about: true })).toEqual({
      first: '2019-01-01',
      last: '2019-12-31',
      text: 'about 2019',
      rough: true,
    });
    expect(day('2019-06', { about: true })).toMatchObject({ first: '2019-06-01', last: '2019-06-30' });
    expect(day('2019-06-03', { about: true })).toMatchObject({ first: '2019-06-03', last: '2019-06-03', rough: true });
  });

  it('before a day, a month, a year: ends the day before it', () => {
    const before = { before: true };
    expect(day('2021-04-10', before)).toEqual({
      first: OPEN_BEGINNING,
      last: '2021-04-09',
      text: 'before 2021-04-10',
      rough: true,
    });
    expect(day('2024-03', before).last).toBe('2024-02-29');
    expect(day('2019', before).last).toBe('2018-12-31');
  });

  it('reads what it prints', () => {
    const rough = fc.constantFrom<Around>({}, { about: true }, { before: true });
    const days = fc.oneof(
      fc.tuple(dates, rough).map(([date, around]) => day(date, around)),
      fc.tuple(dates, rough).map(([date, around]) => day(date.slice(0, 7), around)),
      fc.tuple(dates, times).map(([date, time]) => day(date, { time })),
      dates.map((date) => day(date.slice(0, 4), { about: true })),
      dates.map((date) => dayOf(date)),
    );
    fc.assert(
      fc.property(days, (first) => {
        expect(readPrinted(printDay(first))).toEqual(first);
        expect(Day.parse(JSON.parse(JSON.stringify(first)))).toEqual(first);
        expect(first.first <= first.last).toBe(true);
      }),
    );
  });

  it('the schema knows the calendar', () => {
    expect(Day.safeParse(dayOf('2026-02-30')).success).toBe(false);
    expect(Day.safeParse({ ...dayOf('2026-02-28'), time: '24:00' }).success).toBe(false);
  });
});

describe('refusals', () => {
  const cases: [text: string, around: Around, message: string, fix?: string][] = [
    ['2026-04-', {}, '`2026-04-` is half a date; a date is year, month, day, as in `2026-04-18`'],
    ['2026-', {}, '`2026-` is half a date; a date is year, month, day, as in `2026-04-18`'],
    ['202-', {}, '`202-` is half a date; a date is year, month, day, as in `2026-04-18`'],
    ['2026-4-8', {}, 'month and day have two digits each; write `2026-04-08`', '2026-04-08'],
    ['2026-4', {}, 'month and day have two digits each; write `2026-04`', '2026-04'],
    ['2026-4-8', { before: true }, 'month and day have two digits each; write `2026-04-08`', 'before 2026-04-08'],
    ['2026-4-31', {}, 'April 2026 has 30 days'],
    ['20260418', {}, 'a date has hyphens between year, month and day; write `2026-04-18`', '2026-04-18'],
    ['2026-02-30', {}, 'February 2026 has 28 days'],
    ['2024-02-30', {}, 'February 2024 has 29 days'],
    ['2026-04-00', {}, 'April 2026 has 30 days'],
    ['1850-01-01', {}, 'the year 1850 is not between 1900 and 2199'],
    ['2200-01', {}, 'the year 2200 is not between 1900 and 2199'],
    ['2026-18-04', {}, 'there is no month 18; the month comes before the day: `2026-04-18`', '2026-04-18'],
    ['2026-13', {}, 'there is no month 13; a date is year, month, day, as in `2026-04-18`'],
    ['2026-00-10', {}, 'there is no month 00; a date is year, month, day, as in `2026-04-18`'],
    ['2019', {}, 'a year alone is a rough date; write `about 2019`', 'about 2019'],
    ['4/18/2026', {}, 'a date is year, month, day; write `2026-04-18`', '2026-04-18'],
    ['18.4.2026', { about: true }, 'a date is year, month, day; write `2026-04-18`', 'about 2026-04-18'],
    ['4/5/2026', {}, 'a date is year, month, day; write `2026-04-05` or `2026-05-04`'],
    ['31/31/2026', {}, 'a date is year, month, day, as in `2026-04-18`; `31/31/2026` is none'],
    ['spring', {}, 'a date is expected here, such as `2026-04-18`; `spring` is none'],
    ['2019-06', { time: '10:00' }, 'a time needs a full date, as in `2026-04-18 14:30`'],
    ['2019-06-01', { time: '10:00', about: true }, 'a time needs a full date, as in `2026-04-18 14:30`'],
    ['2026-04-18', { time: '9:30' }, 'a time has two digits each; write `2026-04-18 09:30`'],
    ['2026-04-18', { time: '24:00' }, '`24:00` is no time of day; write it as in `14:30`, from 00:00 to 23:59'],
  ];
  it.each(cases)('%s %o', (text, around, message, fix) => {
    expect(refusal(readDay(text, around))).toEqual([message, fix]);
    if (fix !== undefined) expect(readPrinted(fix).text).toBe(fix);
  });
});
