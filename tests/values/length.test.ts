import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Length, lengthOf, printLength, readLength } from '../../language/values/length.ts';
import { amounts, expectRoundTrip, quantity, refusal, value } from './reading.ts';

const IN = 25_400_000;
const nm = (text: string) => value(readLength, text).nm;

const compounds = fc
  .tuple(fc.nat(99), fc.nat(11), fc.constantFrom('', ' 1/2', ' 3/16', '.25'))
  .map(([ft, inches, rest]) => `${ft} ft ${inches}${rest} in`);
const metric = fc.tuple(fc.nat(99), fc.nat(99)).map(([m, cm]) => `${m} m ${cm} cm`);
const units = fc.constantFrom('in', 'ft', 'yd', 'm', 'cm', 'mm');

describe('reading a length', () => {
  it('is exact in every unit', () => {
    expect(nm('14 in')).toBe(14 * IN);
    expect(nm('1 ft')).toBe(12 * IN);
    expect(nm('1 yd')).toBe(36 * IN);
    expect(nm('1/64 in')).toBe(396_875);
    expect(nm('0.001 mm')).toBe(1000);
    expect(nm('2.5 m')).toBe(2_500_000_000);
    expect(nm('90 cm')).toBe(900_000_000);
    expect(nm('1/3 ft')).toBe(4 * IN);
    expect(nm('31.451234567 m')).toBe(31_451_234_567);
  });

  it('adds up the parts of a compound', () => {
    expect(nm('8 ft 2 1/2 in')).toBe(98 * IN + IN / 2);
    expect(nm('1 yd 2 ft 3 in')).toBe(63 * IN);
    expect(nm('1 m 5 cm 2 mm')).toBe(1_052_000_000);
    expect(nm('27 ft 9.5 in')).toBe(333.5 * IN);
    expect(nm('0 ft')).toBe(0);
  });

  it('keeps the text as written, with single blanks', () => {
    expect(value(readLength, '14in').text).toBe('14 in');
    expect(value(readLength, '8 ft  2   1/2 in').text).toBe('8 ft 2 1/2 in');
    expect(readLength({ terms: [{ amount: '2 \t1/2', unit: 'in' }] })).toEqual({
      ok: true,
      value: { nm: 2.5 * IN, text: '2 1/2 in' },
    });
  });

  it('reads what it prints', () => {
    const texts = fc.oneof(
      fc.tuple(amounts, units).map(([n, unit]) => `${n} ${unit}`),
      compounds,
      metric,
    );
    expectRoundTrip(texts, readLength, printLength, Length);
  });
});

describe('a computed length', () => {
  it('is spelled so that it reads back to the same number of nanometres', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10 ** 12 }), fc.constantFrom('us', 'metric'), (n, system) => {
        expect(nm(lengthOf(n, system).text)).toBe(n);
      }),
    );
    fc.assert(
      fc.property(fc.nat(1_000_000), (n) => {
        expect(nm(lengthOf((n * IN) / 64).text)).toBe((n * IN) / 64);
      }),
    );
  });

  it('is written in feet and inches where that is exact', () => {
    expect(lengthOf(98.5 * IN).text).toBe('8 ft 2 1/2 in');
    expect(lengthOf(24 * IN).text).toBe('2 ft');
    expect(lengthOf(IN / 4).text).toBe('1/4 in');
    expect(lengthOf(0).text).toBe('0 in');
    expect(lengthOf(1_000_000).text).toBe('1 mm');
    expect(lengthOf(1_500_001, 'metric').text).toBe('1.500001 mm');
  });
});

describe('a length that is refused', () => {
  const cases: [text: string, message: string, fix?: string][] = [
    ['3 ft 14 in', '12 in are 1 ft; write `4 ft 2 in`', '4 ft 2 in'],
    ['3 ft 14 1/2 in', '12 in are 1 ft; write `4 ft 2 1/2 in`', '4 ft 2 1/2 in'],
    ['3 ft 12 in', '12 in are 1 ft; write `4 ft`', '4 ft'],
    ['1 m 250 cm', '100 cm are 1 m; write `3 m 50 cm`', '3 m 50 cm'],
    ['2 in 8 ft', 'the greater unit comes first; write `8 ft 2 in`', '8 ft 2 in'],
    [
      '2 1/2 ft 3 in',
      'only the last number of a length may be a fraction or a decimal; write `2 ft 9 in`',
      '2 ft 9 in',
    ],
    ['2 ft 3 ft', '`ft` stands twice in one length; write it as in `8 ft 2 1/2 in` or `2.5 m`'],
    ['1 m 2 in', '`m` and `in` do not go together in one length; write it as in `8 ft 2 1/2 in` or `2.5 m`'],
    [
      '1/3 in',
      '`1/3 in` is no exact length: fractions end in /2, /4, /8, /16, /32 or /64, decimals have at most 5 places; ' +
        'the nearest is `21/64 in`',
    ],
    [
      '1/3 m',
      '`1/3 m` is no exact length: the finest that is kept is a millionth of a millimetre; the nearest is `0.333333 m`',
    ],
    ['0.0000001 mm', '`0.0000001 mm` is no exact length: the finest that is kept is a millionth of a millimetre'],
    ['99999999999999 m', '`99999999999999 m` is too long to be kept exactly'],
    ['-5 in', 'a length cannot be negative; write `5 in`'],
    ['61 USD', 'a length is expected here, such as `14 in`; `61 USD` is money'],
    ['30 ft per h', 'a length is expected here, such as `14 in`; `30 ft per h` is a length per hour'],
    ['8 ft 2 qt', '`2 qt` cannot follow `8 ft`: it is a volume'],
  ];
  it.each(cases)('%s', (text, message, fix) => {
    expect(refusal(readLength(quantity(text)))).toEqual([message, fix]);
    if (fix !== undefined) expect(readLength(quantity(fix)).ok).toBe(true);
  });

  it('gets a fix of the same length where the parts are only out of order or too great', () => {
    const parts = fc.record({ ft: fc.integer({ min: 1, max: 40 }), in: fc.integer({ min: 12, max: 400 }) });
    fc.assert(
      fc.property(parts, fc.boolean(), ({ ft, in: inches }, swap) => {
        const text = swap ? `${inches} in ${ft} ft` : `${ft} ft ${inches} in`;
        const [, fix] = refusal(readLength(quantity(text)));
        expect(nm(fix ?? '')).toBe((ft * 12 + inches) * IN);
      }),
    );
  });
});
