// Slots made of other slots: lists, ranges, three points, pairs.
import * as z from 'zod';
import { type Cursor, describe, expected, peek, report, takeClause, takeComma, write } from '../cursor.ts';
import type { Slot } from '../slot.ts';

const insideOf = (slot: Slot<unknown>): readonly string[] => slot.inside ?? [];

/** Values with commas between them. */
export function list<T>(slot: Slot<T>): Slot<readonly T[]> {
  return {
    what: slot.what,
    example: slot.example,
    schema: z.array(slot.schema).readonly(),
    offers: slot.offers,
    inside: insideOf(slot),
    accepts: slot.accepts,
    read(cursor: Cursor) {
      const out: T[] = [];
      let whole = true;
      do {
        const value = slot.read(cursor);
        if (value === undefined) whole = false;
        else out.push(value);
      } while (takeComma(cursor));
      return whole ? out : undefined;
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
    example: oneIsBoth ? slot.example : `${slot.example} to ${slot.example}`,
    schema: z.strictObject({ low: slot.schema, high: slot.schema }).readonly(),
    offers: slot.offers,
    inside: ['to', ...insideOf(slot)],
    accepts: slot.accepts,
    read(cursor: Cursor) {
      if (withoutTo(cursor)) return undefined;
      const low = readWithUnitOfNext(slot, cursor);
      if (low === undefined) return undefined;
      if (!takeClause(cursor, 'to'))
        return oneIsBoth ? { low, high: low } : expected(cursor, `\`to\` and ${slot.what}`, `to ${slot.example}`);
      const high = slot.read(cursor);
      return high === undefined ? undefined : { low, high };
    },
  };
}

/** `50-95 F`, `0 ft 14 ft`: a range whose `to` is missing. Reports it and takes it. */
export function withoutTo(cursor: Cursor): boolean {
  const [first, second] = [peek(cursor), peek(cursor, 1)];
  let meant: string | undefined;
  let at = first?.at;
  if (first?.kind === 'monthday' && second?.kind === 'word') {
    const ends = /^(\d+)-(\d+)$/.exec(first.text);
    if (ends) meant = `${ends[1]} ${second.text} to ${ends[2]} ${second.text}`;
    at = [first.at[0], second.at[1]];
  } else if (first?.kind === 'quantity' && first.terms.length === 2 && first.per === undefined) {
    const [a, b] = first.terms;
    if (a?.unit !== undefined && a.unit === b?.unit) meant = `${a.amount} ${a.unit} to ${b.amount} ${b.unit}`;
  }
  if (meant === undefined || at === undefined) return false;
  cursor.index += first?.kind === 'monthday' ? 2 : 1;
  report(cursor, 'missing-value', `a range is written with \`to\`: \`${meant}\``, at, [write(meant, at)]);
  return true;
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
    inside: insideOf(slot),
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
    inside: ['by', ...insideOf(slot)],
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
    inside: [...insideOf(first), ...insideOf(second)],
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
    inside: [...words, ...insideOf(slot)],
    accepts: (part) => part.kind === 'clause' && part.text === words[0],
    read(cursor: Cursor) {
      const part = peek(cursor);
      if (part && slot.accepts(part)) {
        const value = slot.read(cursor);
        if (value === undefined) return undefined;
        const message = `\`${said}\` is missing before \`${describe(part)}\`: write \`${said} ${describe(part)}\``;
        return report(cursor, 'missing-value', message, part.at, [
          { label: `Write \`${said}\` before it`, at: [part.at[0], part.at[0]], text: `${said} ` },
        ]);
      }
      for (const word of words)
        if (!takeClause(cursor, word))
          return expected(cursor, `\`${said}\` and ${slot.what}`, `${said} ${slot.example}`);
      return slot.read(cursor);
    },
  };
}
