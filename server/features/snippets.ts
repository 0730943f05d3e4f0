// A statement as a snippet: what it looks like when it is whole, formatted, with a stop at each value.
import { edited, format } from '../../language/format/index.ts';
import type { Part } from '../../language/grammar/lines.ts';
import type { Span } from '../../language/grammar/problem.ts';
import { linesOfText } from '../../language/records/file.ts';
import { fileTable } from '../../language/statements/file.ts';
import type { BlockTable } from '../../language/statements/row.ts';
import type { Offer } from '../../language/statements/slot.ts';
import { type Slotted, slottedParts } from '../cursor/slotted.ts';
import { allStatements, type Statement } from '../cursor/standing.ts';

/** A value to type over; `choices`: what it may be, itself the first of them. */
export interface Stop {
  readonly text: string;
  readonly choices: readonly string[];
  readonly part: Part;
  readonly offers: readonly Offer[];
  readonly statement: Statement;
}
export type Snippet = readonly (string | Stop)[];

/**
 * The snippet of statements of a block, written there on lines or within one line. It is formatted as it would be alone in
 * its block, and indented as if it stood at the left.
 */
export function snippetOf(table: BlockTable, source: string): Snippet {
  const openers = openersOf(table);
  const head = openers.map((opener) => `${opener} {\n`).join('');
  const whole = `${head}${unfolded(table, head, source)}\n${'}\n'.repeat(openers.length)}`;
  const text = edited(whole, format(whole).edits);
  const from = lineStart(text, openers.length);
  const to = openers.length === 0 ? text.trimEnd().length : lineEnd(text, from, openers.length);
  const width = 2 * openers.length;
  const atLeft = (lines: string) => lines.replaceAll(`\n${' '.repeat(width)}`, '\n');
  const out: (string | Stop)[] = [];
  let done = from + width;
  for (const stop of stopsIn(text, [from, to])) {
    const [start, end] = inQuotes(stop.part);
    out.push(atLeft(text.slice(done, start)), stop);
    done = end;
  }
  out.push(atLeft(text.slice(done, to)));
  return out;
}

/** With other values at the stops. */
export const filled = (snippet: Snippet, value: (stop: Stop) => Stop): Snippet =>
  snippet.map((piece) => (typeof piece === 'string' ? piece : value(piece)));

/** In the syntax of the protocol: `${1|front,rear|}`, `${2:4 in}`. */
export function snippetText(snippet: Snippet): string {
  let count = 0;
  return snippet
    .map((piece) => {
      if (typeof piece === 'string') return escaped(piece);
      count++;
      if (piece.choices.length < 2) return `\${${count}:${escaped(piece.text)}}`;
      return `\${${count}|${piece.choices.map((one) => one.replace(/[\\,|]/g, '\\$&')).join(',')}|}`;
    })
    .join('');
}
const escaped = (text: string) => text.replace(/[\\$}]/g, '\\$&');

/** As it stands until something is typed over it. */
export const plainText = (snippet: Snippet, indent = ''): string =>
  snippet
    .map((piece) => (typeof piece === 'string' ? piece : piece.text))
    .join('')
    .replaceAll('\n', `\n${indent}`);

/** The headings of the blocks around the lines of a table, outermost first. */
function openersOf(table: BlockTable, within: BlockTable = fileTable): readonly string[] {
  if (table === within) return [];
  const rows = [...within.rows.values()].filter(({ block }) => block);
  for (const row of rows) {
    const heading = row.example.split('{')[0]?.trim() ?? row.word;
    if (row.block === table) return [heading];
    const inner = openersOf(table, row.block);
    if (inner.length > 0) return [heading, ...inner];
  }
  return [];
}

/** A block on one line becomes one of several. */
function unfolded(table: BlockTable, head: string, source: string): string {
  const text = `${head}${source}`;
  const statements = [...allStatements(linesOfText(text).lines)];
  const own = statements.find(({ line, table: of }) => of === table && line.headAt[0] >= head.length);
  const block = own?.line.block;
  if (!own || !block || source.includes('\n')) return source;
  const lines = block.map(({ whole }) => text.slice(whole[0], whole[1]).trim());
  return [`${text.slice(own.line.at[0], own.line.at[1]).trim()} {`, ...lines, '}'].join('\n');
}

function stopsIn(text: string, [from, to]: Span): Stop[] {
  const statements = [...allStatements(linesOfText(text).lines)];
  const inside = statements.filter(({ line }) => line.headAt[0] >= from && line.headAt[0] < to);
  return inside.flatMap((statement) =>
    slottedParts(statement)
      // What a finding is about stands already; what was seen is to be said.
      .filter(({ field }) => !(statement.row === statement.table.names && field === 'targets'))
      .flatMap((slotted) => slotted.parts.flatMap((part) => stopOf(text, statement, slotted, part) ?? [])),
  );
}

function stopOf(text: string, statement: Statement, { slot: { offers } }: Slotted, part: Part): Stop | undefined {
  if (part.kind === 'clause' || part.kind === 'comma') return undefined;
  const [start, end] = inQuotes(part);
  const own = text.slice(start, end);
  const words = offers.flatMap((offer) => (offer.kind === 'words' ? offer.words : []));
  const choices = words.includes(own) ? [own, ...words.filter((word) => word !== own)] : [];
  return { text: own, choices, part, offers, statement };
}

/** A text is typed over without its quotes. */
const inQuotes = ({ kind, at }: Part): Span => (kind === 'text' ? [at[0] + 1, at[1] - 1] : at);

function lineStart(text: string, line: number): number {
  let at = 0;
  for (let i = 0; i < line; i++) at = text.indexOf('\n', at) + 1;
  return at;
}

/** The end of the last line before so many closing braces. */
function lineEnd(text: string, from: number, closers: number): number {
  const lines = text.slice(from).trimEnd().split('\n');
  return from + lines.slice(0, lines.length - closers).join('\n').length;
}
