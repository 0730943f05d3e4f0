// Where columns begin in a line, by the class of its statement, as the worked example of the language has them.
import type { IToken } from 'chevrotain';
import { historyTable } from '../statements/past.ts';
import type { Row } from '../statements/row.ts';
import type { Line, Piece, Statement } from './written.ts';

/** A column begins in a line at that piece. The cells of a run with the same `order` stand in the same column. */
export interface Cell {
  readonly piece: number;
  readonly order: number;
  readonly column: Column;
}

/**
 * A column of a run of lines, counted from the statement word: not left of `base`, at least `gap` blanks before it, moved
 * right by `step`. `shared`: a line that has it alone needs no more than the gap.
 */
export interface Column {
  readonly base: number;
  readonly gap: number;
  readonly step: number;
  readonly shared?: true;
}

/** How far inner columns move at a time, so that one longer name seldom rewrites its neighbours. */
const step = 4;

/** The width of the statement word: fixed for its class, so that it never moves. */
export function headWidth({ row, table }: Statement): number {
  switch (row?.class) {
    case 'fact':
      // A yard is a heading in its fleet.
      if (row.block) return 4;
      return table?.name === 'policy' ? 15 : 13;
    case 'item':
      return 13;
    case 'record':
      return historyTable.rows.has(row.word) ? 10 : 13;
    case 'plan':
      return 9;
    default:
      return 4; // of a heading or a finding: only how far what goes on in the next line is indented
  }
}

/** A column that is made for the lines of a run only. */
export const runColumn = (base: number, gap = 2): Column => ({ base, gap, step, shared: true });
const tight = (gap: number): Column => ({ base: 0, gap, step: 1 });

/** The pieces of the statement that opens a line, up to its block and the end of the line. */
export function ownPieces({ pieces }: Line): readonly Piece[] {
  const own = pieces[0]?.statement;
  const end = pieces.findIndex(({ token, statement }) => statement !== own || token.image === '{');
  return end < 0 ? pieces : pieces.slice(0, end);
}

/** The cells of each line of a run; undefined where the language lays down no columns. */
export function cellsOf(run: readonly Line[]): readonly (readonly Cell[])[] | undefined {
  const statement = run[0]?.pieces[0]?.statement;
  const row = statement?.row;
  if (!row) return undefined;
  const lines = run.map((line) => ownPieces(line).map(({ token }) => token));
  if (row.class === 'item') return itemCells(row, headWidth(statement), lines);
  if (row.class === 'finding') return lines.map((line) => findingCells(row, line));
  if (row.word === 'roof') return lines.map(roofCells);
  if (row.class === 'declaration' && run.every(isOneLine))
    return lines.map(({ length }) => [
      { piece: 1, order: 0, column: tight(1) },
      { piece: length, order: 1, column: tight(1) },
    ]);
  return undefined;
}

/** A heading with its block in one line. */
export const isOneLine = ({ pieces }: Line): boolean =>
  pieces.some(({ token }) => token.image === '{') && pieces.at(-1)?.token.image === '}';

const isAmount = (token: IToken | undefined) =>
  token !== undefined &&
  (token.tokenType.name === 'NUMBER' || token.tokenType.name === 'FRACTION' || token.image === 'round');

/** Name, size, and each clause in a column of its own; `on roadside at 9 ft` is one place. */
function itemCells(row: Row, width: number, lines: readonly (readonly IToken[])[]): Cell[][] {
  const size: Column = { base: width + 12, gap: 1, step };
  const clause: Column = { base: width + 32, gap: 2, step };
  // Where one line writes `5 in wide`, the `wide 2 in` of the next one stands below it.
  const bandFirst = row.places.wideBefore !== undefined && lines.some((line) => bandBefore(line, afterNames(line)) > 0);
  return lines.map((line) => {
    const cells: Cell[] = [];
    let i = afterNames(line);
    if (isAmount(line[i]) || (bandFirst && line[i]?.image === 'wide')) {
      cells.push({ piece: i, order: 0, column: size });
      i += bandBefore(line, i) || 1;
    }
    let order = 1;
    for (let before = ''; i < line.length; i++) {
      const token = line[i] as IToken;
      if (!opensClause(row, token)) continue;
      if (!(token.image === 'at' && before === 'on')) {
        cells.push({ piece: i, order, column: order === 1 ? clause : runColumn(width) });
        order++;
      }
      before = token.image;
    }
    return cells;
  });
}

/** Does a token open a clause of its statement? */
export const opensClause = (row: Row, token: IToken) =>
  token.tokenType.name === 'CLAUSE' && row.walk.clauses.has(token.image);

/** The piece behind `NAME, NAME`, beginning at a piece. */
function afterNames(line: readonly IToken[], from = 1): number {
  let i = from + 1;
  while (line[i]?.image === ',') i += 2;
  return i;
}

/** How many pieces `5 in wide` takes; 0 where no such thing stands. */
function bandBefore(line: readonly IToken[], from: number): number {
  if (!isAmount(line[from])) return 0;
  const wide = line.findIndex((token, i) => i > from && token.tokenType.name === 'CLAUSE');
  return line[wide]?.image === 'wide' && !isAmount(line[wide + 1]) ? wide + 1 - from : 0;
}

/** Where, what was seen, and each clause. */
function findingCells(row: Row, line: readonly IToken[]): Cell[] {
  const cells: Cell[] = [];
  let i = afterNames(line, 0);
  const seen = line[i];
  if (seen && seen.tokenType.name !== 'CLAUSE') {
    cells.push({ piece: i++, order: 0, column: { base: 12, gap: 1, step } });
  }
  for (let order = 1; i < line.length; i++) {
    if (!opensClause(row, line[i] as IToken)) continue;
    cells.push({ piece: i, order, column: order === 1 ? { base: 22, gap: 2, step } : runColumn(22) });
    order++;
  }
  return cells;
}

/** Two blanks before the membrane. */
function roofCells(line: readonly IToken[]): Cell[] {
  const membrane = line.findIndex(({ tokenType }, i) => i > 1 && tokenType.name === 'WORD');
  return membrane < 0 ? [] : [{ piece: membrane, order: 0, column: tight(2) }];
}
