// A table of inspections: the rows of one rig, day and person become one block. One that is there already is left as it is.
import { linesOf } from '../authoring/added-record.ts';
import { recordInsertion } from '../authoring/inspection-place.ts';
import { recordBlocksOf } from '../authoring/record-blocks.ts';
import { quoted } from '../grammar/text.ts';
import { sets } from '../statements/words.ts';
import { readDay } from '../values/day.ts';
import { nearest } from '../values/nearest.ts';
import type { Import, RigThere, TableRow } from './import.ts';
import { type AnyColumn, inspectionColumns, type Said } from './kinds.ts';
import { type CellProblem, lineOf, lineProblem, type Piece, piece, textPiece } from './line.ts';
import { saidOf } from './said.ts';

export function importInspections(into: Import, rows: readonly TableRow[]): void {
  const groups = new Map<string, TableRow[]>();
  for (const one of rows) {
    const { rig, date, by } = one.said;
    const key = JSON.stringify([rig, date, by]);
    const known = groups.get(key);
    if (known) known.push(one);
    else groups.set(key, [one]);
  }
  for (const some of groups.values()) {
    const rig = into.rigOf(some[0] as TableRow);
    if (rig) inspection(into, rig, some);
  }
}

const findingLine = (said: Said): readonly Piece[] => [
  ...piece(said, 'item'),
  ...piece(said, 'condition'),
  ...piece(said, 'defect'),
  ...piece(said, 'stretch', 'from '),
  ...piece(said, 'moisture', 'moisture '),
  ...textPiece(said, 'note', 'note '),
];

function inspection(into: Import, rig: RigThere, rows: readonly TableRow[]): void {
  const [first] = rows;
  if (!first) return;
  const { date = '', by } = first.said;
  const day = readDay(date.replace(/^(about|before) /, ''));
  if (!day.ok) {
    for (const one of rows) into.refuse(one, 'date', day.message);
    return;
  }
  const resolved = into.resolved(rig);
  const all = resolved ? saidOf('inspections', into.draft.project, resolved) : [];
  const there = all.filter((said) => said.date === date && said.by === by);
  if (there.length > 0) {
    for (const one of rows) compareWith(into, one, there);
    return;
  }

  const items = (resolved?.rig.items ?? []).map(({ name }) => name);
  const wrong = rows.map((one) => problemOf(one.said, items));
  if (wrong.some((problem) => problem !== undefined)) {
    // Without one of its lines `rest sound` would say too much: all of it, or nothing.
    for (const [i, one] of rows.entries()) {
      const problem = wrong[i];
      const other = rows[wrong.findIndex((some) => some !== undefined)];
      if (problem) into.refuse(one, problem.column, problem.message);
      else into.refuse(one, 'item', `This inspection is left out whole, because of row ${other?.row.line}.`);
    }
    return;
  }
  const lines = rows.flatMap(({ said }) => (said.item === undefined ? [] : [lineOf(findingLine(said))]));
  const heading = `${date}${by === undefined ? '' : ` by ${quoted(by.replace(/\s+/g, ' '))}`}`;
  const rest = lines.length === 0 ? heading : [`${heading} {`, ...lines, '}'].join('\n');
  const blocks = recordBlocksOf(into.draft.project, into.draft.files, rig.declaration, rig.file);
  const change = recordInsertion(blocks, day.value.first, linesOf('inspected', rest));
  const [error] = change ? into.draft.insert(change, rig.file, 'other-lines') : [];
  if (!error) into.count('added', ...rows);
  else for (const one of rows) into.refuse(one, columnOf(one.said, error.message), error.message);
}

function problemOf(said: Said, items: readonly string[]): CellProblem | undefined {
  const { item } = said;
  const heading = lineProblem(
    [...piece(said, 'date', 'inspected '), ...textPiece(said, 'by', 'by ')],
    'rig x {\n',
    '\n}\n',
  );
  if (heading) return heading;
  if (item === undefined) {
    const column = inspectionColumns.find((one) => !['rig', 'date', 'by'].includes(one) && said[one] !== undefined);
    return (
      column && { column: 'item', message: `What ${column} is said of is missing: the name of a seam or an item.` }
    );
  }
  if (!items.includes(item) && !Object.hasOwn(sets, item)) {
    const close = nearest(item, items);
    const hint = close === undefined ? `It has ${items.join(', ') || 'none yet'}.` : `Did you mean \`${close}\`?`;
    return { column: 'item', message: `${said.rig} has no seam or item \`${item}\`. ${hint}` };
  }
  if (said.condition === undefined && said.defect === undefined)
    return { column: 'condition', message: 'What was seen is missing, such as sound, hairline or not-seen.' };
  return lineProblem(findingLine(said), 'rig x {\ninspected 2000-01-01 {\n', '\n}\n}\n');
}

/** Where several lines of an inspection speak of one item, the one that says the same counts. */
function compareWith(into: Import, one: TableRow, there: readonly Said[]): void {
  const { said } = one;
  const about = there.filter(({ item, stretch }) => item === said.item && stretch === said.stretch);
  const columns: readonly AnyColumn[] = ['condition', 'defect', 'moisture', 'note'];
  const same = about.find((other) => columns.every((column) => other[column] === said[column]));
  const isThere =
    same !== undefined || said.item === undefined || into.compare(one, about[0] ?? {}, about[0] ? columns : ['item']);
  if (isThere) into.count('there', one);
}

const columnOf = (said: Said, message: string): AnyColumn =>
  (['item', 'stretch', 'date'] as const).find(
    (column) => said[column] !== undefined && message.includes(said[column]),
  ) ?? 'date';
