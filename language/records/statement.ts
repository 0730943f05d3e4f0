// One line, read along its row of the statement table.
import type { Line, Part } from '../grammar/lines.ts';
import type { Problem, Span } from '../grammar/problem.ts';
import { type Cursor, cursorAt, describe, peek, report } from '../statements/cursor.ts';
import type { BlockTable, Place, RecordBase, Row } from '../statements/row.ts';
import { misplaced, skipToClause } from './misplaced.ts';

/** A statement that was read whole. Its fields follow from its row. */
export type Whole = RecordBase & { readonly word: string };

/** A statement of which something could not be read: what could be is kept, so that its names are still known. */
export interface Broken {
  readonly word: string;
  readonly at: Span;
  readonly fields: Readonly<Record<string, unknown>>;
}

export type Statement =
  | { readonly whole: true; readonly record: Whole }
  | { readonly whole: false; readonly broken: Broken };

/** Slips that leave the rest of the line's meaning as it is. */
const lenient = new Set(['said-twice', 'misplaced-comma']);

/** Reads a line along a row; problems are added to `problems`. */
export function readStatement(line: Line, row: Row, table: BlockTable, problems: Problem[]): Statement {
  const reading: Reading = { cursor: cursorAt(line, problems), row, table, fields: {}, spans: {} };
  const before = problems.length;
  readPlaces(reading);
  // What stands in a block keeps its heading when only a clause of that is half typed: an inspection keeps its findings.
  const heading = row.block && line.block ? problems.length : undefined;
  readClauses(reading);
  const { fields, spans } = reading;
  for (let i = before; i < (heading ?? problems.length); i++)
    if (!lenient.has((problems[i] as Problem).rule))
      return { whole: false, broken: { word: row.word, at: line.at, fields } };
  const base = { word: row.word, at: line.at, spans };
  return { whole: true, record: Object.assign(base, line.doc === undefined ? undefined : { doc: line.doc }, fields) };
}

interface Reading {
  readonly cursor: Cursor;
  readonly row: Row;
  readonly table: BlockTable;
  readonly fields: Record<string, unknown>;
  readonly spans: Record<string, Span>;
}

function keep({ cursor, fields, spans }: Reading, field: string, start: number, value: unknown): void {
  fields[field] = value;
  spans[field] = [start, cursor.line.parts[cursor.index - 1]?.at[1] ?? cursor.line.at[1]];
}

function readPlaces(reading: Reading): void {
  const { cursor, row } = reading;
  const { places } = row.walk;
  let broken = false; // one message a line is enough for what stands before the clauses
  for (let i = 0; i < places.length; i++) {
    const [field, place] = places[i] as (typeof places)[number];
    const next = places[i + 1]?.[1];
    const part = peek(cursor);
    const fits = part !== undefined && takes(place, part, row);
    if (!fits && (place.optional ? !(part?.kind === 'mistake' && next === undefined) : broken)) continue;
    if (!fits && part && next && takes(next, part, row)) {
      const { what, example } = place.slot;
      report(
        cursor,
        'missing-value',
        `${what} is expected before \`${describe(part)}\`, such as \`${example}\``,
        part.at,
      );
      broken = true;
      continue;
    }
    if (!fits && part && isReserved(place, part, row)) {
      cursor.index++;
      report(
        cursor,
        'reserved-word',
        `\`${part.text}\` is a word of the language and no name; write another, such as \`${part.text}-1\``,
        part.at,
      );
      broken = true;
      continue;
    }
    const start = part?.at[0] ?? cursor.line.at[1];
    const value = place.slot.read(cursor);
    if (value !== undefined) {
      keep(reading, field, start, value);
      continue;
    }
    broken = true;
    const after = peek(cursor);
    if (!(after && next && takes(next, after, row))) skipToClause(cursor, row);
  }
}

/** Can this part begin the value of the place? A word such as `round` or `before` may do so, unless the row has such a clause. */
function takes(place: Place, part: Part, row: Row): boolean {
  return place.slot.accepts(part) && !(part.kind === 'clause' && row.walk.clauses.has(part.text));
}

const named = new Set(['new-name', 'seams', 'materials', 'surfaces', 'rigs', 'rules']);

/** A clause word that was meant as a name. */
function isReserved(place: Place, part: Part, row: Row): part is Part & { kind: 'clause' } {
  return (
    part.kind === 'clause' &&
    !row.walk.clauses.has(part.text) &&
    place.slot.offers.some((offer) => named.has(offer.kind))
  );
}

function readClauses(reading: Reading): void {
  const { cursor, row } = reading;
  const said = new Set<string>();
  for (let part = peek(cursor); part; part = peek(cursor)) {
    const found = part.kind === 'clause' ? row.walk.clauses.get(part.text) : undefined;
    if (!found) {
      misplaced(cursor, part, row, reading.table, said);
      continue;
    }
    const [field, clause] = found;
    if (said.has(field)) report(cursor, 'said-twice', `\`${clause.word}\` is said twice in this line`, part.at);
    said.add(field);
    cursor.index++;
    const value = clause.slot.read(cursor);
    if (value !== undefined) keep(reading, field, part.at[0], value);
    else skipToClause(cursor, row);
  }
  for (const [field, clause] of row.walk.needed) {
    if (said.has(field)) continue;
    const message = `\`${clause.word}\` and ${clause.slot.what} are expected here, such as \`${row.example}\``;
    report(cursor, 'missing-clause', message, cursor.line.headAt);
  }
}
