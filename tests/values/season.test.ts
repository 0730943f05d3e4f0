import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, daysBetween } from '../../language/values/calendar.ts';
import { certain } from '../../language/values/quantity.ts';
import {
  daysLeft,
  inSeason,
  MonthDay,
  nextInSeason,
  printMonthDay,
  printSeason,
  readMonthDay,
  readSeason,
  Season,
  seasonEnd,
} from '../../language/values/season.ts';
import { refusal } from './reading.ts';

const season = (from: string, to: string) => certain(readSeason(from, to));
const summer = season('04-15', '10-15');
const winter = season('11-01', '03-15');
const monthDays = fc.nat(365).map((n) => addDays('2000-01-01', n).slice(5));
const seasons = fc.tuple(monthDays, monthDays).map(([from, to]) => season(from, to));
const dates = fc.nat(10_000).map((n) => addDays('2020-01-01', n));

describe('a season', () => {
  it('includes both its days', () => {
    expect(['2026-04-14', '2026-04-15', '2026-10-15', '2026-10-16'].map((d) => inSeason(d, summer))).toEqual([
      false,
      true,
      true,
      false,
    ]);
  });

  it('may wrap over the new year', () => {
    expect(
      ['2026-10-31', '2026-11-01', '2027-01-01', '2027-03-15', '2027-03-16'].map((d) => inSeason(d, winter)),
    ).toEqual([false, true, true, true, false]);
    expect(seasonEnd('2026-12-24', winter)).toBe('2027-03-15');
    expect(seasonEnd('2027-01-24', winter)).toBe('2027-03-15');
  });

  it('says its next day and its days left', () => {
    expect(nextInSeason('2026-01-10', summer)).toBe('2026-04-15');
    expect(nextInSeason('2026-06-10', summer)).toBe('2026-06-10');
    expect(nextInSeason('2026-10-16', summer)).toBe('2027-04-15');
    expect(daysLeft('2026-10-15', summer)).toBe(1);
    expect(daysLeft('2026-10-10', summer)).toBe(6);
    expect(daysLeft('2026-10-16', summer)).toBe(0);
    expect(daysLeft('2026-12-31', winter)).toBe(75);
  });

  it('that opens or closes on 29 February does so beside it in other years', () => {
    expect(nextInSeason('2026-01-01', season('02-29', '06-01'))).toBe('2026-03-01');
    expect(nextInSeason('2028-01-01', season('02-29', '06-01'))).toBe('2028-02-29');
    expect(seasonEnd('2026-01-01', season('01-01', '02-29'))).toBe('2026-02-28');
    expect(seasonEnd('2028-01-01', season('01-01', '02-29'))).toBe('2028-02-29');
  });

  it('agrees with counting day by day', () => {
    fc.assert(
      fc.property(seasons, dates, (one, date) => {
        let first = date;
        while (!inSeason(first, one)) first = addDays(first, 1);
        expect(nextInSeason(date, one)).toBe(first);
        const end = seasonEnd(date, one);
        expect(inSeason(end, one)).toBe(true);
        expect(end >= first && daysBetween(first, end) <= 366).toBe(true);
        if (inSeason(date, one)) expect(addDays(date, daysLeft(date, one) - 1)).toBe(end);
        const whole = addDays(`2000-${one.to}`, 1).slice(5) === one.from || one.from === '02-29' || one.to === '02-29';
        if (!whole) expect(inSeason(addDays(end, 1), one)).toBe(false);
      }),
    );
  });

  it('reads what it prints', () => {
    fc.assert(
      fc.property(seasons, (one) => {
        const [from = '', to = ''] = printSeason(one).split(' to ');
        expect(season(from, to)).toEqual(one);
        expect(Season.parse(JSON.parse(JSON.stringify(one)))).toEqual(one);
        expect(certain(readMonthDay(printMonthDay(one.from)))).toBe(one.from);
      }),
    );
  });
});

describe('refusals', () => {
  it.each([
    ['4-15', 'month and day have two digits each; write `04-15`', '04-15'],
    ['02-30', 'month 02 has 29 days; there is no `02-30`', undefined],
    ['04-31', 'month 04 has 30 days; there is no `04-31`', undefined],
    ['18-20', 'there is no month 18; a day of the year is month and day, as in `04-15`', undefined],
    ['15-04', 'there is no month 15; the month comes first: `04-15`', '04-15'],
    ['2-', 'a day of the year is month and day, as in `04-15`; `2-` is none', undefined],
  ])('%s', (text, message, fix) => {
    expect(refusal(readMonthDay(text))).toEqual([message, fix]);
    expect(refusal(readSeason(text, '10-15'))).toEqual([message, fix]);
    expect(refusal(readSeason('04-15', text))).toEqual([message, fix]);
    expect(MonthDay.safeParse(text).success).toBe(false);
  });
});
