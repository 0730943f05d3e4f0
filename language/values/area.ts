import * as z from 'zod';
import { exactDouble } from './exact.ts';
import { readPart } from './parts.ts';
import { done, type Quantity, quantityText, type Read } from './quantity.ts';
import type { Family } from './units.ts';

/** An area in square millimetres, the nearest double to the exact value, and its text. */
export const Area = z.strictObject({ mm2: z.number().nonnegative(), text: z.string() }).readonly();
export type Area = z.infer<typeof Area>;

/** Square millimetres of a unit, exact: 1 sq ft = 0.09290304 m2 (NIST SP 811, appendix B). */
const MM2: Readonly<Record<string, string>> = { 'sq-in': '645.16', 'sq-ft': '92903.04', 'sq-m': '1000000' };
const FAMILIES: readonly Family[] = ['area'];

/** Reads `120 sq-ft`, `9 sq-m`, `30 sq-in`. */
export function readArea(quantity: Quantity): Read<Area> {
  const part = readPart('area', FAMILIES, quantity);
  if (!part.ok) return part;
  const { amount, unit } = part.value;
  return done({ mm2: exactDouble(amount, MM2[unit.word]!), text: quantityText(quantity) });
}

/** The area as it was written. */
export function printArea(area: Area): string {
  return area.text;
}

/** Exact square millimetres of one unit of area, such as `sq-ft`, as a decimal. */
export function squareMillimetresPer(word: string): string {
  return MM2[word]!;
}
