// Slots for sizes and places on the roof.
import * as z from 'zod';
import { Length } from '../../values/length.ts';
import { type Cursor, expected, peek, takeClause, takeComma } from '../cursor.ts';
import type { Slot } from '../slot.ts';
import { longSides, sides } from '../words.ts';
import { length } from './quantities.ts';

/** The outside of a flange or a mount: along the roof by across, or a diameter. */
export const Size = z.discriminatedUnion('shape', [
  z.strictObject({ shape: z.literal('rectangle'), along: Length, across: Length }).readonly(),
  z.strictObject({ shape: z.literal('round'), diameter: Length }).readonly(),
]);
export type Size = z.infer<typeof Size>;

export const size: Slot<Size> = {
  what: 'a size',
  example: '14 in by 14 in',
  schema: Size,
  offers: [...length.offers, { kind: 'words', words: ['round'] }],
  inside: ['round', 'by'],
  accepts: (part) => length.accepts(part) || (part.kind === 'clause' && part.text === 'round'),
  read(cursor: Cursor) {
    if (takeClause(cursor, 'round')) {
      const diameter = length.read(cursor);
      return diameter === undefined ? undefined : { shape: 'round', diameter };
    }
    const along = length.read(cursor);
    if (along === undefined) return undefined;
    if (!takeClause(cursor, 'by')) return expected(cursor, '`by` and a length', 'by 14 in');
    const across = length.read(cursor);
    return across === undefined ? undefined : { shape: 'rectangle', along, across };
  },
};

/** A point on the roof: along from the front, across from the curb side; a slide has only the first. */
export const RoofPoint = z.strictObject({ along: Length, across: Length.optional() }).readonly();
export type RoofPoint = z.infer<typeof RoofPoint>;

/** `18 ft, 2 ft` and more of them after `and`. */
export const points: Slot<readonly RoofPoint[]> = {
  what: 'a place: along from the front, across from the curb side',
  example: '18 ft, 2 ft',
  schema: z.array(RoofPoint).readonly(),
  offers: length.offers,
  inside: ['and'],
  accepts: length.accepts,
  read(cursor: Cursor) {
    const out: RoofPoint[] = [];
    do {
      const along = length.read(cursor);
      if (along === undefined) return undefined;
      if (!takeComma(cursor)) {
        out.push({ along });
        continue;
      }
      const across = length.read(cursor);
      if (across === undefined) return undefined;
      out.push({ along, across });
    } while (takeClause(cursor, 'and'));
    return out;
  },
};

/** Where a slide or a joint is: a side of the roof, or a wall. */
export const SideOf = z.strictObject({ side: z.enum([...sides, ...longSides]), wall: z.boolean() }).readonly();
export type SideOf = z.infer<typeof SideOf>;

export const sideOf: Slot<SideOf> = {
  what: 'a side',
  example: 'roadside',
  schema: SideOf,
  offers: [{ kind: 'words', words: ['wall', ...sides] }],
  accepts: (part) => part.kind === 'word',
  read(cursor: Cursor) {
    const first = peek(cursor);
    const wall = first?.kind === 'word' && first.text === 'wall';
    if (wall) cursor.index++;
    const part = peek(cursor);
    const side = [...sides, ...longSides].find((s) => part?.kind === 'word' && part.text === s);
    if (side === undefined) return expected(cursor, `a side (${sides.map((s) => `\`${s}\``).join(', ')})`, 'roadside');
    cursor.index++;
    return { side, wall };
  },
};

/** `6 ft to 9 ft` of a seam. */
export const Stretch = z.strictObject({ low: Length, high: Length }).readonly();
export type Stretch = z.infer<typeof Stretch>;
