// What the word under a cursor means: a word of the language, or a name that stands for something.
import type { Line, Part } from '../../language/grammar/lines.ts';
import type { Clause, Row } from '../../language/statements/row.ts';
import type { Offer } from '../../language/statements/slot.ts';
import { expectedAfter } from './expected.ts';
import { partsOf, type Statement, statementsAt } from './standing.ts';

export type Meaning = { readonly around: readonly Statement[]; readonly at: Part['at'] } & (
  | { readonly kind: 'statement'; readonly row: Row; readonly line: Line }
  | { readonly kind: 'clause'; readonly clause: Clause; readonly row: Row }
  /** A name or a word of a closed list; `offers` are the kinds of things that may stand here. */
  | { readonly kind: 'name'; readonly name: string; readonly offers: readonly Offer[]; readonly row: Row }
  | { readonly kind: 'quantity'; readonly part: Part & { readonly kind: 'quantity' }; readonly row: Row }
  | { readonly kind: 'text'; readonly text: string; readonly row: Row; readonly before: readonly Part[] }
);

/** The meaning of what stands at an offset; undefined between the words and in remarks. */
export function meaningAt(lines: readonly Line[], offset: number): Meaning | undefined {
  const around = statementsAt(lines, offset);
  const statement = around.at(-1);
  if (!statement?.row) return undefined;
  const { line, row, table } = statement;
  const within = ([from, to]: Part['at']) => from <= offset && offset <= to;
  if (within(line.headAt) && row !== table.names) return { kind: 'statement', around, at: line.headAt, row, line };
  const parts = partsOf(statement);
  // Between two parts that touch, the one that begins at the cursor is meant, unless it is a comma.
  const index = parts.findLastIndex((part) => part.kind !== 'comma' && within(part.at));
  const part = parts[index];
  return part && meaningOfPart(statement, part, parts.slice(0, index), around);
}

function meaningOfPart(
  { line, row }: Statement,
  part: Part,
  before: readonly Part[],
  around: readonly Statement[],
): Meaning | undefined {
  if (!row) return undefined;
  const base = { around, at: part.at, row };
  switch (part.kind) {
    case 'word': {
      const offers = expectedAfter(line, row, before, new Set()).offers.map(({ offer }) => offer);
      return { ...base, kind: 'name', name: part.text, offers };
    }
    case 'clause': {
      const clause = row.walk.clauses.get(part.text)?.[1];
      if (clause) return { ...base, kind: 'clause', clause };
      const offers = expectedAfter(line, row, before, new Set()).offers.map(({ offer }) => offer);
      return { ...base, kind: 'name', name: part.text, offers };
    }
    case 'quantity':
      return { ...base, kind: 'quantity', part };
    case 'text':
      return { ...base, kind: 'text', text: part.text, before };
    default:
      return undefined;
  }
}
