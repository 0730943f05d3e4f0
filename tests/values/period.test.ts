import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  Duration,
  Effort,
  effortOf,
  Period,
  periodOf,
  printDuration,
  printEffort,
  printPeriod,
  readDuration,
  readEffort,
  readPeriod,
} from '../../language/values/period.ts';
import { expectRoundTrip, quantity, refusal, value } from './reading.ts';

const periods = fc.oneof(
  fc
    .tuple(fc.nat(99), fc.constantFrom('day', 'days', 'week', 'weeks', 'month', 'months', 'year', 'years'))
    .map(([n, unit]) => `${n} ${unit}`),
  fc.tuple(fc.nat(30), fc.nat(11), fc.nat(40)).map(([y, m, d]) => `${y} years ${m} months ${d} days`),
  fc.constantFrom('1/2 year', '1.5 years', '1 1/4 years', '2 weeks 3 days'),
);
const efforts = fc.oneof(
  fc.tuple(fc.nat(99), fc.nat(59)).map(([h, min]) => `${h} h ${min} min`),
  fc.tuple(fc.nat(9999), fc.constantFrom('h', 'hour', 'hours', 'min')).map(([n, unit]) => `${n / 100} ${unit}`),
);

describe('printing and reading again gives the same', () => {
  it('period', () => expectRoundTrip(periods, readPeriod, printPeriod, Period));
  it('effort', () => expectRoundTrip(efforts, readEffort, printEffort, Effort));
  it('duration', () => expectRoundTrip(fc.oneof(periods, efforts), readDuration, printDuration, Duration));
  it('computed periods and efforts', () => {
    fc.assert(
      fc.property(fc.nat(600), fc.nat(400), (a, b) => {
        expect(value(readPeriod, periodOf(a, b).text)).toEqual(periodOf(a, b));
        expect(value(readEffort, effortOf(a).text)).toEqual(effortOf(a));
      }),
    );
  });
});

describe('values', () => {
  it('keep months and days apart', () => {
    expect(value(readPeriod, '18 months')).toEqual({ months: 18, days: 0, text: '18 months' });
    expect(value(readPeriod, '1 year 6 months')).toMatchObject({ months: 18, days: 0 });
    expect(value(readPeriod, '1/2 year')).toMatchObject({ months: 6, days: 0 });
    expect(value(readPeriod, '2 weeks 3 days')).toMatchObject({ months: 0, days: 17 });
    expect(value(readPeriod, '1 month 10 days')).toMatchObject({ months: 1, days: 10 });
  });

  it('of efforts are minutes', () => {
    expect(value(readEffort, '1 h 30 min').minutes).toBe(90);
    expect(value(readEffort, '1/4 h').minutes).toBe(15);
    expect(value(readEffort, '2 hours').minutes).toBe(120);
  });

  it('of durations say which they are', () => {
    expect(value(readDuration, '24 h')).toEqual({ kind: 'effort', minutes: 1440, text: '24 h' });
    expect(value(readDuration, '7 days')).toEqual({ kind: 'period', months: 0, days: 7, text: '7 days' });
  });

  it('that are computed are spelled in the greatest units', () => {
    expect(periodOf(18, 1).text).toBe('1 year 6 months 1 day');
    expect(periodOf(0, 0).text).toBe('0 days');
    expect([effortOf(90).text, effortOf(0).text, effortOf(120).text]).toEqual(['1 h 30 min', '0 min', '2 h']);
  });
});

describe('refusals', () => {
  it.each([
    [readPeriod, '1 year 14 months', '12 months are 1 year; write `2 years 2 months`', '2 years 2 months'],
    [readPeriod, '2 weeks 9 days', '7 days are 1 week; write `3 weeks 2 days`', '3 weeks 2 days'],
    [readPeriod, '6 months 1 year', 'the greater unit comes first; write `1 year 6 months`', '1 year 6 months'],
    [readPeriod, '1/3 month', '`1/3 month` is no whole number of months; the nearest is `10 days`', undefined],
    [readPeriod, '1.5 weeks', '`1.5 weeks` is no whole number of days; the nearest is `11 days`', undefined],
    [readPeriod, '0.1 days', '`0.1 days` is no whole number of days; the nearest is `1 day`', undefined],
    [readPeriod, '2 days 3 days', '`day` stands twice in `2 days 3 days`; write it once', undefined],
    [readPeriod, '6', '`6` has no unit; write `6 days` or `6 months`', undefined],
    [readPeriod, '1', '`1` has no unit; write `1 day` or `1 month`', undefined],
    [readPeriod, '1 year 2', '`2` has no unit; write `1 year 2 months`', '1 year 2 months'],
    [readPeriod, '30 d', '`d` is no unit here; write `days`', '30 days'],
    [readPeriod, '6 monhts', '`monhts` is no unit here; write `months`', '6 months'],
    [readPeriod, '5000 years', '`5000 years` is longer than a thousand years', undefined],
    [readPeriod, '8 h', 'a period is expected here, such as `6 months`; `8 h` is an effort in hours', undefined],
    [readEffort, '1 h 90 min', '60 min are 1 h; write `2 h 30 min`', '2 h 30 min'],
    [readEffort, '1 h 60 min', '60 min are 1 h; write `2 h`', '2 h'],
    [readEffort, '30 min 1 hour', 'the greater unit comes first; write `1 hour 30 min`', '1 hour 30 min'],
    [readEffort, '1.5 h 10 min', 'only the last number may be a fraction or a decimal, as in `1 h 30 min`', undefined],
    [readEffort, '45 minutes', '`minutes` is no unit here; write `min`', '45 min'],
    [readEffort, '1 h 30', '`30` has no unit; write `1 h 30 min`', '1 h 30 min'],
    [
      readDuration,
      '1 day 6 h',
      'days and hours do not go together; write `1 day 6 h` in hours alone or days alone',
      undefined,
    ],
    [readDuration, '5', '`5` has no unit; write `5 h` or `5 days`', undefined],
    [readDuration, '4 in', 'a time span is expected here, such as `12 h`; `4 in` is a length', undefined],
  ])('%o %s', (read, text, message, fix) => {
    expect(refusal(read(quantity(text)))).toEqual([message, fix]);
    if (fix !== undefined) expect(read(quantity(fix)).ok).toBe(true);
  });
});
