// The white space of each line as it should be.
import { type Cell, cellsOf, headWidth, isOneLine, opensClause } from './cells.ts';
import { keptCells } from './kept-columns.ts';
import type { Line, Piece, Statement, Written } from './written.ts';

/**
 * The white space of a line: `lead` before its first token, `before` each of its pieces but the first, `remark` before its
 * comment. Undefined: as it is.
 */
export interface Gaps {
  lead: string | undefined;
  readonly before: (string | undefined)[];
  remark: string | undefined;
}

/** The gaps of every line that has tokens or a comment. */
export function gapsOf(written: Written): readonly Gaps[] {
  const gaps = written.lines.map((line, i) => simpleGaps(line, i < written.unsureFrom));
  const sizes = new Sizes(written, gaps);
  for (const run of runsOf(written)) align(written, run, gaps, sizes);
  for (const [i, line] of written.lines.entries()) hang(written, line, i, gaps, sizes);
  placeRemarks(written, gaps, sizes);
  return gaps;
}

const indent = (depth: number) => '  '.repeat(depth);

/** Without columns: two blanks a level, one between words. */
function simpleGaps({ pieces, comment, depth, frozen }: Line, sure: boolean): Gaps {
  if (frozen) return { lead: undefined, before: [], remark: undefined };
  const first = pieces[0];
  const lead = !sure || !(first ?? comment) ? undefined : indent(first ? first.statement.depth : depth);
  const goesOn = first !== undefined && first.token !== first.statement.head;
  return { lead, before: pieces.map((piece, i) => between(pieces[i - 1], piece, goesOn)), remark: undefined };
}

function between(before: Piece | undefined, { token, statement }: Piece, goesOn: boolean): string | undefined {
  if (!before) return undefined;
  const last = before.token.image;
  if (last === '{') return token.image === '}' ? '' : ' ';
  if (token.image === '{' || token.image === '}') return ' ';
  if (statement !== before.statement) return last === '}' ? ' ' : '  ';
  const { row, sound } = statement;
  if (!sound) return undefined;
  if (token.image === ',') return '';
  // The clauses of an item stand apart in the lines in which it goes on, too.
  return goesOn && row?.class === 'item' && opensClause(row, token) ? '  ' : ' ';
}

/** How wide things are with the gaps as they are now. */
class Sizes {
  private readonly written: Written;
  private readonly gaps: readonly Gaps[];

  constructor(written: Written, gaps: readonly Gaps[]) {
    this.written = written;
    this.gaps = gaps;
  }

  lead(i: number): number {
    const { start, pieces, comment } = this.written.lines[i] as Line;
    const first = pieces[0]?.token ?? comment;
    const lead = this.gaps[i]?.lead;
    if (lead === undefined) return (first?.startOffset ?? start) - start;
    return lead.length + (start === 0 && this.written.text.charCodeAt(0) === 0xfeff ? 1 : 0);
  }

  /** The end of a piece, counted from the first one. */
  end(i: number, piece: number): number {
    const { pieces } = this.written.lines[i] as Line;
    let width = 0;
    for (let k = 0; k <= piece; k++) {
      const { startOffset, image } = (pieces[k] as Piece).token;
      if (k > 0) {
        const before = (pieces[k - 1] as Piece).token;
        width += this.gaps[i]?.before[k]?.length ?? startOffset - (before.endOffset as number) - 1;
      }
      width += image.length;
    }
    return width;
  }
}

/** Lines that begin with a statement which is understood: their numbers, in runs of like ones. */
function* runsOf({ lines }: Written): Iterable<readonly number[]> {
  let run: number[] = [];
  for (const [i, line] of lines.entries()) {
    const first = line.pieces[0];
    if (!first || line.frozen || first.token !== first.statement.head || !first.statement.sound) continue;
    const before = run.at(-1);
    if (before !== undefined && !isLike(lines[before] as Line, line, i)) {
      yield run;
      run = [];
    }
    run.push(i);
  }
  if (run.length > 0) yield run;
}

/** The same word in the next line of the same block. Headings with their blocks in one line are like each other. */
function isLike(above: Line, line: Line, i: number): boolean {
  const [a, b] = [(above.pieces[0] as Piece).statement, (line.pieces[0] as Piece).statement];
  if (a.lastLine !== i - 1 || a.parent !== b.parent || above.pieces.at(-1)?.statement !== a) return false;
  if (a.row?.class === 'declaration' && isOneLine(above) && isOneLine(line)) return true;
  return a.row === b.row && isOneLine(above) === isOneLine(line);
}

