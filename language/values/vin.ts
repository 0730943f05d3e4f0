import * as z from 'zod';
import { done, type Read, refused } from './quantity.ts';

/**
 * Vehicle identification numbers after 49 CFR 565: 17 digits and capitals without I, O and Q; the ninth is a check
 * digit (565.15(c)). The model year is not derived: its letters repeat every 30 years and trailers are exempt from the
 * rule that tells the cycles apart.
 *
 * `Vin` is a text of the right form; whether its check digit agrees is for `checkVin`, since vehicles that were not
 * built for North America need not have one.
 */
export const Vin = z.string().regex(/^[0-9A-HJ-NPR-Z]{17}$/);
export type Vin = z.infer<typeof Vin>;

/** 49 CFR 565.15 table III: the value of each letter. */
const LETTERS: ReadonlyMap<string, number> = new Map(
  'A1 B2 C3 D4 E5 F6 G7 H8 J1 K2 L3 M4 N5 P7 R9 S2 T3 U4 V5 W6 X7 Y8 Z9'
    .split(' ')
    .map((pair) => [pair.charAt(0), Number(pair.charAt(1))]),
);

/** 49 CFR 565.15 table IV: the weight of each place; the check digit itself weighs 0. */
const WEIGHTS = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2] as const;
const CHECK_PLACE = 8;

/** What people write for the digits 0 and 1. */
const LOOKALIKES: Readonly<Record<string, string>> = { I: '1', O: '0', Q: '0' };

/** Reads the text inside the quotes: `1M8GDM9AXKP042788`. A fix is offered only if its check digit agrees. */
export function readVin(text: string): Read<Vin> {
  const bare = text.replace(/[\s-]/g, '').toUpperCase();
  const wrong = [...bare].find((char) => !LETTERS.has(char) && !/\d/.test(char));
  if (wrong !== undefined) return wrongLetter(bare, wrong);
  if (bare.length !== WEIGHTS.length) {
    return refused(`a VIN has ${WEIGHTS.length} digits and letters; \`${text}\` has ${bare.length}`);
  }
  if (bare !== text) return refused(`a VIN is written in capitals without blanks: \`${bare}\``, agreeing(bare));
  return done(text);
}

/** Compares the check digit of a VIN of the right form with the one that the rest of it asks for. */
export function checkVin(vin: Vin): Read<Vin> {
  const expected = vinCheckDigit(vin);
  if (expected === vin[CHECK_PLACE]) return done(vin);
  return refused(
    `the check digit of this VIN, its ninth place, should be \`${expected}\` and is \`${vin[CHECK_PLACE]}\`: ` +
      'a digit or letter may be mistyped',
  );
}

/** The VIN as it is written, without its quotes. */
export function printVin(vin: Vin): string {
  return vin;
}

/** The check digit of 17 allowed characters: the weighted sum modulo 11, with `X` for 10. What stands there is ignored. */
export function vinCheckDigit(vin: string): string {
  let sum = 0;
  for (const [i, weight] of WEIGHTS.entries()) {
    const char = vin.charAt(i);
    if (i !== CHECK_PLACE) sum += weight * (LETTERS.get(char) ?? Number(char));
  }
  return sum % 11 === 10 ? 'X' : String(sum % 11);
}

function wrongLetter(bare: string, wrong: string): Read<never> {
  const digit = LOOKALIKES[wrong];
  if (digit === undefined) return refused(`a VIN has no \`${wrong}\`: it is made of digits and capital letters`);
  const better = bare.replace(/[IOQ]/g, (letter) => LOOKALIKES[letter] ?? letter);
  return refused(`a VIN has no letter ${wrong}, so that it is not mistaken for ${digit}`, agreeing(better));
}

function agreeing(vin: string): string | undefined {
  return vin.length === WEIGHTS.length && vinCheckDigit(vin) === vin[CHECK_PLACE] ? vin : undefined;
}
