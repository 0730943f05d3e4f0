// Ranges of edits.
import type { Range } from 'vscode-languageserver';
import type { Span } from '../../language/grammar/problem.ts';
import { rangeOf } from '../places.ts';
import type { Here } from './here.ts';

/** What goes and leaves an empty line behind takes that with it. */
export function withoutEmptyLine([from, to]: Span, { text, document }: Here): Range {
  if (text[to - 1] === '\n') return rangeOf(document, [from, to]);
  const before = /\n?[ \t]*$/.exec(text.slice(0, from))?.[0] ?? '';
  const isWholeLine = (before.startsWith('\n') || before.length === from) && /^[ \t]*(\r?\n|$)/.test(text.slice(to));
  if (!isWholeLine) return rangeOf(document, [from, to]);
  const start = from - before.length + (before.startsWith('\n') ? 1 : 0);
  return rangeOf(document, [start, to + (/^[ \t]*(\r?\n)?/.exec(text.slice(to))?.[0].length ?? 0)]);
}
