import * as z from 'zod';
import { exactDouble } from './exact.ts';
import { readPart } from './parts.ts';
import { done, type Quantity, quantityText, type Read } from './quantity.ts';
import type { Family } from './units.ts';

/** A volume in millilitres, the nearest double to the exact value, and its text. */
export const Volume = z.strictObject({ mL: z.number().nonnegative(), text: z.string() }).readonly();
export type Volume = z.infer<typeof Volume>;

/** Millilitres of a unit, exact, US customary: 1 gal = 231 cubic inches = 128 fl oz (NIST Handbook 44, appendix C). */
const ML: Readonly<Record<string, string>> = {
  gal: '3785.411784',
  qt: '946.352946',
  pt: '473.176473',
  'fl-oz': '29.5735295625',
  L: '1000',
  mL: '1',
};
const FAMILIES: readonly Family[] = ['volume'];

/** Reads `10.3 fl-oz`, `300 mL`, `1 qt`, `1/2 gal`, `1 L`; ounces, pints, quarts and gallons are those of the US. */
export function readVolume(quantity: Quantity): Read<Volume> {
  const part = readPart('volume', FAMILIES, quantity);
  if (!part.ok) return part;
  const { amount, unit } = part.value;
  return done({ mL: exactDouble(amount, ML[unit.word]!), text: quantityText(quantity) });
}

/** The volume as it was written. */
export function printVolume(volume: Volume): string {
  return volume.text;
}

/** Exact millilitres of one unit of volume, such as `gal`, as a decimal. */
export function millilitresPer(word: string): string {
  return ML[word]!;
}
