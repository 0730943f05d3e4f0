import * as z from 'zod';
import { mixed } from './amount.ts';
import { articled } from './kinds.ts';
import { negative, readBareAmount, readPart } from './parts.ts';
import { done, type Quantity, quantityText, type Read, refused } from './quantity.ts';
import { type Family, spelled } from './units.ts';

/** A percentage as its number, `6.5 %` is 6.5, and its text. */
export const Percent = z.strictObject({ percent: z.number(), text: z.string() }).readonly();
export type Percent = z.infer<typeof Percent>;

/** A whole number, 0 or more, and its text. */
export const Count = z.strictObject({ count: z.int().nonnegative(), text: z.string() }).readonly();
export type Count = z.infer<typeof Count>;

/** A number of things, `2 rolls` or `1/2 case`; the noun is always the singular. */
export const Counted = z
  .strictObject({ count: z.number().nonnegative(), noun: z.string(), text: z.string() })
  .readonly();
export type Counted = z.infer<typeof Counted>;

const PERCENT: readonly Family[] = ['percent'];
const COUNTED: readonly Family[] = ['counted'];

/** Reads `6.5 %`; it may be negative (a real interest) or over 100. */
export function readPercent(quantity: Quantity): Read<Percent> {
  const part = readPart('percent', PERCENT, quantity, true);
  if (!part.ok) return part;
  const { n, d } = part.value.amount;
  return done({ percent: n / d, text: quantityText(quantity) });
}

/** The percentage as it was written. */
export function printPercent(percent: Percent): string {
  return percent.text;
}

/** Reads a bare whole number: `4`. */
export function readCount(quantity: Quantity): Read<Count> {
  const amount = readBareAmount('count', quantity);
  if (!amount.ok) return amount;
  const { n, d } = amount.value;
  if (n < 0) return negative('count', quantity);
  if (n % d !== 0) {
    return refused(`${articled('count')} is expected here; \`${quantityText(quantity)}\` is none`);
  }
  return done({ count: n / d, text: quantityText(quantity) });
}

/** The number as it was written. */
export function printCount(count: Count): string {
  return count.text;
}

/** Reads `2 rolls`, `1 cartridge`, `1/2 case`; singular and plural are one word. */
export function readCounted(quantity: Quantity): Read<Counted> {
  const part = readPart('counted', COUNTED, quantity);
  if (!part.ok) return part;
  const { amount, unit } = part.value;
  return done({ count: amount.n / amount.d, noun: unit.word, text: quantityText(quantity) });
}

/** The number of things as it was written. */
export function printCounted(counted: Counted): string {
  return counted.text;
}

/** A computed number of things: 2 and `roll` are `2 rolls`. Halves, quarters and the like read as fractions. */
export function countedOf(count: number, noun: string): Counted {
  const sixteenths = count * 16;
  const amount = Number.isInteger(sixteenths) ? mixed(sixteenths, 16) : String(count);
  return { count, noun, text: `${amount} ${spelled(noun, count <= 1 && count > 0)}` };
}
