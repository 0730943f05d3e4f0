import * as z from 'zod';
import { readPart } from './parts.ts';
import { done, type Quantity, quantityText, type Read, refused } from './quantity.ts';
import type { Family } from './units.ts';

/** A temperature in degrees Celsius, C = (F - 32) / 1.8, and its text. */
export const Temperature = z.strictObject({ celsius: z.number(), text: z.string() }).readonly();
export type Temperature = z.infer<typeof Temperature>;

/** A difference of two temperatures in kelvin: `5 F` is 2.78 K, not -15 C. */
export const TemperatureDifference = z.strictObject({ kelvin: z.number(), text: z.string() }).readonly();
export type TemperatureDifference = z.infer<typeof TemperatureDifference>;

const FAMILIES: readonly Family[] = ['temperature'];
const ABSOLUTE_ZERO = -273.15;

/** Reads `50 F`, `-5 C`. The conversion is rounded once, so that 50 F is just 10 C. */
export function readTemperature(quantity: Quantity): Read<Temperature> {
  const part = readPart('temperature', FAMILIES, quantity, true);
  if (!part.ok) return part;
  const { amount, unit } = part.value;
  const { n, d } = amount;
  const celsius = unit.word === 'C' ? n / d : ((n - 32 * d) * 5) / (9 * d);
  const text = quantityText(quantity);
  if (celsius < ABSOLUTE_ZERO) return refused(`\`${text}\` is below absolute zero, -273.15 C or -459.67 F`);
  return done({ celsius, text });
}

/** The temperature as it was written. */
export function printTemperature(temperature: Temperature): string {
  return temperature.text;
}

/** Reads `5 F` or `3 C` as a difference, such as a margin above the dew point. */
export function readTemperatureDifference(quantity: Quantity): Read<TemperatureDifference> {
  const part = readPart('temperature-difference', FAMILIES, quantity);
  if (!part.ok) return part;
  const { amount, unit } = part.value;
  const kelvin = unit.word === 'C' ? amount.n / amount.d : (amount.n * 5) / (amount.d * 9);
  return done({ kelvin, text: quantityText(quantity) });
}

/** The difference as it was written. */
export function printTemperatureDifference(difference: TemperatureDifference): string {
  return difference.text;
}

/** Degrees Fahrenheit of a temperature in degrees Celsius. */
export function fahrenheit(celsius: number): number {
  return celsius * 1.8 + 32;
}
