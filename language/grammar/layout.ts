// The layout pass: one walk over the tokens, between lexer and parser. It turns physical lines into statements.
//
// 1. A statement ends with its line. It goes on in the next line after a comma, or when that line begins with a comma
//    or a clause word. After a comma, a line that begins with a statement word of this block is a new statement all the
//    same; in a block whose lines begin with names it goes on only when it is indented deeper.
// 2. In a block that opens and closes on one line a statement word begins the next statement.
// 3. Braces decide nesting. Only where the braces of a file do not balance is indentation used to guess.
import type { IToken } from 'chevrotain';
import { braceBalance, missingOpenBrace, problemAt, strayBrace, unclosedBlock } from './braces.ts';
import { type BlockKind, blockOpenedBy, unknownBlock } from './kinds.ts';
import { deepest, longestLine } from './limits.ts';
import { madeAfter, madeBefore, retag } from './made.ts';
import type { Problem } from './problem.ts';
import { tokenNamed } from './tokens.ts';

const EOL = tokenNamed('EOL');
const UNKNOWN = tokenNamed('UNKNOWN');
const WORD = tokenNamed('WORD');
const CLAUSE = tokenNamed('CLAUSE');
const UNIT = tokenNamed('UNIT');
const PER = tokenNamed('PER');
const OPEN = tokenNamed('{');
const CLOSE = tokenNamed('}');
const COMMA = tokenNamed(',');
const NUMBER = tokenNamed('NUMBER');
const FRACTION = tokenNamed('FRACTION');
const PERCENT = tokenNamed('PERCENT');
const DATE = tokenNamed('DATE');

/** Set words are reserved like clause words, but open a line of findings (`rest sound`) and never continue one. */
const sets = new Set(['all', 'rest']);

export interface LayoutOptions {
  readonly root: BlockKind;
  readonly clauseWords: ReadonlySet<string>;
  /** The text ends at a cursor: on a new line a new statement is meant. */
  readonly partial?: boolean;
}

/** A block that is open at the current token. */
interface Open {
  readonly kind: BlockKind;
  /** The column of its heading. */
  readonly column: number;
  readonly heading: IToken | undefined;
  readonly oneLine: boolean;
}

interface Pass {
  readonly input: readonly IToken[];
  readonly options: LayoutOptions;
  /** Opening braces less closing ones, of the whole file. */
  readonly balance: number;
  readonly out: IToken[];
  readonly problems: Problem[];
  readonly stack: Open[];
  /** The innermost open block. */
  top: Open;
  /** First token of the current statement; undefined where the next token opens one, and behind a closed block. */
  head: IToken | undefined;
  /** Does the next token open a statement? */
  lineStart: boolean;
  /** Did a physical line end stand before the current token? */
  newline: boolean;
  prev: IToken | undefined;
  /** Of the current statement so far, in tokens. */
  length: number;
  /** How many braces of blocks that are nested too deep are open. */
  skipped: number;
}

/** Marks statements by EOL tokens of no width, and retags units, clause words and unknown statement words. Changes the tokens in place. */
export function layout(
  input: readonly IToken[],
  options: LayoutOptions,
): { readonly tokens: IToken[]; readonly problems: Problem[] } {
  const root: Open = { kind: options.root, column: -1, heading: undefined, oneLine: false };
  const pass: Pass = {
    input,
    options,
    balance: braceBalance(input),
    out: [],
    problems: [],
    stack: [root],
    top: root,
    head: undefined,
    lineStart: true,
    newline: true,
    prev: undefined,
    length: 0,
    skipped: 0,
  };
  for (let i = 0; i < input.length; i++) {
    const token = input[i] as IToken;
    const type = token.tokenType;
    if (type === EOL) pass.newline = true;
    else if (pass.skipped > 0) pass.skipped += type === OPEN ? 1 : type === CLOSE ? -1 : 0;
    else {
      endStatementBefore(pass, token);
      if (pass.balance > 0) closeBlocksBefore(pass, token);
      if (type === OPEN) openBlock(pass, token, i);
      else if (type === CLOSE) closeBlock(pass, token, i);
      else word(pass, token, i);
      pass.newline = false;
    }
  }
  finish(pass);
  return { tokens: pass.out, problems: pass.problems };
}

