// Slots made of other slots: lists, ranges, three points, pairs.
import { z } from 'zod';
import { type Cursor, expected, peek, takeClause, takeComma } from '../cursor.ts';
import type { Slot } from '../slot.ts';

/** Values with commas between them. */
export function list<T>(slot: Slot<T>): Slot<readonly T[]> {
  return {
    what: slot.what,
    example: slot.example,
    schema: z.array(slot.schema).readonly(),
    offers: slot.offers,
    accepts: slot.accepts,
    read(cursor: Cursor) {
      const out: T[] = [];
      let whole = true;
      do {
        const value = slot.read(cursor);
        if (value === undefined) whole = false;
        else out.push(value);
      } while (takeComma(cursor));
      return whole || out.length > 0 ? (whole ? out : undefined) : undefined;
    },
  };
}

export interface Range<T> {
  readonly low: T;
  readonly high: T;
}

/** `A to B`; with `oneIsBoth`, `A` alone stands for `A to A`. The unit of the second serves the first when that has none: `18 to 35 years`. */
export function range<T>(slot: Slot<T>, oneIsBoth = false): Slot<Range<T>> {
  return {
    what: oneIsBoth ? slot.what : `${slot.what}, \`to\`, and another`,
    example: `${slot.example} to …`,
    schema: z.strictObject({ low: slot.schema, high: slot.schema }).readonly(),
    offers: slot.offers,
    accepts: slot.accepts,
    read(cursor: Cursor) {
      const low = readWithUnitOfNext(slot, cursor);
      if (low === undefined) return undefined;
      if (!takeClause(cursor, 'to'))
        return oneIsBoth ? { low, high: low } : expected(cursor, `\`to\` and ${slot.what}`, `to ${slot.example}`);
      const high = slot.read(cursor);
      return high === undefined ? undefined : { low, high };
    },
  };
}

function readWithUnitOfNext<T>(slot: Slot<T>, cursor: Cursor): T | undefined {
  const [first, to, second] = [peek(cursor), peek(cursor, 1), peek(cursor, 2)];
  const bare =
    first?.kind === 'quantity' &&
    first.terms.length === 1 &&
    first.terms[0]?.unit === undefined &&
    first.per === undefined;
  const unit = second?.kind === 'quantity' ? second.terms[0]?.unit : undefined;
  if (!bare || to?.kind !== 'clause' || to.text !== 'to' || unit === undefined) return slot.read(cursor);
  const lent = { ...first, terms: [{ amount: first.terms[0]?.amount as string, unit }] };
  const inner: Cursor = { line: { ...cursor.line, parts: [lent] }, problems: cursor.problems, index: 0 };
  const value = slot.read(inner);
  cursor.index++;
  return value;
}

export interface ThreePoints<T> {
  readonly least: T;
  readonly likely: T;
  readonly most: T;
}

/** `A, B, C`: least, likely, most; one value alone stands for all three. */
export function threePoints<T>(slot: Slot<T>): Slot<ThreePoints<T>> {
  return {
    what: `${slot.what} (or three: least, likely, most)`,
    example: slot.example,
    schema: z.strictObject({ least: slot.schema, likely: slot.schema, most: slot.schema }).readonly(),
    offers: slot.offers,
    accepts: slot.accepts,
    read(cursor: Cursor) {
      const least = slot.read(cursor);
      if (least === undefined) return undefined;
      if (!takeComma(cursor)) return { least, likely: least, most: least };
      const likely = slot.read(cursor);
      if (likely === undefined) return undefined;
      if (!takeComma(cursor)) return expected(cursor, 'a comma and the most', `, ${slot.example}`);
      const most = slot.read(cursor);
      return most === undefined ? undefined : { least, likely, most };
    },
  };
}

/** `A by B`. */
export function by<T>(slot: Slot<T>): Slot<readonly [T, T]> {
  return {
    what: `${slot.what}, \`by\`, and another`,
    example: `${slot.example} by ${slot.example}`,
    schema: z.tuple([slot.schema, slot.schema]).readonly(),
    offers: slot.offers,
    accepts: slot.accepts,
    read(cursor: Cursor) {
      const first = slot.read(cursor);
      if (first === undefined) return undefined;
      if (!takeClause(cursor, 'by')) return expected(cursor, `\`by\` and ${slot.what}`, `by ${slot.example}`);
      const second = slot.read(cursor);
      return second === undefined ? undefined : [first, second];
    },
  };
}

/** Either of two kinds of value; the first part decides. */
export function either<A, B>(first: Slot<A>, second: Slot<B>): Slot<A | B> {
  return {
    what: `${first.what} or ${second.what}`,
    example: first.example,
    schema: z.union([first.schema, second.schema]) as z.ZodType<A | B>,
    offers: [...first.offers, ...second.offers],
    accepts: (part) => first.accepts(part) || second.accepts(part),
    read(cursor: Cursor) {
      const part = peek(cursor);
      return part && !first.accepts(part) && second.accepts(part) ? second.read(cursor) : first.read(cursor);
    },
  };
}

/** A value with a fixed clause word before it: `at most 4`, `every 6 months`. */
export function after<T>(words: readonly string[], slot: Slot<T>): Slot<T> {
  const said = words.join(' ');
  return {
    ...slot,
    what: `\`${said}\` and ${slot.what}`,
    example: `${said} ${slot.example}`,
    offers: [{ kind: 'words', words: [said] }],
    accepts: (part) => part.kind === 'clause' && part.text === words[0],
    read(cursor: Cursor) {
      for (const word of words)
        if (!takeClause(cursor, word))
          return expected(cursor, `\`${said}\` and ${slot.what}`, `${said} ${slot.example}`);
      return slot.read(cursor);
    },
  };
}
