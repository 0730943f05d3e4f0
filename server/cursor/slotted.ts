// Which typed place of its line each part belongs to: read along the row as the reader does, and going on where that fails.
import type { Part } from '../../language/grammar/lines.ts';
import type { Span } from '../../language/grammar/problem.ts';
import { cursorAt, peek } from '../../language/statements/cursor.ts';
import type { Clause } from '../../language/statements/row.ts';
import type { Slot } from '../../language/statements/slot.ts';
import { partsOf, type Statement } from './standing.ts';

/** A value of a line: its parts, and the clause that opens it, if one does. */
export interface Slotted {
  readonly slot: Slot<unknown>;
  /** The field of the record. */
  readonly field: string;
  readonly parts: readonly Part[];
  readonly clause?: { readonly clause: Clause; readonly part: Part };
}

/** The values of a statement in order; what belongs to none is left out. */
export function slottedParts(statement: Statement): Slotted[] {
  const { row, line } = statement;
  if (!row) return [];
  const parts = partsOf(statement);
  const cursor = cursorAt({ ...line, parts }, []);
  const { places, clauses } = row.walk;
  const out: Slotted[] = [];
  const opens = (part: Part | undefined) => part?.kind === 'clause' && clauses.has(part.text);
  /** Reads one value; one that cannot be read has all parts up to the next clause. */
  const take = (slot: Slot<unknown>, field: string, clause?: Slotted['clause']) => {
    const from = cursor.index;
    const read = slot.read(cursor) !== undefined;
    if (!read) while (peek(cursor) && !opens(peek(cursor))) cursor.index++;
    out.push({ slot, field, parts: parts.slice(from, cursor.index), ...(clause ? { clause } : {}) });
    return read;
  };
  for (const [field, { slot, optional }] of places) {
    const part = peek(cursor);
    if (!part) return out;
    if (opens(part) && !slot.accepts(part)) break;
    if (!slot.accepts(part) && optional) continue;
    if (!take(slot, field)) break;
  }
  for (let part = peek(cursor); part; part = peek(cursor)) {
    cursor.index++;
    const found = part.kind === 'clause' ? clauses.get(part.text) : undefined;
    if (found) take(found[1].slot, found[0], { clause: found[1], part });
  }
  return out;
}

/** From the first to the last part of a value, with the word that opens it if `whole`. */
export function spanOf({ parts, clause }: Slotted, whole = false): Span | undefined {
  const first = whole ? (clause?.part ?? parts[0]) : parts[0];
  const last = parts.at(-1) ?? (whole ? clause?.part : undefined);
  return first && last && [first.at[0], last.at[1]];
}