/** Ends the current statement if the token begins another. */
function endStatementBefore(pass: Pass, token: IToken): void {
  const { prev, head, top } = pass;
  if (pass.lineStart || !prev) return;
  const type = token.tokenType;
  if (!pass.newline) {
    if (
      top.oneLine &&
      prev.tokenType !== COMMA &&
      prev.tokenType !== CLAUSE &&
      isHead(pass, token) &&
      !isClause(pass, token)
    )
      endStatement(pass);
    return;
  }
  if (type === OPEN && prev.tokenType !== CLOSE) return; // the brace may stand on the next line
  if (goesOn(pass, token, prev)) return;
  if (pass.balance < 0 && head && type !== CLOSE && isDeeper(token, head) && pass.stack.length < deepest) {
    const kind = blockOpenedBy(top.kind, head.image, token.image);
    if (kind !== unknownBlock) {
      // A block was meant here, its brace is gone.
      pass.problems.push(missingOpenBrace(head, prev));
      pass.out.push(madeAfter(prev, OPEN));
      push(pass, { kind, column: column(head), heading: head, oneLine: false });
      return;
    }
  }
  endStatement(pass);
}

/** Does a statement go on with this token, the first of its line? */
function goesOn(pass: Pass, token: IToken, prev: IToken): boolean {
  if (prev.tokenType === CLOSE) return false;
  if (token.tokenType === COMMA) return true;
  const head = isHead(pass, token);
  if (isClause(pass, token) && !head && !sets.has(token.image)) return true;
  if (prev.tokenType !== COMMA || head) return false;
  return !pass.top.kind.names || (pass.head !== undefined && isDeeper(token, pass.head));
}

/** Where closing braces are missing: a line no deeper than the heading of a block, whose word fits outside, ends the block. */
function closeBlocksBefore(pass: Pass, token: IToken): void {
  const { prev } = pass;
  if (!pass.newline || !prev) return;
  if (token.tokenType === CLOSE) {
    if (pass.stack.length > 2 && column(token) < pass.top.column) closeGuessed(pass, prev);
    return;
  }
  if (!pass.lineStart) return;
  while (
    pass.stack.length > 1 &&
    column(token) <= pass.top.column &&
    pass.stack.slice(0, -1).some((open) => open.kind.heads.has(token.image))
  )
    closeGuessed(pass, prev);
}

function closeGuessed(pass: Pass, last: IToken): void {
  endStatement(pass);
  pass.out.push(madeAfter(last, CLOSE), madeAfter(last, EOL));
  pass.problems.push(unclosedBlock(pass.top.heading ?? last, last, `after line ${last.startLine}`));
  pop(pass);
}

function openBlock(pass: Pass, brace: IToken, i: number): void {
  const { head } = pass;
  if (pass.stack.length >= deepest) {
    const message = 'Blocks are nested too deep here; what stands inside is not read.';
    pass.problems.push(problemAt(brace, 'nested-too-deep', message));
    pass.skipped = 1;
    return;
  }
  if (!head) {
    const message = 'A heading is missing before this `{`, such as `rig Heron {`.';
    pass.problems.push(problemAt(brace, 'missing-heading', message));
    pass.out.push(madeBefore(brace, UNKNOWN));
  }
  const next = pass.input[i + 1];
  pass.out.push(brace);
  push(pass, {
    kind: blockOpenedBy(pass.top.kind, head?.image ?? '', nextReal(pass.input, i)?.image),
    column: column(head ?? brace),
    heading: head ?? brace,
    oneLine: next !== undefined && next.tokenType !== EOL,
  });
  pass.prev = brace;
}

