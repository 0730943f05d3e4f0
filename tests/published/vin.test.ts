import { describe, expect, it } from 'vitest';
import { checkVin, readVin, vinCheckDigit } from '../../language/values/vin.ts';

/** 49 CFR 565.15(c); the first is the sample of the regulation's table VI, seen quoted, with the sum 411. */
describe('VIN check digits (49 CFR 565.15)', () => {
  it.each(['1G4AH59H45G118341', '1M8GDM9AXKP042788', '11111111111111111'])('%s is valid', (vin) => {
    expect(readVin(vin).ok).toBe(true);
    expect(checkVin(vin)).toEqual({ ok: true, value: vin });
  });

  it('1G4AH59H45G118331 is not: its ninth place should be 1', () => {
    expect(readVin('1G4AH59H45G118331').ok).toBe(true);
    expect(checkVin('1G4AH59H45G118331')).toMatchObject({
      ok: false,
      message: expect.stringContaining('should be `1`'),
    });
  });

  it('a remainder of 10 is X; the sample sum 411 leaves 4', () => {
    expect(vinCheckDigit('1M8GDM9A_KP042788')).toBe('X');
    expect(vinCheckDigit('1G4AH59H_5G118341')).toBe(String(411 % 11));
  });
});
