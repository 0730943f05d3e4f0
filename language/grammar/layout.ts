// The layout pass: one walk over the tokens, between lexer and parser. It turns physical lines into statements.
//
// 1. A statement ends with its line. It goes on in the next line after a comma, or when that line begins with a comma
//    or a clause word. After a comma, a line that begins with a statement word of this block is a new statement all the
//    same; in a block whose lines begin with names it goes on only when it is indented deeper.
// 2. In a block that opens and closes on one line a statement word begins the next statement.
// 3. Braces decide nesting. Only where the braces of a file do not balance is indentation used to guess.
import { createTokenInstance, type IToken, type TokenType } from 'chevrotain';
import { type BlockKind, blockOpenedBy, unknownBlock } from './kinds.ts';
import { deepest } from './limits.ts';
import type { Problem } from './problem.ts';
import { isClosed } from './text.ts';
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
const STRING = tokenNamed('STRING');

/** Set words are reserved like clause words, but open a line of findings (`rest sound`) and never continue one. */
const sets = new Set(['all', 'rest']);

export interface LayoutOptions {
  readonly root: BlockKind;
  readonly clauseWords: ReadonlySet<string>;
  /** The text ends at a cursor: on a new line a new statement is meant. */
  readonly partial?: boolean;
}

interface Open {
  readonly kind: BlockKind;
  readonly column: number;
  readonly token: IToken | undefined;
  readonly oneLine: boolean;
}

/** Logical lines, marked by EOL tokens of no width; units, clause words and unknown statement words retagged. Changes the tokens in place. */
export function layout(
  input: readonly IToken[],
  options: LayoutOptions,
): { readonly tokens: IToken[]; readonly problems: Problem[] } {
  const out: IToken[] = [];
  const problems: Problem[] = [];
  const stack: Open[] = [{ kind: options.root, column: -1, token: undefined, oneLine: false }];
  const balance = braceBalance(input);
  let skippedDepth = 0;
  let lineStart = true; // the next token opens a logical line
  let head: IToken | undefined; // first token of the current logical line
  let newline = true; // a physical line end stood before the current token
  let prev: IToken | undefined;

  const top = () => stack[stack.length - 1] as Open;
  const endLine = () => {
    if (!lineStart && prev) out.push(endOfLineAfter(prev));
    lineStart = true;
    head = undefined;
  };
  const closeGuessed = (at: IToken) => {
    endLine();
    out.push(madeAfter(at, CLOSE, '}'));
    const open = top().token ?? at;
    problems.push(unclosedBlock(open, at, `after line ${at.startLine}`));
    stack.pop();
    prev = at;
    lineStart = false;
    endLine();
  };

  for (let i = 0; i < input.length; i++) {
    const token = input[i] as IToken;
    const type = token.tokenType;
    if (skippedDepth > 0) {
      if (type === OPEN) skippedDepth++;
      else if (type === CLOSE) skippedDepth--;
      else if (type === EOL) newline = true;
      continue;
    }
    if (type === EOL) {
      newline = true;
      continue;
    }
    const word = token.image;
    const isWord = type === WORD;
    const clause = isWord && options.clauseWords.has(word);
    let isHead = isWord && top().kind.heads.has(word);

    // Does a new statement start here?
    if (newline && !lineStart && prev && (type !== OPEN || prev.tokenType === CLOSE)) {
      const afterComma = prev.tokenType === COMMA;
      const deeper = column(token) > (head ? column(head) : 0);
      const goesOn =
        prev.tokenType !== CLOSE &&
        ((clause && !isHead && !sets.has(word)) ||
          type === COMMA ||
          (afterComma && !isHead && (deeper || !top().kind.names)));
      if (!goesOn) {
        const opens = balance < 0 && head && deeper ? blockOpenedBy(top().kind, head.image, word) : unknownBlock;
        if (head && opens !== unknownBlock && type !== CLOSE && stack.length < deepest) {
          // A block was meant here, its brace is gone.
          problems.push(missingOpenBrace(head, prev));
          out.push(madeAfter(prev, OPEN, '{'));
          stack.push({ kind: opens, column: column(head), token: head, oneLine: false });
          lineStart = true;
          head = undefined;
          isHead = isWord && opens.heads.has(word);
        } else endLine();
      }
    }
    if (
      !lineStart &&
      !newline &&
      top().oneLine &&
      isHead &&
      !clause &&
      prev &&
      prev.tokenType !== COMMA &&
      prev.tokenType !== CLAUSE
    )
      endLine();

    // Repairs, only where braces do not balance: a line no deeper than the heading of a block, whose word fits outside, ends the block.
    if (balance > 0 && newline && lineStart && type !== CLOSE && prev) {
      while (
        stack.length > 1 &&
        column(token) <= top().column &&
        stack.slice(0, -1).some((open) => open.kind.heads.has(word))
      )
        closeGuessed(prev);
      isHead = isWord && top().kind.heads.has(word);
    }
    if (balance > 0 && type === CLOSE && newline && stack.length > 2 && column(token) < top().column && prev)
      closeGuessed(prev);

    if (type === CLOSE && (stack.length === 1 || (balance < 0 && newline && column(token) > top().column))) {
      endLine();
      problems.push({
        ...problem(token, 'stray-brace', 'This `}` closes nothing.'),
        fixes: [{ label: 'Remove this `}`', at: [token.startOffset, token.startOffset + 1], text: '' }],
      });
      newline = false;
      lineStart = true;
      continue;
    }

    if (type === OPEN) {
      if (stack.length >= deepest) {
        problems.push(
          problem(token, 'nested-too-deep', 'Blocks are nested too deep here; what stands inside is not read.'),
        );
        skippedDepth = 1;
        continue;
      }
      if (!head) {
        problems.push(
          problem(token, 'missing-heading', 'A heading is missing before this `{`, such as `rig Heron {`.'),
        );
        out.push(madeBefore(token, UNKNOWN));
      }
      const inside = nextReal(input, i);
      const kind = blockOpenedBy(top().kind, head?.image ?? '', inside?.image);
      const oneLine = input[i + 1] !== undefined && input[i + 1]?.tokenType !== EOL;
      out.push(token);
      stack.push({ kind, column: head ? column(head) : column(token), token: head ?? token, oneLine });
      prev = token;
      newline = false;
      lineStart = true;
      head = undefined;
      continue;
    }
    if (type === CLOSE) {
      endLine();
      stack.pop();
      out.push(token);
      prev = token;
      newline = false;
      lineStart = false;
      head = undefined;
      const next = input[i + 1];
      if (next && next.tokenType !== EOL && next.tokenType !== CLOSE) endLine();
      continue;
    }

    if (lineStart) {
      head = token;
      lineStart = false;
      const kind = top().kind;
      const fits = isWord && (isHead || (kind.names && (!clause || sets.has(word))));
      if (!fits) retag(token, UNKNOWN);
    } else if (clause) {
      const perUnit =
        word === 'per' && prev && (prev.tokenType === UNIT || isNumber(prev)) && input[i + 1]?.tokenType === WORD;
      retag(token, perUnit ? PER : CLAUSE);
    } else if ((isWord || type === PERCENT) && prev && (isNumber(prev) || prev.tokenType === PER)) {
      retag(token, UNIT);
    } else if (
      type === NUMBER &&
      prev &&
      /^(19|20|21)\d\d$/.test(word) &&
      (prev.image === 'about' || (prev.image === 'before' && !newline))
    ) {
      retag(token, DATE); // a bare year: only behind `about` or `before`, or the next word would be its unit
    }
    out.push(token);
    prev = token;
    newline = false;
  }

  if (options.partial) {
    if (newline && prev && prev.tokenType !== COMMA) endLine();
    return { tokens: out, problems };
  }
  if (prev) endLine();
  while (stack.length > 1 && prev) {
    const open = stack.pop() as Open;
    problems.push(unclosedBlock(open.token ?? prev, prev, 'at the end of the file'));
    out.push(madeAfter(prev, CLOSE, '}'), endOfLineAfter(prev));
  }
  return { tokens: out, problems };
}