function closeBlock(pass: Pass, brace: IToken, i: number): void {
  endStatement(pass);
  if (pass.stack.length === 1 || (pass.balance < 0 && pass.newline && column(brace) > pass.top.column)) {
    pass.problems.push(strayBrace(brace));
    return;
  }
  pop(pass);
  pass.out.push(brace);
  pass.prev = brace;
  pass.lineStart = false;
  const next = pass.input[i + 1];
  if (next && next.tokenType !== EOL && next.tokenType !== CLOSE) endStatement(pass);
}

/** Any other token: the first of a statement, or one that goes on with it. */
function word(pass: Pass, token: IToken, i: number): void {
  if (pass.lineStart) {
    const { names } = pass.top.kind;
    const fits = isHead(pass, token) || (names && isWord(token) && (!isClause(pass, token) || sets.has(token.image)));
    if (!fits) retag(token, UNKNOWN);
    pass.head = token;
    pass.length = 0;
    pass.lineStart = false;
  } else if (++pass.length >= longestLine) {
    if (pass.length > longestLine) return;
    const message = `This line has more than ${longestLine} words: from here on it is not read.`;
    pass.problems.push(problemAt(token, 'line-too-long', message));
    return;
  } else tag(pass, token, pass.input[i + 1]);
  pass.out.push(token);
  pass.prev = token;
}

/** Tags a token inside a statement by what stands before it. */
function tag(pass: Pass, token: IToken, next: IToken | undefined): void {
  const prev = pass.prev as IToken;
  const type = token.tokenType;
  if (isClause(pass, token)) {
    const perUnit = token.image === 'per' && (prev.tokenType === UNIT || isNumber(prev)) && next?.tokenType === WORD;
    retag(token, perUnit ? PER : CLAUSE);
  } else if ((type === WORD || type === PERCENT) && (isNumber(prev) || prev.tokenType === PER)) {
    retag(token, UNIT);
  } else if (
    type === NUMBER &&
    (prev.image === 'about' || (prev.image === 'before' && !pass.newline)) &&
    /^(19|20|21)\d\d$/.test(token.image)
  ) {
    retag(token, DATE); // a bare year: only behind `about` or `before`, or the next word would be its unit
  }
}

function finish(pass: Pass): void {
  const { prev } = pass;
  if (!prev) return;
  if (pass.options.partial) {
    if (pass.newline && prev.tokenType !== COMMA) endStatement(pass);
    return;
  }
  endStatement(pass);
  while (pass.stack.length > 1) {
    pass.problems.push(unclosedBlock(pass.top.heading ?? prev, prev, 'at the end of the file'));
    pass.out.push(madeAfter(prev, CLOSE), madeAfter(prev, EOL));
    pop(pass);
  }
}

function endStatement(pass: Pass): void {
  if (!pass.lineStart && pass.prev) pass.out.push(madeAfter(pass.prev, EOL));
  pass.lineStart = true;
  pass.head = undefined;
}

function push(pass: Pass, open: Open): void {
  pass.stack.push(open);
  pass.top = open;
  pass.lineStart = true;
  pass.head = undefined;
}

function pop(pass: Pass): void {
  pass.stack.pop();
  pass.top = pass.stack[pass.stack.length - 1] as Open;
}

const column = (token: IToken) => token.startColumn ?? 1;
const isDeeper = (token: IToken, head: IToken) => column(token) > column(head);
const isWord = (token: IToken) => token.tokenType === WORD;
const isNumber = (token: IToken) => token.tokenType === NUMBER || token.tokenType === FRACTION;
const isHead = (pass: Pass, token: IToken) => isWord(token) && pass.top.kind.heads.has(token.image);
const isClause = (pass: Pass, token: IToken) => isWord(token) && pass.options.clauseWords.has(token.image);

function nextReal(tokens: readonly IToken[], i: number): IToken | undefined {
  for (let k = i + 1; k < tokens.length; k++) if (tokens[k]?.tokenType !== EOL) return tokens[k];
  return undefined;
}
