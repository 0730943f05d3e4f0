// A table from the text of a CSV file (RFC 4180, and what spreadsheets make of it), with the place of every row and cell.
import Papa from 'papaparse';
import { unguarded } from '../documents/csv.ts';
import type { Span } from '../grammar/problem.ts';

export interface Row {
  /** Of its first line, counted from 1. */
  readonly line: number;
  /** Without the end of its line. */
  readonly at: Span;
  readonly cells: readonly string[];
  /** What is wrong with its quotes, as a sentence. */
  readonly damage?: string;
}

export interface Table {
  readonly delimiter: string;
  /** The first row that is neither blank nor a remark; undefined in an empty table. */
  readonly header: Row | undefined;
  readonly rows: readonly Row[];
}

/**
 * Reads a table. Cells are parted by comma, semicolon or tab, whichever the first row has most of; lines end with LF, CR LF or
 * CR; a mark of byte order, blank rows and lines that begin with `#` are passed over. Cells come without the blanks around them,
 * and without the apostrophe that guards a text from being taken for a formula. Never fails.
 */
export function readTable(text: string): Table {
  const from = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  const body = from === 0 ? text : text.slice(from);
  const newline = body.includes('\n') ? '\n' : '\r';
  const delimiter = delimiterOf(body);
  const rows: Row[] = [];
  let [done, line] = [0, 1];
  Papa.parse<string[]>(body, {
    delimiter,
    newline,
    comments: '#',
    fastMode: false,
    step({ data, errors, meta: { cursor } }) {
      const start = startOf(body, done, cursor, newline);
      line += linesIn(body, done, start);
      const end = endOf(body, start, cursor);
      const damage = errors.find(({ type }) => type === 'Quotes');
      if (data.some((cell) => cell.trim() !== ''))
        rows.push({
          line,
          at: [start + from, end + from],
          cells: data.map((cell) => unguarded(cell.trim())),
          ...(damage && { damage: damages[damage.code] ?? damage.message }),
        });
      line += linesIn(body, start, cursor);
      done = cursor;
    },
  });
  const [header, ...rest] = rows;
  return { delimiter, header, rows: rest };
}

const damages: Readonly<Record<string, string>> = {
  MissingQuotes: 'A cell begins with `"` and never ends: a `"` is missing.',
  InvalidQuotes: 'A `"` inside a quoted cell is written twice: `""`.',
};

/** The place of a cell of a row, without its quotes; the end of the row where it has no such cell. */
export function cellAt(text: string, { delimiter }: Table, { at: [start, end] }: Row, index: number): Span {
  let from = start;
  for (let cell = 0; from <= end; cell++) {
    const next = endOfCell(text, from, end, delimiter);
    if (cell === index) return trimmed(text, from, next);
    from = next + 1;
  }
  return [end, end];
}

function endOfCell(text: string, from: number, end: number, delimiter: string): number {
  let at = from;
  if (text[at] === '"') {
    at++;
    while (at < end && !(text[at] === '"' && text[at + 1] !== '"')) at += text[at] === '"' ? 2 : 1;
  }
  const next = text.indexOf(delimiter, at);
  return next < 0 || next > end ? end : next;
}

function trimmed(text: string, from: number, to: number): Span {
  let [start, end] = [from, to];
  while (start < end && /\s/.test(text[start] as string)) start++;
  while (end > start && /\s/.test(text[end - 1] as string)) end--;
  const isQuoted = end - start > 1 && text[start] === '"' && text[end - 1] === '"';
  return isQuoted ? [start + 1, end - 1] : [start, end];
}

/** By the first row, outside of quotes. */
function delimiterOf(text: string): string {
  const first = text.split(/\r\n|\n|\r/, 200).find((line) => line.trim() !== '' && !line.startsWith('#')) ?? '';
  const bare = first.replace(/"[^"]*"/g, '');
  const count = (mark: string) => bare.split(mark).length;
  return [',', ';', '\t'].reduce((best, mark) => (count(mark) > count(best) ? mark : best));
}

/** Where a row begins that ends at `cursor`: what lies before it are remarks. */
function startOf(text: string, from: number, cursor: number, newline: string): number {
  let at = from;
  while (text[at] === '#') {
    const end = text.indexOf(newline, at);
    if (end < 0 || end + 1 > cursor) return at;
    at = end + 1;
  }
  return at;
}

function endOf(text: string, start: number, cursor: number): number {
  let end = cursor;
  while (end > start && (text[end - 1] === '\n' || text[end - 1] === '\r')) end--;
  return end;
}

function linesIn(text: string, from: number, to: number): number {
  let count = 0;
  for (let at = from; at < to; at++) if (text[at] === '\n' || (text[at] === '\r' && text[at + 1] !== '\n')) count++;
  return count;
}
