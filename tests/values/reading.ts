import fc from 'fast-check';
import { expect } from 'vitest';
import type { ZodType } from 'zod';
import { certain, type Quantity, quantityFrom, type Read } from '../../language/values/quantity.ts';

/** The quantity of a text that is one. */
export function quantity(text: string): Quantity {
  const found = quantityFrom(text);
  if (found === undefined) throw new Error(`\`${text}\` is no quantity`);
  return found;
}

/** The value that a text reads as; fails the test if it is refused. */
export function value<T>(read: (quantity: Quantity) => Read<T>, text: string): T {
  return certain(read(quantity(text)));
}

/** Message and fix of a text that is refused; fails the test if it is not. */
export function refusal(read: Read<unknown>): readonly [message: string, fix: string | undefined] {
  if (read.ok) throw new Error(`was read as ${JSON.stringify(read.value)}`);
  return [read.message, read.fix];
}

/** A value printed and read again is the same, is JSON, and fits its schema. */
export function expectRoundTrip<T>(
  texts: fc.Arbitrary<string>,
  read: (quantity: Quantity) => Read<T>,
  print: (value: T) => string,
  schema: ZodType<T>,
): void {
  fc.assert(
    fc.property(texts, (text) => {
      const first = value(read, text);
      expect(value(read, print(first))).toEqual(first);
      expect(schema.parse(JSON.parse(JSON.stringify(first)))).toEqual(first);
    }),
    { numRuns: 300 },
  );
}

/** Numbers as people write them, not negative: whole, decimal, fraction, mixed fraction (of 64ths). */
export const amounts: fc.Arbitrary<string> = fc.oneof(
  fc.nat(999).map(String),
  fc.tuple(fc.nat(999), fc.integer({ min: 0, max: 99_999 })).map(([a, b]) => `${a}.${String(b).padStart(5, '0')}`),
  fc.integer({ min: 0, max: 99 }).map((a) => `.${a}`),
  fc.constantFrom(2, 4, 8, 16, 32, 64).chain((d) => fc.integer({ min: 1, max: d - 1 }).map((n) => `${n}/${d}`)),
  fc
    .tuple(fc.integer({ min: 1, max: 99 }), fc.constantFrom(2, 4, 8, 16, 32, 64))
    .chain(([whole, d]) => fc.integer({ min: 1, max: d - 1 }).map((n) => `${whole} ${n}/${d}`)),
);
