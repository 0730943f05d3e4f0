// A single answer, read as the language would read it in a record.
import { readFile } from '../records/file.ts';
import type { AnswerKind } from './answer-kinds.ts';

export interface Limits {
  readonly today: string;
  /** The longest length, itself allowed: what does not go into it does not fit. */
  readonly atMost?: string | undefined;
}

interface Carrier {
  /** A statement of a rig that holds such a value. */
  line(text: string): string;
  /** The field of the record that it ends up in. */
  readonly field: string;
  readonly example: string;
}

const day: Carrier = { line: (text) => `built ${text}`, field: 'date', example: '`2026-04-18`' };
const carriers: Readonly<Record<AnswerKind, Carrier>> = {
  length: { line: (text) => `joint seam ${text}`, field: 'run', example: '`28 ft` or `8.5 m`' },
  day,
  'rough-day': day,
  stretch: { line: (text) => `inspected 2000-01-01 seam from ${text}`, field: 'targets', example: '`6 ft to 9 ft`' },
  percent: { line: (text) => `dried 2000-01-01 moisture ${text}`, field: 'moisture', example: '`14 %`' },
};

/** Fields that the carriers bring with them. */
const brought = new Set(['word', 'at', 'spans', 'order', 'name', 'date', 'doc']);

/** What is wrong with an answer, as a sentence that says what to write; undefined when it is good. */
export function answerProblem(kind: AnswerKind, answer: string, limits: Limits): string | undefined {
  const { line, field, example } = carriers[kind];
  const text = answer.trim();
  if (text === '') return `Write ${words[kind]}, such as ${example}.`;
  const alone = `Only ${words[kind]} is asked for here, such as ${example}.`;
  if (/[#{}"\r\n]/.test(text)) return alone;
  const { declarations, problems } = readFile(`rig x {\n${line(text)}\n}\n`);
  if (problems[0]) return problems[0].message.replaceAll('`seam`', 'here').replaceAll('`built`', 'here');
  const statements: readonly object[] = declarations[0]?.statements ?? [];
  const [statement] = statements;
  const value = statement && (statement as Readonly<Record<string, unknown>>)[field];
  const isMore = Object.keys(statement ?? {}).some((key) => key !== field && key !== 'targets' && !brought.has(key));
  if (statements.length !== 1 || value === undefined || isMore) return alone;
  return problemOf(kind, value, limits) ?? undefined;
}

const words: Readonly<Record<AnswerKind, string>> = {
  length: 'a length with its unit',
  day: 'a day of the calendar',
  'rough-day': 'a date',
  stretch: 'from where to where, measured from the beginning of the seam',
  percent: 'a percentage',
};

function problemOf(kind: AnswerKind, value: unknown, { today, atMost }: Limits): string | undefined {
  switch (kind) {
    case 'length': {
      const { nm } = value as { nm: number };
      if (nm === 0) return 'A length of nothing is none: write what you measured.';
      const most = atMost === undefined ? undefined : lengthIn(atMost);
      return most !== undefined && nm > most
        ? `That is more than ${atMost?.trim()}, which it has to go into.`
        : undefined;
    }
    case 'stretch': {
      const targets = value as readonly { stretch?: { low: { nm: number }; high: { nm: number } } }[];
      const stretch = targets[0]?.stretch;
      if (targets.length !== 1 || stretch === undefined)
        return `Only one part is asked for here, such as ${carriers.stretch.example}.`;
      if (stretch.low.nm >= stretch.high.nm)
        return 'It ends where it begins, or before: the smaller figure comes first.';
      const most = atMost === undefined ? undefined : lengthIn(atMost);
      return most !== undefined && stretch.high.nm > most
        ? `The seam is ${atMost} long: that is beyond its end.`
        : undefined;
    }
    case 'percent':
      return (value as { percent: number }).percent > 100 ? 'A reading is at most 100 %.' : undefined;
    case 'day':
    case 'rough-day': {
      const { first, rough } = value as { first: string; rough: boolean };
      if (kind === 'day' && rough) return 'The day itself is needed here, such as `2026-04-18`.';
      return first > today ? `${first} is after today, ${today}: what is written here has happened.` : undefined;
    }
  }
}

/** A length that was read before. */
function lengthIn(text: string): number | undefined {
  const { declarations } = readFile(`rig x {\njoint seam ${text}\n}\n`);
  const [statement] = declarations[0]?.statements ?? [];
  return statement?.word === 'joint' ? statement.run.nm : undefined;
}
