// Where a cursor stands: in which statement of which block, and what may be written there.
import { headingMeant } from '../../language/grammar/kinds.ts';
import { type Line, type Part, readLines } from '../../language/grammar/lines.ts';
import type { Span } from '../../language/grammar/problem.ts';
import { fileTable } from '../../language/statements/file.ts';
import { blockKindOf, layoutOptions } from '../../language/statements/layout-kinds.ts';
import type { BlockTable, Row } from '../../language/statements/row.ts';

/** A statement with the table of the block that it stands in, and its row if its first word is known there. */
export interface Statement {
  readonly line: Line;
  readonly table: BlockTable;
  readonly row: Row | undefined;
}

/** The row of a line, guessed for a misspelt heading as the reader guesses it. */
export function statementOf(line: Line, table: BlockTable): Statement {
  const row = line.known ? (table.rows.get(line.head) ?? table.names) : undefined;
  if (row && (row.block || !line.block)) return { line, table, row };
  const word = line.block && headingMeant(blockKindOf(table), line.head, line.block[0]?.head);
  return { line, table, row: (word === undefined ? undefined : table.rows.get(word)) ?? row };
}

/** In a block whose lines open with names, the first word is a part like the others. */
export function partsOf({ line, table, row }: Statement): readonly Part[] {
  if (!row || row !== table.names) return line.parts;
  const kind = line.head === 'all' || line.head === 'rest' ? 'clause' : 'word';
  return [{ kind, text: line.head, at: line.headAt }, ...line.parts];
}

/** The statements around an offset, outermost first. */
export function statementsAt(lines: readonly Line[], offset: number, table: BlockTable = fileTable): Statement[] {
  const line = lines.find(({ whole }) => whole[0] <= offset && offset <= whole[1]);
  if (!line) return [];
  const statement = statementOf(line, table);
  const inner = statement.row?.block;
  if (!inner || !line.block || offset <= line.at[1]) return [statement];
  return [statement, ...statementsAt(line.block, offset, inner)];
}

/** Every statement of a file, outer ones before those inside. */
export function* allStatements(lines: readonly Line[], table: BlockTable = fileTable): Iterable<Statement> {
  for (const line of lines) {
    const statement = statementOf(line, table);
    yield statement;
    if (statement.row?.block && line.block) yield* allStatements(line.block, statement.row.block);
  }
}

export interface Standing {
  /** The blocks around the cursor, outermost first. */
  readonly around: readonly Statement[];
  readonly table: BlockTable;
  /** The statement that the cursor stands in; undefined where a new one begins. */
  readonly statement: Statement | undefined;
  /** The parts of that statement before the word that is being typed. */
  readonly before: readonly Part[];
  /** What is being typed, from its beginning to the cursor. */
  readonly typed: Span;
  /** The cursor stands in a text in quotes: what is between the quote and the cursor. */
  readonly inText: string | undefined;
}

/** Where a cursor stands; undefined in a remark. Reads the text up to the cursor only: what comes after may be half a line. */
export function standingAt(text: string, offset: number): Standing | undefined {
  const before = text.slice(0, offset);
  if (inRemark(before)) return undefined;
  let { lines } = readLines(before, { ...layoutOptions, partial: true });
  let table: BlockTable = fileTable;
  const around: Statement[] = [];
  for (;;) {
    const line = lines.at(-1);
    const statement = line && statementOf(line, table);
    const inner = statement?.row?.block;
    if (!statement || !inner || !line.block || isClosed(before, line))
      return standing(before, around, table, statement);
    around.push(statement);
    [lines, table] = [line.block, inner];
  }
}

function standing(
  text: string,
  around: readonly Statement[],
  table: BlockTable,
  last: Statement | undefined,
): Standing {
  const end = text.length;
  const fresh = { around, table, statement: undefined, before: [], inText: undefined };
  const new_: Standing = { ...fresh, typed: [end, end] };
  if (!last) return new_;
  const { line } = last;
  if (line.block !== undefined) return new_;
  if (end > line.at[1] && text.slice(line.at[1], end).includes('\n') && line.parts.at(-1)?.kind !== 'comma')
    return new_;
  const parts = partsOf(last);
  if (line.headAt[1] === end && line.parts.length === 0) return { ...fresh, typed: line.headAt };
  const typing = parts.at(-1);
  if (typing?.kind === 'text' && typing.at[1] === end && !(typing.closed && typing.at[1] - typing.at[0] > 1))
    return { ...fresh, statement: last, before: parts.slice(0, -1), typed: typing.at, inText: typing.text };
  const isWord = typing && typing.at[1] === end && typing.kind !== 'comma' && typing.kind !== 'text';
  if (!isWord) return { ...fresh, statement: last, before: parts, typed: [end, end] };
  const bare = typing.kind === 'quantity' ? withoutUnit(typing) : undefined;
  if (bare) return { ...fresh, statement: last, before: [...parts.slice(0, -1), bare], typed: [bare.at[1], end] };
  return { ...fresh, statement: last, before: parts.slice(0, -1), typed: typing.at };
}

/** A figure whose unit is being typed, as if it had none yet. */
function withoutUnit(part: Part & { readonly kind: 'quantity' }): Part | undefined {
  const last = part.terms.at(-1);
  if (last?.unit === undefined || part.per !== undefined) return undefined;
  return {
    ...part,
    terms: [...part.terms.slice(0, -1), { amount: last.amount }],
    at: [part.at[0], part.at[1] - last.unit.length],
  };
}

/** The layout pass closes every block; one that the text closes ends with its brace. */
function isClosed(text: string, line: Line): boolean {
  const inner = line.block?.at(-1);
  return text[line.whole[1] - 1] === '}' && line.whole[1] > (inner?.whole[1] ?? line.at[1]);
}

function inRemark(before: string): boolean {
  const line = before.slice(before.lastIndexOf('\n') + 1);
  return line.replace(/"([^"\\]|\\.)*"?/g, '').includes('#');
}
