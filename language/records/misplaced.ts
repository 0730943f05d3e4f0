// What to say of a part of a line that fits nowhere in its row.
import type { Part } from '../grammar/lines.ts';
import type { Span } from '../grammar/problem.ts';
import { type Cursor, describe, peek, report, slip, write } from '../statements/cursor.ts';
import type { BlockTable, Row } from '../statements/row.ts';
import { nearest } from '../values/nearest.ts';

/** Reports the part at the cursor, which fits nowhere, and goes on behind it, or at the next clause. `said`: the clauses of the line so far. */
export function misplaced(cursor: Cursor, part: Part, row: Row, table: BlockTable, said: ReadonlySet<string>): void {
  if (part.kind === 'mistake') {
    slip(cursor, part);
    return;
  }
  cursor.index++;
  if (part.kind === 'comma') misplacedComma(cursor, part);
  else if (part.kind === 'word' && cursor.index > 1 && table.rows.has(part.text))
    secondStatement(cursor, part.text, part.at);
  else {
    if (part.kind === 'text' && row.walk.clauses.has('note')) textWithoutNote(cursor, part);
    else meaningless(cursor, part, row, said);
    skipToClause(cursor, row);
  }
}

function misplacedComma(cursor: Cursor, part: Part): void {
  if (peek(cursor) === undefined)
    report(cursor, 'unfinished-list', 'something is expected after this comma, or the comma goes', part.at, [
      { label: 'Remove this comma', at: part.at, text: '' },
    ]);
  else
    report(cursor, 'misplaced-comma', 'this comma has no meaning here', part.at, [
      { label: 'Remove this comma', at: part.at, text: '' },
    ]);
}

function secondStatement(cursor: Cursor, word: string, at: Span): void {
  const message = `\`${word}\` begins another statement: it stands on a line of its own`;
  report(cursor, 'two-statements', message, at, [{ label: 'Begin a new line here', at: [at[0], at[0]], text: '\n  ' }]);
  cursor.index = cursor.line.parts.length;
}

function textWithoutNote(cursor: Cursor, part: Part & { kind: 'text' }): void {
  const message = `this text belongs to nothing here; a remark is written as \`note "${part.text}"\``;
  report(cursor, 'misplaced', message, part.at, [
    { label: 'Write `note` before it', at: [part.at[0], part.at[0]], text: 'note ' },
  ]);
}

function meaningless(cursor: Cursor, part: Part, row: Row, said: ReadonlySet<string>): void {
  const text = describe(part);
  const close = part.kind === 'word' ? nearest(part.text, wordsOf(row)) : undefined;
  if (close !== undefined) {
    const message = `\`${text}\` has no meaning here; did you mean \`${close}\`?`;
    report(cursor, 'misplaced', message, part.at, [write(close, part.at)]);
    return;
  }
  report(cursor, 'misplaced', `\`${text}\` has no meaning here. ${whatMayStand(text, row, said)}`, part.at);
}

/** The words that the row knows: its clauses, and the words of closed lists in its places. */
function wordsOf(row: Row): string[] {
  const offered = row.walk.places.flatMap(([, place]) => place.slot.offers);
  return [...row.walk.clauses.keys(), ...offered.flatMap((offer) => (offer.kind === 'words' ? offer.words : []))];
}

function whatMayStand(text: string, row: Row, said: ReadonlySet<string>): string {
  const clauses = [...row.walk.clauses.values()];
  const holder = clauses.find(([, clause]) => clause.slot.inside?.includes(text));
  if (holder) {
    const [, { word, slot }] = holder;
    return `It belongs behind \`${word}\` and its value, as in \`${word} ${slot.example}\`.`;
  }
  const open = clauses.filter(([field]) => !said.has(field)).map(([, clause]) => `\`${clause.word}\``);
  if (open.length === 0) return `Nothing more is expected in this line, as in \`${row.example}\`.`;
  return `Here may stand ${open.join(', ')}, as in \`${row.example}\`.`;
}

/** After a value that could not be read, the line goes on at its next clause. Slips on the way are named, each with its fix. */
export function skipToClause(cursor: Cursor, row: Row): void {
  for (let part = peek(cursor); part; part = peek(cursor)) {
    if (part.kind === 'clause' && row.walk.clauses.has(part.text)) return;
    if (part.kind === 'mistake') slip(cursor, part);
    else cursor.index++;
  }
}
