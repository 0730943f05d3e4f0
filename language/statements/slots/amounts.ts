// Slots for amounts of material: `2 rolls of 50 ft`, `18 ft`, `1/2 qt`, `2 cartridges`.
import * as z from 'zod';
import { Day } from '../../values/day.ts';
import { kindOf } from '../../values/kinds.ts';
import { Length } from '../../values/length.ts';
import { Counted, readCounted } from '../../values/numbers.ts';
import { Volume } from '../../values/volume.ts';
import { type Cursor, expected, peek, refuse, takeClause, takeComma } from '../cursor.ts';
import { Ref, type Slot } from '../slot.ts';
import { date } from './dates.ts';
import { length, volume } from './quantities.ts';
import { material } from './words.ts';

/** A number of things, each `of` a size if it is written; or a length (one piece); or a volume. */
export const Amount = z.discriminatedUnion('kind', [
  z
    .strictObject({
      kind: z.literal('counted'),
      counted: Counted,
      length: Length.optional(),
      volume: Volume.optional(),
    })
    .readonly(),
  z.strictObject({ kind: z.literal('length'), length: Length }).readonly(),
  z.strictObject({ kind: z.literal('volume'), volume: Volume }).readonly(),
]);
export type Amount = z.infer<typeof Amount>;

export const amount: Slot<Amount> = {
  what: 'an amount',
  example: '2 rolls of 50 ft',
  schema: Amount,
  offers: [{ kind: 'units', units: ['rolls', 'cartridges', 'ft', 'qt'] }],
  inside: ['of'],
  accepts: (part) => part.kind === 'quantity',
  read(cursor: Cursor) {
    const part = peek(cursor);
    if (part?.kind !== 'quantity') return expected(cursor, 'an amount', '2 rolls of 50 ft');
    const kind = kindOf(part);
    if (kind === 'length') {
      const value = length.read(cursor);
      return value && { kind: 'length', length: value };
    }
    if (kind === 'volume') {
      const value = volume.read(cursor);
      return value && { kind: 'volume', volume: value };
    }
    cursor.index++;
    const got = readCounted(part);
    if (!got.ok) return refuse(cursor, 'wrong-value', got, part.at);
    if (!takeClause(cursor, 'of')) return { kind: 'counted', counted: got.value };
    const of = peek(cursor);
    if (of?.kind === 'quantity' && kindOf(of) === 'volume') {
      const value = volume.read(cursor);
      return value && { kind: 'counted', counted: got.value, volume: value };
    }
    const value = length.read(cursor);
    return value && { kind: 'counted', counted: got.value, length: value };
  },
};

/** A material that a record used, with the amounts that belong to it. `unknown` stands for a material that nobody knows. */
export const Used = z
  .strictObject({ name: z.string(), at: Ref.unwrap().shape.at, used: z.array(Amount).readonly().optional() })
  .readonly();
export type Used = z.infer<typeof Used>;

/** The name under which an unknown material is kept; no material can be called so, since the word is reserved. */
export const unknownMaterial = 'unknown';

/** `with A used 1/2 qt, B used 2 rolls`; `with unknown`. A second `with` goes on. */
export const materials: Slot<readonly Used[]> = {
  what: 'the name of a material',
  example: 'GreyLap used 2 cartridges',
  schema: z.array(Used).readonly(),
  offers: material.offers,
  inside: ['unknown', 'used', 'of', 'and', 'with'],
  accepts: (part) => material.accepts(part) || (part.kind === 'clause' && part.text === 'unknown'),
  read(cursor: Cursor) {
    const out: Used[] = [];
    do {
      const part = peek(cursor);
      let ref: Ref | undefined;
      if (part?.kind === 'clause' && part.text === 'unknown') {
        cursor.index++;
        ref = { name: unknownMaterial, at: part.at };
      } else ref = material.read(cursor);
      if (ref === undefined) return undefined;
      const used: Amount[] = [];
      if (takeClause(cursor, 'used')) {
        do {
          const value = amount.read(cursor);
          if (value === undefined) return undefined;
          used.push(value);
        } while (takeClause(cursor, 'and'));
      }
      out.push(used.length > 0 ? { ...ref, used } : ref);
    } while (takeComma(cursor) || takeClause(cursor, 'with'));
    return out;
  },
};

/** A shelf: `EdgeTape4 18 ft, GreyLap 5 cartridges`, each with its best-before date if it is written. */
export const Stock = z
  .strictObject({ name: z.string(), at: Ref.unwrap().shape.at, amount: Amount, bestBefore: Day.optional() })
  .readonly();
export type Stock = z.infer<typeof Stock>;

export const stock: Slot<readonly Stock[]> = {
  what: 'a material and an amount',
  example: 'GreyLap 5 cartridges',
  schema: z.array(Stock).readonly(),
  offers: material.offers,
  inside: ['of', 'best-before'],
  accepts: material.accepts,
  read(cursor: Cursor) {
    const out: Stock[] = [];
    do {
      const ref = material.read(cursor);
      if (ref === undefined) return undefined;
      const value = amount.read(cursor);
      if (value === undefined) return undefined;
      let bestBefore: Day | undefined;
      if (takeClause(cursor, 'best-before')) {
        bestBefore = date.read(cursor);
        if (bestBefore === undefined) return undefined;
      }
      out.push({ ...ref, amount: value, ...(bestBefore ? { bestBefore } : {}) });
    } while (takeComma(cursor));
    return out;
  },
};
