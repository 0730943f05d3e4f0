// Bookings from a file beside the records: a table, or a calendar.
import type { Span } from '../grammar/problem.ts';
import { readCalendar } from './bookings-calendar.ts';
import { type Column, readColumns, type TableProblem } from './columns.ts';
import { readTable } from './csv.ts';
import { readDay } from './dates.ts';

/** One booking as its file has it. Both days are included. */
export interface BookingRow {
  /** What may name the rig: its name, unit number or VIN; the first that names one counts. */
  readonly labels: readonly string[];
  readonly labelAt: Span;
  readonly first: string;
  readonly last: string;
  readonly at: Span;
  /** Counted from 1. */
  readonly line: number;
}

export interface BookingsFile {
  readonly rows: readonly BookingRow[];
  readonly problems: readonly TableProblem[];
  /** How many rows or events there are, those that cannot be read among them. */
  readonly count: number;
  /** Nothing of it can be read: the problems say why. */
  readonly unread?: true;
}

const columns = [
  { name: 'rig', also: ['name'] },
  { name: 'unit' },
  { name: 'vin' },
  { name: 'first', needed: true },
  { name: 'last', needed: true },
  { name: 'who' },
  { name: 'note' },
] as const satisfies readonly Column[];

export const isBookingsFile = (path: string): boolean => /\.(csv|ics)$/i.test(path);

/** Reads the bookings of a file: a calendar where its name ends in `.ics`, else a table. Depends on the text alone; never fails. */
export function readBookings(path: string, text: string): BookingsFile {
  const lost = text.indexOf('\uFFFD');
  if (lost >= 0) return notUtf8(text, lost);
  return /\.ics$/i.test(path) ? readCalendar(text) : readRows(text);
}

/** Names with letters beyond English would be read wrong, and rigs not be found by them. */
function notUtf8(text: string, at: number): BookingsFile {
  const line = text.slice(0, at).split('\n').length;
  const message = 'This file is no UTF-8 text: save it as "CSV UTF-8", or export the calendar anew.';
  return { rows: [], problems: [{ at: [at, at + 1], line, message }], count: 0, unread: true };
}

function readRows(text: string): BookingsFile {
  const table = readTable(text);
  const { cells, rows, problems: found } = readColumns(text, table, columns, ['rig', 'unit', 'vin']);
  const problems = [...found];
  const out: BookingRow[] = [];
  for (const row of cells ? rows : []) {
    if (!cells) continue;
    const refuse = (column: 'rig' | 'first' | 'last', message: string) =>
      void problems.push({ at: cells.at(row, column), line: row.line, message });
    const named = (['rig', 'unit', 'vin'] as const).find((column) => cells.of(row, column) !== '');
    if (!named) {
      refuse('rig', 'No rig is named in this row.');
      continue;
    }
    const [first, last] = [readDay(cells.of(row, 'first')), readDay(cells.of(row, 'last'))];
    if ('message' in first) refuse('first', first.message);
    else if ('message' in last) refuse('last', last.message);
    else if (last.day < first.day) refuse('last', `The last day, ${last.day}, is before the first, ${first.day}.`);
    else
      out.push({
        labels: [cells.of(row, named)],
        labelAt: cells.at(row, named),
        first: first.day,
        last: last.day,
        at: row.at,
        line: row.line,
      });
  }
  return {
    rows: out,
    problems: problems.sort((a, b) => a.at[0] - b.at[0]),
    count: table.rows.length,
    ...(cells ? {} : { unread: true }),
  };
}