function align(written: Written, run: readonly number[], gaps: readonly Gaps[], sizes: Sizes): void {
  const lines = run.map((i) => written.lines[i] as Line);
  for (const [n, i] of run.entries()) {
    const [first, value] = (lines[n] as Line).pieces;
    if (!first || !value) continue;
    const { statement } = first;
    if (value.statement !== statement || value.token.image === '{' || !hasWidth(statement)) continue;
    (gaps[i] as Gaps).before[1] = ' '.repeat(Math.max(1, headWidth(statement) - statement.head.image.length));
  }
  const cells = cellsOf(lines) ?? keptCells(written.text, lines);
  const orders = new Set(cells.flat().map(({ order }) => order));
  for (const order of [...orders].sort((a, b) => a - b)) {
    const here = run.flatMap((i, n) => {
      const cell = cells[n]?.find((one) => one.order === order);
      return cell && cell.piece > 0 && cell.piece < (lines[n] as Line).pieces.length ? [{ i, cell }] : [];
    });
    const ends = here.map(({ i, cell }) => sizes.end(i, cell.piece - 1));
    const stop = stopOf(
      here.map(({ cell }) => cell),
      ends,
    );
    for (const [k, { i, cell }] of here.entries())
      (gaps[i] as Gaps).before[cell.piece] = ' '.repeat(stop - (ends[k] as number));
  }
}

/** Where a column stands, counted from the statement word. */
function stopOf(cells: readonly Cell[], ends: readonly number[]): number {
  const column = cells[0]?.column;
  if (!column) return 0;
  const needed = widest(ends) + column.gap;
  if (needed <= column.base) return column.base;
  if (column.shared && cells.length === 1) return needed;
  return column.base + Math.ceil((needed - column.base) / column.step) * column.step;
}

/** No spreading: a run may have more lines than a call may have arguments. */
const widest = (widths: readonly number[]) => widths.reduce((most, width) => Math.max(most, width), 0);

const hasWidth = ({ row }: Statement) => row?.class !== 'declaration' && row?.class !== 'finding';

/** A line that goes on with the statement above is indented to its values, or by one level before a clause. */
function hang({ lines, unsureFrom }: Written, line: Line, i: number, gaps: readonly Gaps[], sizes: Sizes): void {
  const first = line.pieces[0];
  if (!first || line.frozen || i >= unsureFrom) return;
  const { token, statement } = first;
  if (token === statement.head || token.image === '{' || token.image === '}') return;
  const above = lines[statement.firstLine] as Line;
  const opens = above.pieces[0]?.token === statement.head && !above.frozen;
  (gaps[i] as Gaps).lead =
    indent(statement.depth) + ' '.repeat(opens ? hanging(statement, token.image, gaps, sizes, above) : 4);
}

function hanging(statement: Statement, word: string, gaps: readonly Gaps[], sizes: Sizes, above: Line): number {
  if (!statement.sound) return 4;
  if (statement.row?.class === 'item') {
    const clause = cellsOf([above])?.[0]?.find(({ order }) => order === 1);
    if (clause && clause.piece > 0) {
      const i = statement.firstLine;
      return sizes.end(i, clause.piece - 1) + (gaps[i]?.before[clause.piece]?.length ?? 1);
    }
  }
  const isClause = statement.row?.walk.clauses.has(word) ?? false;
  return isClause && statement.row?.block === undefined ? 2 : headWidth(statement);
}

/** A comment behind a line keeps its column where it fits; those of adjacent lines that stand below each other stay so. */
function placeRemarks({ lines }: Written, gaps: readonly Gaps[], sizes: Sizes): void {
  const columnOf = ({ pieces, comment, start, frozen }: Line): number | undefined => {
    const isLeft = frozen || pieces.length === 0 || pieces.at(-1)?.statement.sound === false;
    return comment && !isLeft ? comment.startOffset - start : undefined;
  };
  for (let i = 0; i < lines.length; ) {
    const column = columnOf(lines[i] as Line);
    let end = i + 1;
    if (column !== undefined) {
      while (end < lines.length && columnOf(lines[end] as Line) === column) end++;
      const ends = lines.slice(i, end).map(({ pieces }, k) => sizes.lead(i + k) + sizes.end(i + k, pieces.length - 1));
      const at = Math.max(column, widest(ends) + 2);
      for (const [k, width] of ends.entries()) (gaps[i + k] as Gaps).remark = ' '.repeat(at - width);
    }
    i = end;
  }
}
