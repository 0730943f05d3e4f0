import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { certain } from '../../language/values/quantity.ts';
import { checkVin, printVin, readVin, Vin, vinCheckDigit } from '../../language/values/vin.ts';
import { refusal } from './reading.ts';

const ALLOWED = '0123456789ABCDEFGHJKLMNPRSTUVWXYZ';
const vins = fc
  .array(fc.constantFrom(...ALLOWED), { minLength: 17, maxLength: 17 })
  .map((chars) => chars.join(''))
  .map((text) => `${text.slice(0, 8)}${vinCheckDigit(text)}${text.slice(9)}`);

describe('a VIN', () => {
  it('reads what it prints, and its check digit agrees', () => {
    fc.assert(
      fc.property(vins, (vin) => {
        expect(certain(readVin(printVin(vin)))).toBe(vin);
        expect(certain(checkVin(vin))).toBe(vin);
        expect(Vin.parse(vin)).toBe(vin);
      }),
    );
  });

  it('with one digit mistyped is found out, wherever the weight is not 0', () => {
    fc.assert(
      fc.property(
        vins,
        fc.constantFrom(9, 10, 11, 12, 13, 14, 15, 16),
        fc.integer({ min: 1, max: 9 }),
        (vin, at, off) => {
          const old = Number(vin.charAt(at));
          fc.pre(Number.isInteger(old));
          const wrong = `${vin.slice(0, at)}${(old + off) % 10}${vin.slice(at + 1)}`;
          expect(checkVin(wrong).ok).toBe(false);
        },
      ),
    );
  });

  it.each([
    ['IG4AH59H45G118341', 'a VIN has no letter I, so that it is not mistaken for 1', '1G4AH59H45G118341'],
    ['1M8GDM9AXKPO42788', 'a VIN has no letter O, so that it is not mistaken for 0', '1M8GDM9AXKP042788'],
    ['1M8GDM9AXKPQ42788', 'a VIN has no letter Q, so that it is not mistaken for 0', '1M8GDM9AXKP042788'],
    ['IG4AH59H45G118331', 'a VIN has no letter I, so that it is not mistaken for 1', undefined],
    ['1m8gdm9axkp042788', 'a VIN is written in capitals without blanks: `1M8GDM9AXKP042788`', '1M8GDM9AXKP042788'],
    ['1G4AH', 'a VIN has 17 digits and letters; `1G4AH` has 5', undefined],
    ['', 'a VIN has 17 digits and letters; `` has 0', undefined],
    ['1G4AH59H45G1183_1', 'a VIN has no `_`: it is made of digits and capital letters', undefined],
  ])('refuses %s', (text, message, fix) => {
    expect(refusal(readVin(text))).toEqual([message, fix]);
    expect(Vin.safeParse(text).success).toBe(false);
    if (fix !== undefined) expect(checkVin(certain(readVin(fix))).ok).toBe(true);
  });

  it('names the check digit that it should have', () => {
    expect(refusal(checkVin('1G4AH59H55G118341'))[0]).toBe(
      'the check digit of this VIN, its ninth place, should be `4` and is `5`: a digit or letter may be mistyped',
    );
  });
});
