// A text as lines: the tree of statements, words and values that everything else is read from.
import type { IToken } from 'chevrotain';
import type { Term } from '../values/quantity.ts';
import { type LayoutOptions, layout } from './layout.ts';
import type { Problem, Span } from './problem.ts';
import { unquoted } from './text.ts';
import { lex } from './tokens.ts';

/** One piece of a line, with its offsets. */
export type Part =
  | {
      readonly kind: 'word' | 'clause' | 'date' | 'time' | 'monthday' | 'comma';
      readonly text: string;
      readonly at: Span;
    }
  /** `text` is what stands between the quotes, unescaped; `closed` is false for a text that the line ended. */
  | { readonly kind: 'text'; readonly text: string; readonly closed: boolean; readonly at: Span }
  | { readonly kind: 'quantity'; readonly terms: readonly Term[]; readonly per?: string; readonly at: Span }
  /** A slip that the lexer knows, or anything else that is no token; `slip` names the kind. */
  | { readonly kind: 'mistake'; readonly slip: string; readonly text: string; readonly at: Span };

/** A statement as written: its first word, what follows, and the lines of its block, if it has one. */
export interface Line {
  readonly head: string;
  readonly headAt: Span;
  /** False when the first word opens no statement in this block; such a line is kept whole. */
  readonly known: boolean;
  readonly parts: readonly Part[];
  readonly block: readonly Line[] | undefined;
  /** From the first word to the end of the block's heading (not of its block). */
  readonly at: Span;
  /** From the first word to the closing brace. */
  readonly whole: Span;
  /** The `##` lines directly above. */
  readonly doc?: string;
}

export interface Lines {
  readonly lines: readonly Line[];
  readonly problems: readonly Problem[];
}

/** Reads a text into lines. Never fails. */
export function readLines(text: string, options: LayoutOptions): Lines {
  const { tokens, comments } = lex(text);
  const laid = layout(tokens, options);
  return { lines: linesOf(laid.tokens, docsAbove(text, comments)), problems: laid.problems };
}

/** The lines of a token stream that the layout pass has been over. */
export function linesOf(tokens: readonly IToken[], docs: ReadonlyMap<number, string> = new Map()): Line[] {
  let i = 0;
  const nameAt = (k: number) => tokens[k]?.tokenType.name;

  const block = (): Line[] => {
    const out: Line[] = [];
    while (i < tokens.length && nameAt(i) !== '}') out.push(line());
    return out;
  };

  const line = (): Line => {
    const first = tokens[i++] as IToken;
    const parts: Part[] = [];
    let inner: Line[] | undefined;
    let end = endOf(first);
    let wholeEnd = end;
    while (i < tokens.length) {
      const token = tokens[i] as IToken;
      const name = token.tokenType.name;
      if (name === 'EOL') {
        i++;
        break;
      }
      if (name === '}') break;
      if (name === '{') {
        i++;
        inner = block();
        if (nameAt(i) === '}') wholeEnd = endOf(tokens[i++] as IToken);
        continue;
      }
      const part = name === 'NUMBER' || name === 'FRACTION' ? quantity() : simple(token, name);
      parts.push(part);
      end = wholeEnd = part.at[1];
    }
    const doc = docs.get(first.startLine as number);
    const headAt: Span = [first.startOffset, endOf(first)];
    return {
      head: first.image,
      headAt,
      known: first.tokenType.name !== 'UNKNOWN',
      parts,
      block: inner,
      at: [headAt[0], end],
      whole: [headAt[0], Math.max(wholeEnd, end)],
      ...(doc === undefined ? {} : { doc }),
    };
  };

  const quantity = (): Part => {
    const start = (tokens[i] as IToken).startOffset;
    const terms: Term[] = [];
    let per: string | undefined;
    while (nameAt(i) === 'NUMBER' || nameAt(i) === 'FRACTION') {
      const amount = (tokens[i++] as IToken).image;
      terms.push(nameAt(i) === 'UNIT' ? { amount, unit: (tokens[i++] as IToken).image } : { amount });
    }
    if (nameAt(i) === 'PER' && nameAt(i + 1) === 'UNIT') {
      per = (tokens[i + 1] as IToken).image;
      i += 2;
    }
    const at: Span = [start, endOf(tokens[i - 1] as IToken)];
    return per === undefined ? { kind: 'quantity', terms, at } : { kind: 'quantity', terms, per, at };
  };

  const simple = (token: IToken, name: string): Part => {
    i++;
    const at: Span = [token.startOffset, endOf(token)];
    const text = token.image;
    switch (name) {
      case 'WORD':
        return { kind: 'word', text, at };
      case 'CLAUSE':
        return { kind: 'clause', text, at };
      case 'DATE':
        return { kind: 'date', text, at };
      case 'TIME':
        return { kind: 'time', text, at };
      case 'MONTHDAY':
        return { kind: 'monthday', text, at };
      case ',':
        return { kind: 'comma', text, at };
      case 'STRING':
        return { kind: 'text', ...unquoted(text), at };
      default:
        return { kind: 'mistake', slip: name, text, at };
    }
  };

  const out: Line[] = [];
  while (i < tokens.length) {
    if (nameAt(i) === '}') i++;
    else out.push(line());
  }
  return out;
}

const endOf = (token: IToken) => (token.endOffset as number) + 1;

/** The text of the `##` lines that stand directly above a line, by that line's number. */
function docsAbove(text: string, comments: readonly IToken[]): Map<number, string> {
  const docs = new Map<number, string>();
  if (!text.includes('##')) return docs;
  for (const comment of comments) {
    if (!comment.image.startsWith('##')) continue;
    const lineStart = comment.startOffset - (comment.startColumn as number) + 1;
    if (text.slice(lineStart, comment.startOffset).trim() !== '') continue;
    const number = comment.startLine as number;
    const above = docs.get(number);
    const here = comment.image.replace(/^#+\s?/, '');
    if (above !== undefined) docs.delete(number);
    docs.set(number + 1, above === undefined ? here : `${above}\n${here}`);
  }
  return docs;
}
