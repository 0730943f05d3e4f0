// Slots for names, words of a closed list, and texts.
import * as z from 'zod';
import type { Part } from '../../grammar/lines.ts';
import { quoted } from '../../grammar/text.ts';
import { nearest } from '../../values/nearest.ts';
import { type Cursor, describe, expected, peek, report, takeClause, write } from '../cursor.ts';
import { type Offer, Ref, type Slot } from '../slot.ts';
import { canonical } from '../words.ts';

const isWord = (part: Part) => part.kind === 'word';

/** One spelling for one name: composed form, as the file systems and keyboards disagree. */
export function nameText(text: string): string {
  return /^[\w-]*$/.test(text) ? text : text.normalize('NFC');
}

function nameSlot(what: string, example: string, offers: readonly Offer[]): Slot<Ref> {
  return {
    what,
    example,
    schema: Ref,
    offers,
    accepts: isWord,
    read(cursor: Cursor) {
      const part = peek(cursor);
      if (part?.kind === 'text') return quotedName(cursor, part, what, example);
      if (part?.kind !== 'word') return expected(cursor, what, example);
      cursor.index++;
      if (/-$|--/.test(part.text))
        return report(
          cursor,
          'wrong-name',
          `A name neither ends with a hyphen nor has two in a row: \`${part.text}\`.`,
          part.at,
        );
      return { name: nameText(part.text), at: part.at };
    },
  };
}

/** `with "GreyLap"`: names stand without quotes. */
function quotedName(cursor: Cursor, part: Part & { kind: 'text' }, what: string, example: string): undefined {
  if (!/^\p{L}[\p{L}\d_-]*$/u.test(part.text)) return expected(cursor, what, example);
  cursor.index++;
  const message = `a name stands without quotes: \`${part.text}\``;
  return report(cursor, 'wrong-type', message, part.at, [write(part.text, part.at)]);
}

/** The name that a declaration or an item gets here. */
export const newName = (example: string) => nameSlot('a name', example, [{ kind: 'new-name' }]);
/** A seam or an item of this rig. */
export const seam = nameSlot('the name of a seam or an item', 'bath-vent', [{ kind: 'seams' }]);
/** A material that is declared somewhere. */
export const material = nameSlot('the name of a material', 'GreyLap', [{ kind: 'materials' }]);
export const surface = nameSlot('a surface', 'epdm', [{ kind: 'surfaces' }]);
export const rigName = nameSlot('the name of a rig', 'Heron', [{ kind: 'rigs' }]);
/** Another declaration of the same kind; a rig may also be like a model. */
export const base = nameSlot('the name of another of its kind', 'Alder28', [{ kind: 'bases' }]);
export const policyName = nameSlot('the name of a policy', 'Yard', [{ kind: 'policies' }]);
export const groupName = nameSlot('the name of a group', 'Coastal', [{ kind: 'groups' }]);
/** Whom a yard serves. */
export const groupOrRig = nameSlot('the name of a group or a rig', 'Coastal', [{ kind: 'groups' }, { kind: 'rigs' }]);
export const crewName = nameSlot('the name of a crew', 'Ladder', [{ kind: 'crews' }]);
export const ruleName = nameSlot('the name of a rule', 'look-hard-due', [{ kind: 'rules' }]);

