// The records that a declaration holds, one for each line, and how those of before and after belong together.
import type { Declaration } from '../records/file.ts';
import { keyOfLine } from '../resolve/like.ts';
import { fileTable } from '../statements/file.ts';
import { rowIn } from '../statements/row.ts';
import { meaningOf } from './meaning.ts';
import type { EntryKind, RecordChange } from './schema.ts';

export interface Entry {
  readonly kind: EntryKind;
  readonly meaning: string;
  /** What it is about, from the narrowest: a record of before and one of after that share one are the same, changed. */
  readonly subjects: readonly string[];
  /** As it is written, on one line and without remarks. */
  readonly text: string;
}

/** Where files lie, and what a rig was called, changes nothing about it. */
const unsaid = new Set(['records', 'formerly', 'rigs']);

interface Statement {
  readonly word: string;
  readonly at: readonly [number, number];
}

/** By word, date and places; by word and places; by word and date; by all but the date. */
const mostSubjects = 4;

/** The entries of a declaration in a text, in their order; those of items only if `withItems`. */
export function entriesOf(
  declaration: Declaration,
  text: string,
  nameNow: (name: string) => string = (name) => name,
  withItems = true,
): readonly Entry[] {
  const table = fileTable.rows.get(declaration.kind)?.block;
  const written = ({ at: [start, end] }: Statement) => text.slice(start, end).replace(/\s+/g, ' ').trim();
  const entry = (statement: Statement, kind: EntryKind, inside?: Statement): Entry => {
    const base = inside ? `${inside.word} ${dateOf(inside) || nameOf(inside)}` : '';
    const subjects = subjectsOf(declaration, statement, nameNow);
    const undated = written(statement).replace(dateOf(statement), '');
    return {
      kind,
      meaning: `${base}${meaningOf(statement, nameNow)}`,
      subjects: [
        ...subjects.map((subject) => `${kind} ${base} ${subject}`),
        // The same with another date.
        `${kind} ${inside?.word ?? ''} … ${undated}`,
      ],
      text: inside ? `${base}: ${written(statement)}` : written(statement),
    };
  };
  const out: Entry[] = [];
  for (const statement of [...(declaration.statements as readonly Statement[]), ...declaration.broken]) {
    const row = table && rowIn(table, statement.word);
    if (unsaid.has(statement.word) || (row?.class === 'item' && !withItems)) continue;
    out.push(entry(statement, row?.class === 'record' || row?.class === 'plan' ? row.class : 'fact'));
    const inner = statement as Partial<
      Record<'findings' | 'brokenFindings' | 'lines' | 'brokenLines', readonly Statement[]>
    >;
    for (const finding of [...(inner.findings ?? []), ...(inner.brokenFindings ?? [])])
      out.push(entry(finding, 'finding', statement));
    for (const line of [...(inner.lines ?? []), ...(inner.brokenLines ?? [])])
      out.push(entry(line, line.word === 'bought' ? 'record' : 'fact', statement));
  }
  return out;
}

const nameOf = (statement: object) => (statement as { readonly name?: { readonly name: string } }).name?.name ?? '';
const dateOf = (statement: object) => (statement as { readonly date?: { readonly text: string } }).date?.text ?? '';

function subjectsOf(
  declaration: Declaration,
  statement: Statement,
  nameNow: (name: string) => string,
): readonly string[] {
  const key = keyOfLine(declaration.kind, { spans: {}, ...statement });
  if (key !== undefined) return [key];
  const { targets = [] } = statement as { readonly targets?: readonly { readonly name: string }[] };
  const where = targets.map(({ name }) => nameNow(name)).sort();
  const { word } = statement;
  const date = dateOf(statement);
  return [
    `${word} ${date} ${where.join(',')}`,
    ...(where.length > 0 ? [`${word} ${where.join(',')}`] : []),
    ...(date === '' ? [word] : [`${word} ${date}`]),
  ];
}

/**
 * What was added, removed and changed. What means the same on both sides is no change, wherever it stands; of the rest, what is
 * about the same thing is one changed record.
 */
export function changesOf(before: readonly Entry[], after: readonly Entry[]): readonly RecordChange[] {
  const left = [...before];
  let come = after.filter(({ meaning }) => {
    const same = left.findIndex((one) => one.meaning === meaning);
    if (same >= 0) left.splice(same, 1);
    return same < 0;
  });
  const partners = new Map<Entry, Entry>();
  for (let narrow = 0; narrow < mostSubjects; narrow++) {
    come = come.filter((entry) => {
      const subject = entry.subjects[narrow];
      const at = subject === undefined ? -1 : left.findIndex(({ subjects }) => subjects.includes(subject));
      if (at < 0) return true;
      partners.set(entry, left.splice(at, 1)[0] as Entry);
      return false;
    });
  }
  return [
    ...left.map(({ kind, text }) => ({ kind, before: text })),
    ...after.flatMap((entry) => {
      const partner = partners.get(entry);
      if (partner) return [{ kind: entry.kind, before: partner.text, after: entry.text }];
      return come.includes(entry) ? [{ kind: entry.kind, after: entry.text }] : [];
    }),
  ];
}
