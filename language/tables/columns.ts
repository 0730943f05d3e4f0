// Which cell of a row stands in which column: by the names in the header, in any order and case.
import type { Span } from '../grammar/problem.ts';
import { nearest } from '../values/nearest.ts';
import { cellAt, type Row, type Table } from './csv.ts';

/** What is wrong at a place of a table, as a sentence. `line` counts from 1. */
export interface TableProblem {
  readonly at: Span;
  readonly line: number;
  readonly message: string;
  /** No row is left out because of it. */
  readonly harmless?: true;
}

export interface Column<C extends string = string> {
  readonly name: C;
  /** Other names by which a header may call it. */
  readonly also?: readonly string[];
  /** A table without it says nothing. */
  readonly needed?: true;
}

/** The cells of a table by the names of its columns. */
export interface Cells<C extends string> {
  /** Empty where the row or the table has no such cell. */
  of(row: Row, column: C): string;
  at(row: Row, column: C): Span;
  readonly has: (column: C) => boolean;
}

export interface Read<C extends string> {
  /** Undefined where the table has no header that can be used: the problems say why. */
  readonly cells: Cells<C> | undefined;
  /** The rows that have as many cells as the header. */
  readonly rows: readonly Row[];
  readonly problems: readonly TableProblem[];
}

/** Binds the columns of a table to their names. `needsOneOf`: at least one of these has to be there. */
export function readColumns<const C extends string>(
  text: string,
  table: Table,
  columns: readonly Column<C>[],
  needsOneOf: readonly C[] = [],
): Read<C> {
  const { header } = table;
  const names = columns.map(({ name }) => name);
  const refused = (message: string, at: Span = [0, 0], line = 1): Read<C> => ({
    cells: undefined,
    rows: [],
    problems: [{ at, line, message }],
  });
  const begins = `A table begins with a row of the names of its columns: ${names.map((name) => `\`${name}\``).join(', ')}`;
  if (!header) return refused(`This table is empty. ${begins}.`);
  if (header.damage) return refused(header.damage, header.at, header.line);

  const problems: TableProblem[] = [];
  const indices = new Map<C, number>();
  const meant = new Set<string>();
  for (const [index, cell] of header.cells.entries()) {
    if (cell === '') continue;
    const said = cell.toLowerCase();
    const column = columns.find(({ name, also = [] }) => name === said || also.includes(said));
    const at = cellAt(text, table, header, index);
    if (!column) {
      const close = nearest(said, names);
      // A table may hold more than is read here.
      if (close === undefined || header.cells.some((other) => other.toLowerCase() === close)) continue;
      meant.add(close);
      problems.push({ at, line: header.line, message: `No column is called \`${cell}\`; did you mean \`${close}\`?` });
    } else if (indices.has(column.name))
      problems.push({
        at,
        line: header.line,
        message: `Two columns are called \`${column.name}\`: only the first is read.`,
        harmless: true,
      });
    else indices.set(column.name, index);
  }
  const isOpen = (name: C) => !indices.has(name) && !meant.has(name);
  const missing = columns.filter(({ name, needed }) => needed && isOpen(name)).map(({ name }) => `\`${name}\``);
  if (needsOneOf.length > 0 && needsOneOf.every(isOpen))
    missing.unshift(needsOneOf.map((name) => `\`${name}\``).join(' or '));
  if (missing.length > 0) {
    const message = `The first row names no column ${missing.join(', ')}. ${begins}, in any order.`;
    problems.push({ at: header.at, line: header.line, message });
  }
  if (missing.length > 0 || meant.size > 0) return { cells: undefined, rows: [], problems };

  const last = Math.max(...columns.flatMap(({ name, needed }) => (needed ? [indices.get(name) ?? 0] : [])), 0);
  const rows = table.rows.filter((row) => {
    const { at, line, cells, damage } = row;
    const short = cells.length <= last;
    const message =
      damage ??
      (short ? `This row has ${cells.length} of ${header.cells.length} cells: a column is missing.` : undefined);
    const long = cells.slice(header.cells.length).findIndex((cell) => cell !== '');
    const over =
      long < 0
        ? undefined
        : `This row has ${cells.length} cells, and the header ${header.cells.length}: a cell that holds \`${table.delimiter === '\t' ? 'a tab' : table.delimiter}\` stands in quotes.`;
    const said = message ?? over;
    if (said !== undefined)
      problems.push({
        at: over && !message ? cellAt(text, table, row, header.cells.length + long) : at,
        line,
        message: said,
      });
    return said === undefined;
  });
  return {
    cells: {
      of: ({ cells }, column) => cells[indices.get(column) ?? -1] ?? '',
      at(row, column) {
        const index = indices.get(column);
        return index === undefined || index >= row.cells.length ? row.at : cellAt(text, table, row, index);
      },
      has: (column) => indices.has(column),
    },
    rows,
    problems,
  };
}
