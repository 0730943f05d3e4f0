// Walking the parts of one line from left to right, and saying what was expected where.
import type { Line, Part } from '../grammar/lines.ts';
import type { Fix, Problem, Span } from '../grammar/problem.ts';

export interface Cursor {
  readonly line: Line;
  readonly problems: Problem[];
  index: number;
}

export const cursorAt = (line: Line, problems: Problem[]): Cursor => ({ line, problems, index: 0 });

/** The part that comes next, or the one `ahead` places further. */
export const peek = (cursor: Cursor, ahead = 0): Part | undefined => cursor.line.parts[cursor.index + ahead];

/** Takes the next part when it is that clause word. */
export function takeClause(cursor: Cursor, word: string): boolean {
  const part = peek(cursor);
  if (part?.kind !== 'clause' || part.text !== word) return false;
  cursor.index++;
  return true;
}

/** Takes the next part when it is a comma. */
export function takeComma(cursor: Cursor): boolean {
  if (peek(cursor)?.kind !== 'comma') return false;
  cursor.index++;
  return true;
}

/** Where something is missing: the last part that was taken, or the statement word. */
export function lastTaken(cursor: Cursor): Span {
  return cursor.line.parts[cursor.index - 1]?.at ?? cursor.line.headAt;
}

export function report(cursor: Cursor, rule: string, message: string, at: Span, fixes?: readonly Fix[]): undefined {
  const said = sentence(message);
  cursor.problems.push(fixes?.length ? { rule, message: said, at, fixes } : { rule, message: said, at });
}

/** What stands at a place, and the text that should: the label says it. */
export const write = (text: string, at: Span): Fix => ({ label: `Write \`${text}\``, at, text });

/** Reports what a value's own reader said about it, with the text that should stand there if that is certain. */
export function refuse(cursor: Cursor, rule: string, got: Refused, at: Span): undefined {
  return report(cursor, rule, got.message, at, got.fix === undefined ? [] : [write(got.fix, at)]);
}
type Refused = { readonly message: string; readonly fix?: string };

/** Messages are put together from pieces: in the end each is a sentence. */
function sentence(message: string): string {
  const begun = /^[a-z]/.test(message) ? message[0]?.toUpperCase() + message.slice(1) : message;
  return /[.?!]$/.test(begun) ? begun : `${begun}.`;
}

const articleFor: Record<Exclude<Part['kind'], 'quantity' | 'mistake'>, string> = {
  word: 'a name',
  clause: 'a word of the language',
  date: 'a date',
  time: 'a time of day',
  monthday: 'a day of the year',
  comma: 'a comma',
  text: 'a text',
};

/** How a part reads in a message. */
export function describe(part: Part): string {
  switch (part.kind) {
    case 'quantity':
      return [
        ...part.terms.map((t) => (t.unit === undefined ? t.amount : `${t.amount} ${t.unit}`)),
        ...(part.per === undefined ? [] : ['per', part.per]),
      ].join(' ');
    case 'text':
      return `"${part.text}"`;
    default:
      return part.text;
  }
}

/** "a length is expected here, such as `14 in`; `Heron` is a name" at the next part, or "… after `by`" where the line ends. Takes the wrong part, unless it is a clause word or a comma. */
export function expected(cursor: Cursor, what: string, example: string): undefined {
  const part = peek(cursor);
  if (part?.kind === 'mistake') return slip(cursor, part);
  if (!part || part.kind === 'clause' || part.kind === 'comma') {
    const before = cursor.line.parts[cursor.index - 1];
    const after = before ? describe(before) : cursor.line.head;
    return report(
      cursor,
      'missing-value',
      `${what} is expected after \`${after}\`, such as \`${example}\`.`,
      lastTaken(cursor),
    );
  }
  cursor.index++;
  const is = part.kind === 'quantity' ? 'is a quantity' : `is ${articleFor[part.kind]}`;
  return report(
    cursor,
    'wrong-type',
    `${what} is expected here, such as \`${example}\`; \`${describe(part)}\` ${is}.`,
    part.at,
  );
}

/** Names a slip that the lexer knows and takes it. */
export function slip(cursor: Cursor, part: Part & { kind: 'mistake' }): undefined {
  cursor.index++;
  const said = slipMessage(part);
  return report(
    cursor,
    'not-understood',
    said.message,
    part.at,
    said.text === undefined ? undefined : [write(said.text, part.at)],
  );
}

function slipMessage(part: Part & { kind: 'mistake' }): { message: string; text?: string } {
  const { text } = part;
  switch (part.slip) {
    case 'MARKED': {
      const unit = /["\u2033\u201D]|''/.test(text) ? 'in' : 'ft';
      const better = `${text.replace(/["'\u2032\u2033\u2019\u201D]+$/, '')} ${unit}`;
      return { message: `Feet and inches are written with their unit: \`${better}\`.`, text: better };
    }
    case 'GROUPED': {
      const better = text.replaceAll(',', '');
      return { message: `Figures are written without a thousands comma: \`${better}\`.`, text: better };
    }
    case 'SIGNED': {
      const code = { $: 'USD', '\u20AC': 'EUR', '\u00A3': 'GBP' }[text[0] as string] ?? 'USD';
      const better = `${text.slice(1).replaceAll(',', '')} ${code}`;
      return { message: `Money is written with the code of its currency behind it: \`${better}\`.`, text: better };
    }
    case 'SLASHED': {
      const parts = text.split(/[/.]/).map(Number) as [number, number, number];
      const two = (n: number) => String(n).padStart(2, '0');
      // Day and month cannot be told apart when both are 12 or less: then no fix is offered.
      const [a, b, c] = parts;
      if (String(a).length === 4) return fixDate(`${a}-${two(b)}-${two(c)}`);
      const year = c < 100 ? 2000 + c : c;
      if (a > 12 && b <= 12) return fixDate(`${year}-${two(b)}-${two(a)}`);
      if (b > 12 && a <= 12) return fixDate(`${year}-${two(a)}-${two(b)}`);
      return { message: 'A date is written as year, month, day: `2026-04-18`.' };
    }
    case 'CURLY': {
      const better = `"${text.slice(1).replace(/[\u201C\u201D"]$/, '')}"`;
      return { message: `A text stands in straight quotes: \`${better}\`.`, text: better };
    }
    case 'PERCENT':
      return { message: 'A figure is missing before `%`, such as `6.5 %`.' };
    default:
      return { message: `\`${text}\` means nothing here.` };
  }
}

const fixDate = (text: string) => ({ message: `A date is written as year, month, day: \`${text}\`.`, text });
