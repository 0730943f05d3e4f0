import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Area, printArea, readArea } from '../../language/values/area.ts';
import {
  Count,
  Counted,
  countedOf,
  Percent,
  printCount,
  printCounted,
  printPercent,
  readCount,
  readCounted,
  readPercent,
} from '../../language/values/numbers.ts';
import {
  printTemperature,
  printTemperatureDifference,
  readTemperature,
  readTemperatureDifference,
  Temperature,
  TemperatureDifference,
} from '../../language/values/temperature.ts';
import { unitWords } from '../../language/values/units.ts';
import { printVolume, readVolume, Volume } from '../../language/values/volume.ts';
import { amounts, expectRoundTrip, quantity, refusal, value } from './reading.ts';

const withUnits = (...units: readonly string[]) =>
  fc.tuple(amounts, fc.constantFrom(...units)).map(([amount, unit]) => `${amount} ${unit}`);
const signed = (texts: fc.Arbitrary<string>) => fc.tuple(fc.boolean(), texts).map(([neg, t]) => (neg ? `-${t}` : t));

describe('printing and reading again gives the same', () => {
  it('area', () => expectRoundTrip(withUnits(...unitWords('area')), readArea, printArea, Area));
  it('volume', () => expectRoundTrip(withUnits(...unitWords('volume')), readVolume, printVolume, Volume));
  it('percent', () => expectRoundTrip(signed(withUnits('%')), readPercent, printPercent, Percent));
  it('count', () => expectRoundTrip(fc.nat().map(String), readCount, printCount, Count));
  it('things', () => expectRoundTrip(withUnits(...unitWords('counted')), readCounted, printCounted, Counted));
  it('temperature', () => {
    const degrees = fc.integer({ min: -200, max: 400 }).chain((n) => fc.constantFrom(`${n} F`, `${n}.5 C`));
    expectRoundTrip(degrees, readTemperature, printTemperature, Temperature);
  });
  it('difference of temperatures', () =>
    expectRoundTrip(withUnits('F', 'C'), readTemperatureDifference, printTemperatureDifference, TemperatureDifference));
});

describe('values', () => {
  it('of areas and volumes are the nearest doubles', () => {
    expect(value(readArea, '120 sq-ft').mm2).toBe(11_148_364.8);
    expect(value(readArea, '1/3 sq-m').mm2).toBe(1_000_000 / 3);
    expect(value(readVolume, '1/3 L').mL).toBe(1000 / 3);
    expect(value(readVolume, '1 L').mL).toBe(1000);
    expect(value(readVolume, '2 qt').mL).toBe(value(readVolume, '1/2 gal').mL);
  });

  it('of numbers', () => {
    expect(value(readPercent, '6.5 %').percent).toBe(6.5);
    expect(value(readPercent, '-1 %').percent).toBe(-1);
    expect(value(readCount, '4').count).toBe(4);
    expect(value(readCounted, '1/2 case')).toEqual({ count: 0.5, noun: 'case', text: '1/2 case' });
  });

  it('of things are the same in singular and plural', () => {
    expect(value(readCounted, '2 rolls').noun).toBe('roll');
    expect(value(readCounted, '2 roll').noun).toBe('roll');
    expect(value(readCounted, '1 boxes').noun).toBe('box');
  });

  it('of computed things read back', () => {
    expect(countedOf(2, 'roll').text).toBe('2 rolls');
    expect(countedOf(1, 'cartridge').text).toBe('1 cartridge');
    expect(countedOf(0.5, 'case').text).toBe('1/2 case');
    expect(countedOf(1.5, 'box').text).toBe('1 1/2 boxes');
    expect(countedOf(0, 'roll').text).toBe('0 rolls');
    fc.assert(
      fc.property(fc.nat(9999), fc.constantFrom('roll', 'box', 'patch'), (n, noun) => {
        const made = countedOf(n / 16, noun);
        expect(value(readCounted, made.text)).toEqual(made);
      }),
    );
  });
});

describe('refusals', () => {
  it.each([
    [readVolume, '10 oz', '`oz` is no unit here; write `fl-oz`', '10 fl-oz'],
    [readVolume, '300 ml', '`ml` is no unit here; write `mL`', '300 mL'],
    [readVolume, '1', '`1` has no unit; write `1 fl-oz` or `1 mL`', undefined],
    [
      readVolume,
      '1 gal 2 qt',
      'a volume has one number and one unit, as in `10.3 fl-oz`; `1 gal 2 qt` has 2',
      undefined,
    ],
    [readVolume, '-1 gal', 'a volume cannot be negative; write `1 gal`', undefined],
    [readVolume, '14 in', 'a volume is expected here, such as `10.3 fl-oz`; `14 in` is a length', undefined],
    [readArea, '120 sqft', '`sqft` is no unit here; write `sq-ft`', '120 sq-ft'],
    [readArea, '9 m²', '`m²` is no unit here; write `sq-m`', '9 sq-m'],
    [readArea, '9', '`9` has no unit; write `9 sq-ft` or `9 sq-m`', undefined],
    [readPercent, '14', '`14` has no unit; write `14 %`', '14 %'],
    [readPercent, '3 percent', '`percent` is no unit here; write `%`', '3 %'],
    [readPercent, '4 in', 'a percentage is expected here, such as `6.5 %`; `4 in` is a length', undefined],
    [readCount, '4.5', 'a whole number is expected here; `4.5` is none', undefined],
    [readCount, '-4', 'a whole number cannot be negative; write `4`', undefined],
    [readCount, '6.', '`6.` ends with its decimal point; write `6` or `6.5`', '6'],
    [readCount, '4 rolls', 'a whole number is expected here, such as `4`; `4 rolls` is a number of things', undefined],
    [readCounted, '2', '`2` has no unit; write `2 rolls` or `2 cartridges`', undefined],
    [readCounted, '1', '`1` has no unit; write `1 roll` or `1 cartridge`', undefined],
    [readCounted, '3 rols', '`rols` is no unit here; write `rolls`', '3 rolls'],
    [readCounted, '5 pcs', '`pcs` is no unit here; write `pieces`', '5 pieces'],
    [readTemperature, '-500 F', '`-500 F` is below absolute zero, -273.15 C or -459.67 F', undefined],
    [readTemperature, '64', '`64` has no unit; write `64 F` or `64 C`', undefined],
    [readTemperature, '64 degF', '`degF` is no unit here; write `F`', '64 F'],
    [readTemperature, '10 c', '`c` is no unit here; write `C`', '10 C'],
    [readTemperatureDifference, '-5 F', 'a difference of temperatures cannot be negative; write `5 F`', undefined],
  ])('%o %s', (read, text, message, fix) => {
    expect(refusal(read(quantity(text)))).toEqual([message, fix]);
    if (fix !== undefined) expect(read(quantity(fix)).ok).toBe(true);
  });
});
