// What to select next: word, value, clause, line, block, declaration, file.
import type { Position, SelectionRange } from 'vscode-languageserver';
import type { Span } from '../../language/grammar/problem.ts';
import { slottedParts, spanOf } from '../cursor/slotted.ts';
import { partsOf, type Statement, statementsAt } from '../cursor/standing.ts';
import { rangeOf } from '../places.ts';
import { type Features, type Here, hereAt } from './here.ts';

/** The ranges around each position, from the word at it to the whole file. */
export function selectionRanges(features: Features, path: string, positions: readonly Position[]): SelectionRange[] {
  const here = hereAt(features, path);
  return here ? positions.map((position) => around(here, here.document.offsetAt(position))) : [];
}

function around(here: Here, offset: number): SelectionRange {
  const spans: Span[] = [[0, here.text.length]];
  const add = (span: Span | undefined) => {
    const [from, to] = spans.at(-1) as Span;
    const isInside = span && span[0] <= offset && offset <= span[1] && span[0] >= from && span[1] <= to;
    if (isInside && (span[0] > from || span[1] < to)) spans.push(span);
  };
  for (const statement of statementsAt(here.lines.lines, offset)) {
    const { line } = statement;
    add(line.whole);
    add(insideOf(here.text, statement));
    add(line.at);
    add(line.headAt);
    for (const slotted of slottedParts(statement)) {
      add(spanOf(slotted, true));
      add(spanOf(slotted));
    }
    for (const part of partsOf(statement)) {
      if (part.kind === 'comma') continue;
      add(part.at);
      if (part.kind === 'text') add([part.at[0] + 1, part.at[1] - (part.closed ? 1 : 0)]);
    }
  }
  const start: SelectionRange = { range: rangeOf(here.document, spans[0] as Span) };
  return spans
    .slice(1)
    .reduce((parent, span): SelectionRange => ({ range: rangeOf(here.document, span), parent }), start);
}

/** What stands between the braces of a block. */
function insideOf(text: string, { line }: Statement): Span | undefined {
  if (!line.block) return undefined;
  const brace = text.indexOf('{', line.at[1] - 1);
  const closed = text[line.whole[1] - 1] === '}';
  return brace < 0 || brace > line.whole[1] ? undefined : [brace + 1, line.whole[1] - (closed ? 1 : 0)];
}
