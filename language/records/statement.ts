// One line, read along its row of the statement table.
import type { Line, Part } from '../grammar/lines.ts';
import type { Problem, Span } from '../grammar/problem.ts';
import { nearest } from '../grammar/spelling.ts';
import { type Cursor, cursorAt, describe, peek, report, slip } from '../statements/cursor.ts';
import type { BlockTable, Clause, RecordBase, Row } from '../statements/row.ts';

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

/** Reads a line along a row; problems are added to `problems`. */
export function readStatement(line: Line, row: Row, table: BlockTable, problems: Problem[]): Statement {
  const cursor = cursorAt(line, problems);
  const fields: Record<string, unknown> = {};
  const spans: Record<string, Span> = {};
  const before = problems.length;

  const firstPart = (): number => peek(cursor)?.at[0] ?? line.at[1];
  const keep = (field: string, start: number, value: unknown) => {
    fields[field] = value;
    spans[field] = [start, line.parts[cursor.index - 1]?.at[1] ?? line.at[1]];
  };

  for (const [field, place] of Object.entries(row.places)) {
    const part = peek(cursor);
    const fits = part !== undefined && place.slot.accepts(part) && !opensClause(part, row, place.slot.accepts(part));
    if (place.optional && !fits && !(part?.kind === 'mistake' && isLast(row, field))) continue;
    const start = firstPart();
    const value = place.slot.read(cursor);
    if (value !== undefined) keep(field, start, value);
    else skipToClause(cursor, row);
  }

  const said = new Set<string>();
  for (let part = peek(cursor); part; part = peek(cursor)) {
    const found = part.kind === 'clause' ? clauseOf(row, part.text) : undefined;
    if (!found) {
      misplaced(cursor, part, row, table);
      continue;
    }
    const [field, clause] = found;
    if (said.has(field)) report(cursor, 'said-twice', `\`${clause.word}\` is said twice in this line.`, part.at);
    said.add(field);
    const start = part.at[0];
    cursor.index++;
    const value = clause.slot.read(cursor);
    if (value !== undefined) keep(field, start, value);
    else skipToClause(cursor, row);
  }
  for (const [field, clause] of Object.entries(row.clauses)) {
    if (clause.needed && !said.has(field)) {
      report(
        cursor,
        'missing-clause',
        `\`${clause.word}\` and ${clause.slot.what} are expected here, such as \`${row.example}\`.`,
        line.headAt,
      );
    }
  }

  const errors = problems.slice(before).some((p) => !lenient.has(p.rule));
  if (errors) return { whole: false, broken: { word: row.word, at: line.at, fields } };
  const record = {
    word: row.word,
    at: line.at,
    spans,
    ...(line.doc === undefined ? {} : { doc: line.doc }),
    ...fields,
  };
  return { whole: true, record };
}

/** Slips that leave the rest of the line's meaning as it is. */
const lenient = new Set(['said-twice', 'misplaced-comma']);

/** A word such as `round` or `before` may open a value or a clause; in a place it is a value only if the row has no such clause. */
function opensClause(part: Part, row: Row, accepted: boolean): boolean {
  return part.kind === 'clause' && (!accepted || clauseOf(row, part.text) !== undefined);
}

const isLast = (row: Row, field: string) => Object.keys(row.places).at(-1) === field;

const clauseMaps = new WeakMap<Row, Map<string, [string, Clause]>>();

function clauseOf(row: Row, word: string): [string, Clause] | undefined {
  let map = clauseMaps.get(row);
  if (!map) {
    map = new Map(Object.entries(row.clauses).map(([field, clause]) => [clause.word, [field, clause]]));
    clauseMaps.set(row, map);
  }
  return map.get(word);
}

/** After a value that could not be read, the line goes on at its next clause. */
function skipToClause(cursor: Cursor, row: Row): void {
  for (let part = peek(cursor); part; part = peek(cursor)) {
    if (part.kind === 'clause' && clauseOf(row, part.text)) return;
    cursor.index++;
  }
}

function misplaced(cursor: Cursor, part: Part, row: Row, table: BlockTable): void {
  if (part.kind === 'mistake') {
    slip(cursor, part);
    return;
  }
  cursor.index++;
  if (part.kind === 'comma') {
    const last = peek(cursor) === undefined;
    report(
      cursor,
      last ? 'unfinished-list' : 'misplaced-comma',
      last ? 'Something is expected after this comma.' : 'This comma has no meaning here.',
      part.at,
    );
    return;
  }
  const text = describe(part);
  if (part.kind === 'word' && table.rows.has(part.text) && cursor.index > 1) {
    report(cursor, 'two-statements', `\`${text}\` begins another statement: it stands on a line of its own.`, part.at, [
      { label: 'Begin a new line here', at: [part.at[0], part.at[0]], text: '\n  ' },
    ]);
    skipToEnd(cursor);
    return;
  }
  if (part.kind === 'text' && clauseOf(row, 'note')) {
    report(
      cursor,
      'misplaced',
      `This text belongs to nothing here; a remark is written as \`note "${part.text}"\`.`,
      part.at,
      [{ label: 'Write `note` before it', at: [part.at[0], part.at[0]], text: 'note ' }],
    );
    return;
  }
  const close =
    part.kind === 'word'
      ? nearest(
          part.text,
          Object.values(row.clauses).map((c) => c.word),
        )
      : undefined;
  const words = [...new Set(Object.values(row.clauses).map((c) => `\`${c.word}\``))];
  const may =
    words.length === 0
      ? `After \`${row.word || 'this'}\` nothing more is expected.`
      : `Here may stand ${words.join(', ')}.`;
  report(
    cursor,
    'misplaced',
    close === undefined
      ? `\`${text}\` has no meaning here. ${may}`
      : `\`${text}\` has no meaning here; did you mean \`${close}\`?`,
    part.at,
    close === undefined ? [] : [{ label: `Write \`${close}\``, at: part.at, text: close }],
  );
  skipToClause(cursor, row);
}

function skipToEnd(cursor: Cursor): void {
  cursor.index = cursor.line.parts.length;
}
