import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  areaText,
  dateText,
  feetText,
  hoursText,
  lengthText,
  moneyText,
  percentText,
  temperatureText,
  volumeText,
} from '../../language/values/display.ts';
import { readLength } from '../../language/values/length.ts';
import { readMoney } from '../../language/values/money.ts';
import { value } from './reading.ts';

const IN = 25_400_000;

describe('a length for people', () => {
  it.each([
    [1238 * IN, '103 ft 2 in'],
    [0, '0 in'],
    [12 * IN, '1 ft'],
    [14.25 * IN, '1 ft 2 1/4 in'],
    [(1 + 3 / 16) * IN, '1 3/16 in'],
    [(26 + 1 / 16) * IN, '2 ft 2 1/16 in'], // a whole number of sixteenths stays
    [(26 + 1 / 10) * IN, '2 ft 2 in'],
    [(26 + 1 / 7) * IN, '2 ft 2 1/4 in'],
    [11.99 * IN, '1 ft'],
    [-14 * IN, '-1 ft 2 in'],
  ])('%d nm in US measures', (nm, text) => {
    expect(lengthText(Math.round(nm), 'us')).toBe(text);
  });

  it.each([
    [31_446_000_000, '31.45 m'],
    [31_445_000_000, '31.45 m'], // a half goes up
    [85_000_000, '85 mm'],
    [6_350_000, '6.4 mm'],
    [6_000_000, '6 mm'],
    [999_400_000, '999 mm'],
    [999_600_000, '1.00 m'],
    [9_960_000, '10 mm'],
  ])('%d nm in metric measures', (nm, text) => {
    expect(lengthText(nm, 'metric')).toBe(text);
  });

  it('is never off by more than half of what it rounds to', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2 * 10 ** 10 }), (nm) => {
        const us = value(readLength, lengthText(nm, 'us')).nm;
        expect(Math.abs(us - nm)).toBeLessThanOrEqual(nm < 12 * IN ? IN / 32 : IN / 8);
        expect(Math.abs(value(readLength, lengthText(nm, 'metric')).nm - nm)).toBeLessThanOrEqual(5_000_000);
      }),
    );
  });
});

it('other figures', () => {
  expect(feetText(1238 * IN)).toBe('103.2 ft');
  expect(areaText(21_246_000, 'us')).toBe('228.7 sq-ft');
  expect(areaText(21_245_000, 'metric')).toBe('21.25 sq-m');
  expect(volumeText(304.60735449375, 'us')).toBe('10.3 fl-oz');
  expect(volumeText(3785.411784 * 1.25, 'us')).toBe('1.25 gal');
  expect(volumeText(304.6, 'metric')).toBe('305 mL');
  expect(volumeText(1250, 'metric')).toBe('1.25 L');
  expect(temperatureText(10, 'us')).toBe('50 F');
  expect(temperatureText(-0.3, 'metric')).toBe('0 C');
  expect(hoursText(476.4)).toBe('7.94 h');
  expect(percentText(12.55)).toBe('12.6 %');
  expect(percentText(3)).toBe('3 %');
  expect(moneyText(value(readMoney, '116 USD'))).toBe('116.00 USD');
  expect(dateText('2026-04-18')).toBe('2026-04-18');
});
