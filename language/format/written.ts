// A text as the formatter sees it: its physical lines, and the statement that each token in them belongs to.
import type { IToken } from 'chevrotain';
import { headingMeant } from '../grammar/kinds.ts';
import { layout } from '../grammar/layout.ts';
import type { Problem } from '../grammar/problem.ts';
import { isClosed } from '../grammar/text.ts';
import { lex } from '../grammar/tokens.ts';
import { fileTable } from '../statements/file.ts';
import { blockKindOf, layoutOptions } from '../statements/layout-kinds.ts';
import { type BlockTable, type Row, rowIn } from '../statements/row.ts';

/** A statement: its row, and how deep it stands in blocks. */
export interface Statement {
  readonly head: IToken;
  /** Undefined for a word that opens no statement here. */
  readonly row: Row | undefined;
  readonly table: BlockTable | undefined;
  readonly parent: Statement | undefined;
  readonly depth: number;
  /** False where something in it is not understood: then its words are left as they stand. */
  sound: boolean;
  /** Its physical lines, counted from 0. */
  readonly firstLine: number;
  lastLine: number;
}

/** A token in its line. */
export interface Piece {
  readonly token: IToken;
  readonly statement: Statement;
}

/** A physical line: offsets of its start, of its end, and of what comes behind its line end. */
export interface Line {
  readonly start: number;
  end: number;
  next: number;
  readonly pieces: Piece[];
  comment: IToken | undefined;
  /** How many blocks are open where it starts. */
  readonly depth: number;
  /** Holds tokens that are not read: nothing in it is touched. */
  frozen: boolean;
}

export interface Written {
  readonly text: string;
  readonly lines: readonly Line[];
  /** What is wrong with the braces, and what is too long or too deep to be read. */
  readonly problems: readonly Problem[];
  /** From this line on the braces do not tell how deep a line stands. */
  readonly unsureFrom: number;
  /** Where the braces do not balance: what is read, without its places. */
  readonly reading: string;
}

/** Reads a text into physical lines. Never fails. */
export function writtenLines(text: string): Written {
  const { tokens, comments } = lex(text);
  const laid = layout(tokens, layoutOptions);
  const pieces = piecesOf(laid.tokens);
  const lines: Line[] = [];
  const open = (start: number, depth: number): Line => {
    const line = { start, end: text.length, next: text.length, pieces: [], comment: undefined, depth, frozen: false };
    lines.push(line);
    return line;
  };
  let line = open(0, 0);
  let depth = 0;
  let piece = 0;
  let comment = 0;
  const close = (end: number, next: number) => {
    line.end = end;
    line.next = next;
    const remark = comments[comment];
    if (remark && remark.startOffset < end) {
      line.comment = remark;
      comment++;
    }
  };
  for (const token of tokens) {
    if (token.tokenType.name === 'EOL') {
      const next = token.startOffset + token.image.length;
      close(token.startOffset, next);
      line = open(next, depth);
      continue;
    }
    const here = pieces[piece];
    if (here?.token !== token) {
      line.frozen = true; // it was not read
      continue;
    }
    piece++;
    line.pieces.push(here);
    here.statement.lastLine = lines.length - 1;
    depth = here.statement.depth + (token.image === '{' ? 1 : 0);
  }
  close(text.length, text.length);
  const reading =
    laid.problems.length === 0
      ? ''
      : laid.tokens.map(({ tokenType, image }) => `${tokenType.name} ${image}`).join('\n');
  return { text, lines, problems: laid.problems, unsureFrom: unsureFrom(laid.problems, pieces), reading };
}

/** The tokens that stand in the text, each with its statement. */
function piecesOf(tokens: readonly IToken[]): Piece[] {
  const out: Piece[] = [];
  const stack: { readonly table: BlockTable | undefined; readonly heading: Statement }[] = [];
  let current: Statement | undefined;
  const statement = (head: IToken): Statement => {
    const top = stack.at(-1);
    const table = top ? top.table : fileTable;
    const row = table && (rowIn(table, head.image) ?? table.names);
    const firstLine = (head.startLine as number) - 1;
    const sound = row !== undefined && head.tokenType.name !== 'UNKNOWN';
    const parent = top?.heading;
    return { head, row, table, parent, depth: stack.length, sound, firstLine, lastLine: firstLine };
  };
  for (const [i, token] of tokens.entries()) {
    const type = token.tokenType.name;
    if (type === 'EOL') {
      current = undefined;
      continue;
    }
    if (type === '}') current = stack.pop()?.heading;
    current ??= statement(token);
    if (token.image !== '') {
      if (!isUnderstood(token, out.at(-1)?.token)) current.sound = false;
      out.push({ token, statement: current });
    }
    if (type === '{') {
      stack.push({ heading: current, table: tableInside(current, tokens[i + 1]) });
      current = undefined;
    }
  }
  return out;
}

/** The table of the block that a heading opens, guessed if the heading is misspelt. */
function tableInside({ table, head }: Statement, firstInside: IToken | undefined): BlockTable | undefined {
  if (!table) return undefined;
  const meant = headingMeant(blockKindOf(table), head.image, firstInside?.image);
  return meant === undefined ? undefined : rowIn(table, meant)?.block;
}

const slips = new Set(['CURLY', 'SIGNED', 'SLASHED', 'GROUPED', 'MARKED', 'PERCENT', 'BAD']);

function isUnderstood({ tokenType, image }: IToken, before: IToken | undefined): boolean {
  const { name } = tokenType;
  if (name === 'STRING') return isClosed(image);
  // `2` and `1/2` with an odd blank between them are two tokens; with a plain one they would become one.
  if (name === 'FRACTION') return before?.tokenType.name !== 'NUMBER' || !/^\d+$/.test(before.image);
  return !slips.has(name);
}

/** The line of the outermost statement in which something is wrong with the braces first. */
function unsureFrom(problems: readonly Problem[], pieces: readonly Piece[]): number {
  if (problems.length === 0) return Number.POSITIVE_INFINITY;
  const first = problems.reduce((least, { at }) => Math.min(least, at[0]), Number.POSITIVE_INFINITY);
  let line = 0;
  for (const { token, statement } of pieces) {
    if (token.startOffset > first) break;
    if (statement.depth === 0) line = statement.firstLine;
  }
  return line;
}