/** One word of a closed list; a near miss is named. */
export function oneOf<const W extends string>(what: string, words: readonly W[]): Slot<W> {
  const known = new Set<string>(words);
  return {
    what,
    example: words[0] as string,
    schema: z.enum(words as unknown as [W, ...W[]]) as unknown as z.ZodType<W>,
    offers: [{ kind: 'words', words }],
    accepts: (part) => (part.kind === 'word' || part.kind === 'clause') && known.has(canonical(part.text)),
    read(cursor: Cursor) {
      const part = peek(cursor);
      if (part?.kind !== 'word' && part?.kind !== 'clause') return expected(cursor, what, words[0] as string);
      const word = canonical(part.text);
      if (!known.has(word)) {
        if (part.kind === 'clause') return expected(cursor, what, words[0] as string);
        cursor.index++;
        const close = nearest(part.text, words);
        const list = words.map((w) => `\`${w}\``).join(', ');
        return report(
          cursor,
          'unknown-word',
          close === undefined
            ? `${what} is expected here: ${list}; \`${part.text}\` is none.`
            : `\`${part.text}\` is unknown here; did you mean \`${close}\`?`,
          part.at,
          close === undefined ? [] : [write(close, part.at)],
        );
      }
      cursor.index++;
      return word as W;
    },
  };
}

/** A text in quotes, such as the example. */
export function textLike(example: string): Slot<string> {
  return {
    what: 'a text in quotes',
    example,
    schema: z.string(),
    offers: [{ kind: 'text' }],
    accepts: (part) => part.kind === 'text',
    read(cursor: Cursor) {
      const part = peek(cursor);
      if (part?.kind === 'word' || part?.kind === 'quantity') {
        cursor.index++;
        const better = quoted(describe(part));
        const message = `a text in quotes is expected here, such as \`${better}\``;
        return report(cursor, 'wrong-type', message, part.at, [write(better, part.at)]);
      }
      if (part?.kind !== 'text') return expected(cursor, 'a text in quotes', example);
      cursor.index++;
      return part.closed ? part.text : unclosed(cursor, part);
    },
  };
}

/** A brace at the end of the line was meant for the block, not for the text. */
function unclosed(cursor: Cursor, part: Part & { kind: 'text' }): undefined {
  const end = part.at[1] - (/\s*\{?\s*$/.exec(part.text)?.[0].length ?? 0);
  const message = 'this text is not closed: a `"` is missing before the end of the line';
  return report(cursor, 'unclosed-text', message, part.at, [{ label: 'Close the text', at: [end, end], text: '"' }]);
}

/** A path or a pattern of paths, relative to the file: one spelling on every system. */
export function pathLike(example: string): Slot<string> {
  const slot = textLike(example);
  return {
    ...slot,
    read(cursor: Cursor) {
      const part = peek(cursor);
      const path = slot.read(cursor);
      if (path === undefined || !path.includes('\\') || part === undefined) return path;
      const better = quoted(path.replaceAll('\\', '/'));
      const message = `a path has forward slashes on every system: \`${better}\``;
      return report(cursor, 'wrong-path', message, part.at, [write(better, part.at)]);
    },
  };
}

export const text = textLike('"a few words"');

const personText = textLike('"R. Adeyemi"');
/** A text, or a bare word where that reads well (`struck … by branch`). */
export const person: Slot<string> = {
  ...personText,
  accepts: (part) => part.kind === 'text' || part.kind === 'word',
  read(cursor: Cursor) {
    const part = peek(cursor);
    if (part?.kind !== 'word') return personText.read(cursor);
    cursor.index++;
    return part.text;
  },
};

/** Nothing follows the clause word: it is said or not. */
export const flag: Slot<true> = {
  what: 'nothing more',
  example: '',
  schema: z.literal(true),
  offers: [],
  accepts: () => true,
  read: () => true,
};

/** `epdm and abs`: the two surfaces that meet in a seam. */
export const between: Slot<readonly [Ref, Ref]> = {
  what: 'two surfaces with `and` between them',
  example: 'epdm and abs',
  schema: z.tuple([Ref, Ref]).readonly(),
  offers: surface.offers,
  inside: ['and'],
  accepts: isWord,
  read(cursor: Cursor) {
    const first = surface.read(cursor);
    if (first === undefined) return undefined;
    if (!takeClause(cursor, 'and')) return expected(cursor, '`and` and a surface', 'and abs');
    const second = surface.read(cursor);
    return second === undefined ? undefined : [first, second];
  },
};
