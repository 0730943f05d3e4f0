import { all, create } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { readArea } from '../../language/values/area.ts';
import { readLength } from '../../language/values/length.ts';
import { certain, type Quantity, quantityFrom, type Read } from '../../language/values/quantity.ts';
import { readTemperature, readTemperatureDifference } from '../../language/values/temperature.ts';
import { unitWords } from '../../language/values/units.ts';
import { readVolume } from '../../language/values/volume.ts';

function value<T>(read: (quantity: Quantity) => Read<T>, text: string): T {
  return certain(read(quantityFrom(text) ?? { terms: [] }));
}
const nm = (text: string) => value(readLength, text).nm;
const mL = (text: string) => value(readVolume, text).mL;
const mm2 = (text: string) => value(readArea, text).mm2;
const celsius = (text: string) => value(readTemperature, text).celsius;

/** A cubic inch in mL, exact: 2.54 cm cubed (computed from the definition of the inch). */
const CUBIC_INCH = 16.387064;

describe('lengths and areas (NIST SP 811, appendix B; inch and foot from memory)', () => {
  it('1 in = 25.4 mm, 1 ft = 304.8 mm', () => {
    expect(nm('1 in')).toBe(nm('25.4 mm'));
    expect(nm('1 ft')).toBe(nm('304.8 mm'));
    expect(nm('1 yd')).toBe(nm('0.9144 m'));
  });

  it('1 sq ft = 0.09290304 m2, and is 144 sq in', () => {
    expect(mm2('1 sq-ft')).toBe(92_903.04);
    expect(mm2('1 sq-ft')).toBe(mm2('144 sq-in'));
    expect(mm2('1 sq-ft')).toBe(mm2('0.09290304 sq-m'));
  });
});

describe('volumes, US customary (NIST Handbook 44, appendix C, seen in copies that cite it)', () => {
  it('1 gal = 231 cubic inches = 3.785411784 L = 4 qt = 8 pt = 128 fl oz', () => {
    expect(mL('1 gal')).toBe(3785.411784);
    expect(mL('1 gal')).toBeCloseTo(231 * CUBIC_INCH, 9);
    for (const same of ['4 qt', '8 pt', '128 fl-oz', '3.785411784 L']) expect(mL(same)).toBe(3785.411784);
  });

  it('1 fl oz = 1.8046875 cubic inches = 29.5735295625 mL; 1 pt = 473.176473 mL', () => {
    expect(mL('1 fl-oz')).toBe(29.5735295625);
    expect(mL('1 fl-oz')).toBeCloseTo(1.8046875 * CUBIC_INCH, 12);
    expect(mL('1 pt')).toBe(473.176473);
  });

  it('cartridges (computed from the definitions)', () => {
    expect(mL('10.1 fl-oz')).toBe(298.69264858125);
    expect(mL('10.3 fl-oz')).toBe(304.60735449375);
    expect(mL('10.1 fl-oz') / CUBIC_INCH).toBeCloseTo(18.22734375, 12);
    expect(mL('10.3 fl-oz') / CUBIC_INCH).toBeCloseTo(18.58828125, 12);
    expect(mL('300 mL') / CUBIC_INCH).toBeCloseTo(18.307123, 6);
  });
});

describe('temperatures (NIST SP 811: C = (F - 32) / 1.8, from memory)', () => {
  it('50 F = 10 C, -40 F = -40 C, 32 F = 0 C, 212 F = 100 C', () => {
    expect(celsius('50 F')).toBe(10);
    expect(celsius('-40 F')).toBe(-40);
    expect(celsius('32 F')).toBe(0);
    expect(celsius('212 F')).toBe(100);
  });

  it('a difference of 5 F is 2.78 K, not -15 C', () => {
    expect(value(readTemperatureDifference, '5 F').kelvin).toBeCloseTo(2.78, 2);
    expect(value(readTemperatureDifference, '9 F').kelvin).toBe(5);
    expect(celsius('5 F')).toBe(-15);
  });
});

// A second opinion: mathjs, a general library with units of its own, reads the same amount of every unit that there is.
// Computed over big decimals, so that what differs is a factor and not its rounding.
describe('every unit of length, area, volume and temperature as mathjs has it', () => {
  const big = create(all ?? {}, { number: 'BigNumber', precision: 40 });
  const known: Readonly<Record<string, string>> = {
    'sq-ft': 'sqft',
    'sq-in': 'sqin',
    'sq-m': 'm^2',
    gal: 'gallon',
    qt: 'quart',
    pt: 'pint',
    'fl-oz': 'fluidounce',
    F: 'degF',
    C: 'degC',
  };
  const amounts = ['1', '0.25', '3.5', '10.3', '28', '123.456'];
  /** The amount of one unit in another, by mathjs. */
  const there = (amount: string, word: string, to: string): number =>
    Number(big.evaluate(`number(bignumber("${amount}") * ${known[word] ?? word}, ${to})`));

  it.each([
    ['length', 'mm', (text: string) => nm(text) / 1e6],
    ['area', 'mm^2', mm2],
    ['volume', 'mL', mL],
    ['temperature', 'degC', celsius],
  ] as const)('%s', (family, to, ours) => {
    const words = unitWords(family);
    expect(words.length).toBeGreaterThan(1);
    for (const word of words) {
      for (const amount of amounts) {
        const theirs = family === 'temperature' ? temperature(amount, word) : there(amount, word, to);
        expect(Math.abs(ours(`${amount} ${word}`) - theirs), `${amount} ${word}`).toBeLessThanOrEqual(
          1e-12 * Math.max(1, Math.abs(theirs)),
        );
      }
    }
  });

  function temperature(amount: string, word: string): number {
    return Number(big.evaluate(`number(unit(bignumber("${amount}"), "${known[word]}"), degC)`));
  }
});
