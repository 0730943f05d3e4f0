// Slots for what a record is about: seams and items, sets of them, stretches of a seam, findings.
import * as z from 'zod';
import { nearest } from '../../values/nearest.ts';
import { Period } from '../../values/period.ts';
import { type Cursor, expected, peek, report, takeClause, takeComma, write } from '../cursor.ts';
import { type Slot, Span } from '../slot.ts';
import { type Condition, conditions, type Defect, defects } from '../words.ts';
import { range } from './lists.ts';
import { length, period } from './quantities.ts';
import { Stretch } from './shapes.ts';
import { oneOf, seam } from './words.ts';

/** A seam, an item or a set of them (`all`, `rest`, `edges`), and the stretch of it that is meant. */
export const Target = z.strictObject({ name: z.string(), at: Span, stretch: Stretch.optional() }).readonly();
export type Target = z.infer<typeof Target>;

const stretch = range(length);

const isSet = (text: string) => text === 'all' || text === 'rest';

function target(cursor: Cursor): Target | undefined {
  const part = peek(cursor);
  let name: { name: string; at: readonly [number, number] } | undefined;
  if (part?.kind === 'clause' && isSet(part.text)) {
    cursor.index++;
    name = { name: part.text, at: part.at };
  } else name = seam.read(cursor);
  if (name === undefined) return undefined;
  const next = peek(cursor, 1);
  const measured = peek(cursor)?.kind === 'clause' && next?.kind !== 'text';
  if (!measured || !takeClause(cursor, 'from')) return name;
  const read = stretch.read(cursor);
  return read && { ...name, stretch: read };
}

/** Seams and items with commas between them, each with its own stretch. */
export const targets: Slot<readonly Target[]> = {
  what: 'the name of a seam or an item',
  example: 'bath-vent',
  schema: z.array(Target).readonly(),
  offers: [{ kind: 'seams' }],
  inside: ['all', 'rest', 'from', 'to'],
  accepts: (part) => part.kind === 'word' || (part.kind === 'clause' && isSet(part.text)),
  read(cursor: Cursor) {
    const out: Target[] = [];
    do {
      const one = target(cursor);
      if (one === undefined) return undefined;
      out.push(one);
    } while (takeComma(cursor));
    return out;
  },
};

/** What was seen at a place: a condition, a defect, or that nobody looked; wet beside any of them. */
export const Seen = z
  .strictObject({
    condition: z.enum(conditions).optional(),
    defects: z.array(z.enum(Object.keys(defects) as [Defect, ...Defect[]])).readonly(),
    notSeen: z.boolean(),
    wet: z.boolean(),
  })
  .readonly();
export type Seen = z.infer<typeof Seen>;

const stateWords = [...conditions, ...Object.keys(defects), 'wet', 'not-seen'];

export const seen: Slot<Seen> = {
  what: 'a condition',
  example: 'sound',
  schema: Seen,
  offers: [{ kind: 'words', words: stateWords }],
  accepts: (part) => part.kind === 'word',
  read(cursor: Cursor) {
    let condition: Condition | undefined;
    const named: Defect[] = [];
    let [notSeen, wet, any] = [false, false, false];
    for (let part = peek(cursor); part?.kind === 'word'; part = peek(cursor)) {
      cursor.index++;
      const word = part.text;
      any = true;
      if ((conditions as readonly string[]).includes(word)) {
        if (condition !== undefined)
          return report(
            cursor,
            'two-conditions',
            `One place has one condition: \`${condition}\` or \`${word}\`, the worse of the two.`,
            part.at,
          );
        condition = word as Condition;
      } else if (Object.hasOwn(defects, word)) named.push(word as Defect);
      else if (word === 'wet') wet = true;
      else if (word === 'not-seen') notSeen = true;
      else {
        const close = nearest(word, stateWords);
        return report(
          cursor,
          'unknown-word',
          close === undefined
            ? `A condition is expected here (${conditions.map((c) => `\`${c}\``).join(', ')}, \`not-seen\`, \`wet\`); \`${word}\` is none.`
            : `\`${word}\` is no condition; did you mean \`${close}\`?`,
          part.at,
          close === undefined ? [] : [write(close, part.at)],
        );
      }
      if (peek(cursor)?.kind === 'comma' && peek(cursor, 1)?.kind === 'word') cursor.index++;
    }
    if (!any) return expected(cursor, 'a condition', 'sound');
    return { ...(condition === undefined ? {} : { condition }), defects: named, notSeen, wet };
  },
};

/** `hairline within 6 months, cracked within 30 days`. */
export const FollowUp = z.strictObject({ word: z.string(), at: Span, within: Period }).readonly();
export type FollowUp = z.infer<typeof FollowUp>;

/** A list of `WORD within PERIOD`. */
export function within(words: readonly string[]): Slot<readonly FollowUp[]> {
  const word = oneOf('a word', words);
  return {
    what: `one of ${words.join(', ')}, \`within\` and a period`,
    example: `${words[0]} within 6 months`,
    schema: z.array(FollowUp).readonly(),
    offers: word.offers,
    inside: ['within'],
    accepts: word.accepts,
    read(cursor: Cursor) {
      const out: FollowUp[] = [];
      do {
        const at = peek(cursor)?.at;
        const name = word.read(cursor);
        if (name === undefined || at === undefined) return undefined;
        if (!takeClause(cursor, 'within')) return expected(cursor, '`within` and a period', 'within 30 days');
        const span = period.read(cursor);
        if (span === undefined) return undefined;
        out.push({ word: name, at, within: span });
      } while (takeComma(cursor));
      return out;
    },
  };
}