const column = (token: IToken) => token.startColumn ?? 1;
const isNumber = (token: IToken) => token.tokenType === NUMBER || token.tokenType === FRACTION;

function retag(token: IToken, type: TokenType): void {
  token.tokenType = type;
  token.tokenTypeIdx = type.tokenTypeIdx as number;
}

/** Opening braces less closing ones. */
function braceBalance(tokens: readonly IToken[]): number {
  let n = 0;
  for (const token of tokens) {
    if (token.tokenType === OPEN) n++;
    else if (token.tokenType === CLOSE) n--;
  }
  return n;
}

function nextReal(tokens: readonly IToken[], i: number): IToken | undefined {
  for (let k = i + 1; k < tokens.length; k++) if (tokens[k]?.tokenType !== EOL) return tokens[k];
  return undefined;
}

/** An end of line stands right behind the last token and has no width, so that "is expected here" points to the cursor. */
function endOfLineAfter(token: IToken): IToken {
  return madeAfter(token, EOL, '');
}

function madeAfter(token: IToken, type: TokenType, image: string): IToken {
  const end = token.endOffset as number;
  const line = token.endLine as number;
  const at = token.endColumn as number;
  return made(createTokenInstance(type, image, end + 1, end, line, line, at + 1, at));
}

function madeBefore(token: IToken, type: TokenType): IToken {
  const line = token.startLine as number;
  const at = token.startColumn as number;
  return made(createTokenInstance(type, '', token.startOffset, token.startOffset - 1, line, line, at, at - 1));
}

/** The parser makes no syntax node for a token that stands for nothing in the text. */
function made(token: IToken): IToken {
  return Object.assign(token, { isInsertedInRecovery: true });
}

function problem(token: IToken, rule: string, message: string): Problem {
  return { rule, message, at: [token.startOffset, token.startOffset + token.image.length] };
}

function unclosedBlock(heading: IToken, last: IToken, where: string): Problem {
  const end = (last.endOffset as number) + 1;
  return {
    ...problem(heading, 'unclosed-block', `This block is not closed: a \`}\` is missing ${where}.`),
    fixes: [{ label: 'Close the block', at: [end, end], text: `\n${' '.repeat(column(heading) - 1)}}` }],
  };
}

function missingOpenBrace(heading: IToken, last: IToken): Problem {
  // A text that is not closed has swallowed the brace: it is mended there.
  if (last.tokenType === STRING && !isClosed(last.image))
    return problem(heading, 'missing-open-brace', 'A `{` is missing behind the text that is not closed in this line.');
  const end = (last.endOffset as number) + 1;
  return {
    ...problem(heading, 'missing-open-brace', 'A `{` is missing at the end of this line.'),
    fixes: [{ label: 'Write `{`', at: [end, end], text: ' {' }],
  };
}
