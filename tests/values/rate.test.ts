import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  AreaRate,
  Coverage,
  LengthRate,
  MoneyRate,
  printRate,
  Rate,
  readAreaRate,
  readCoverage,
  readLengthRate,
  readMoneyRate,
  readRate,
} from '../../language/values/rate.ts';
import { expectRoundTrip, quantity, refusal, value } from './reading.ts';

const perHour = fc.constantFrom('h', 'hour', 'hours');
const wholes = fc.nat(999);
const money = fc.tuple(wholes, fc.constantFrom('h', 'hour', 'day', 'days')).map(([n, per]) => `${n}.5 USD per ${per}`);
const coverage = fc
  .tuple(wholes, fc.constantFrom('sq-ft', 'sq-m'), fc.constantFrom('gal', 'qt', 'pt', 'fl-oz', 'L', 'mL'))
  .map(([n, area, per]) => `${n} ${area} per ${per}`);
const lengths = fc.tuple(wholes, perHour).map(([n, per]) => `${n} ft 6 in per ${per}`);
const areas = fc.tuple(wholes, perHour).map(([n, per]) => `${n}.25 sq-ft per ${per}`);

describe('printing and reading again gives the same', () => {
  it('money per hour or day', () => expectRoundTrip(money, readMoneyRate, printRate, MoneyRate));
  it('area per volume', () => expectRoundTrip(coverage, readCoverage, printRate, Coverage));
  it('length per hour', () => expectRoundTrip(lengths, readLengthRate, printRate, LengthRate));
  it('area per hour', () => expectRoundTrip(areas, readAreaRate, printRate, AreaRate));
  it('any rate', () => expectRoundTrip(fc.oneof(money, coverage, lengths, areas), readRate, printRate, Rate));
});

describe('values', () => {
  it('of each rate', () => {
    expect(value(readMoneyRate, '48 USD per hour')).toEqual({
      kind: 'money-rate',
      amount: '48.00',
      currency: 'USD',
      per: 'h',
      text: '48 USD per hour',
    });
    expect(value(readMoneyRate, '350 USD per days').per).toBe('day');
    expect(value(readCoverage, '2 sq-m per L').mm2PerMl).toBe(2000);
    expect(value(readLengthRate, '30 ft per h').nmPerH).toBe(360 * 25_400_000);
    expect(value(readAreaRate, '1 sq-m per h').mm2PerH).toBe(1_000_000);
  });

  it('of coverages do not depend on the unit of volume', () => {
    expect(value(readCoverage, '100 sq-ft per gal').mm2PerMl).toBe(value(readCoverage, '25 sq-ft per qt').mm2PerMl);
  });
});

describe('refusals', () => {
  it.each([
    [readMoneyRate, '48 USD per hr', '`hr` is no unit here; write `48 USD per h`', '48 USD per h'],
    [readMoneyRate, '48 usd per h', '`usd` is no unit here; write `USD`', '48 USD per h'],
    [
      readMoneyRate,
      '48 USD',
      'money per hour or day is expected here, such as `48 USD per h`; `48 USD` is money',
      undefined,
    ],
    [
      readMoneyRate,
      '100 sq-ft per gal',
      'money per hour or day is expected here, such as `48 USD per h`; `100 sq-ft per gal` is an area per volume',
      undefined,
    ],
    [
      readMoneyRate,
      '48 USD per month',
      'money per hour or day is expected here, such as `48 USD per h`; write `per h` or `per day`, not `per month`',
      undefined,
    ],
    [readCoverage, '100 sq-ft per gallon', '`gallon` is no unit here; write `100 sq-ft per gal`', '100 sq-ft per gal'],
    [readCoverage, '100 sqft per gal', '`sqft` is no unit here; write `sq-ft`', '100 sq-ft per gal'],
    [
      readCoverage,
      '100 sq-ft per h',
      'an area per volume is expected here, such as `100 sq-ft per gal`; `100 sq-ft per h` is an area per hour',
      undefined,
    ],
    [
      readLengthRate,
      '30 ft per day',
      'a length per hour is expected here, such as `30 ft per h`; write `per h`, not `per day`',
      undefined,
    ],
    [readAreaRate, '120 per h', '`120` has no unit; write `120 sq-ft` or `120 sq-m`', undefined],
    [readRate, '48 USD per ft', 'a rate is expected here, such as `48 USD per h`; `48 USD per ft` is none', undefined],
    [readRate, '48 USD', 'a rate is expected here, such as `48 USD per h`; `48 USD` is money', undefined],
  ])('%o %s', (read, text, message, fix) => {
    expect(refusal(read(quantity(text)))).toEqual([message, fix]);
    if (fix !== undefined) expect(read(quantity(fix)).ok).toBe(true);
  });
});
