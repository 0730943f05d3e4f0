// A table of rigs: new ones get a file each, of others only what they do not say yet is added.
import { lineInsertion } from '../authoring/inspection-place.ts';
import { rigTable } from '../statements/rig.ts';
import type { Import, ImportOptions, RigThere, TableRow } from './import.ts';
import { type AnyColumn, type RigColumn, rigColumns, type Said } from './kinds.ts';
import { lineOf, lineProblem, type Piece, piece, textPiece } from './line.ts';
import { saidOf } from './said.ts';

export function importRigs(into: Import, rows: readonly TableRow[], options: ImportOptions): void {
  for (const one of rows) {
    const { said } = one;
    const wrong = problemsOf(said);
    if (wrong) into.refuse(one, wrong.column, wrong.message);
    else {
      const rig = into.known(said.rig ?? '');
      if (rig) complete(into, one, rig);
      else create(into, one, options);
    }
  }
}

const headingOf = (said: Said): readonly Piece[] => [
  ...piece(said, 'rig', 'rig '),
  ...piece(said, 'like', 'like '),
  ...piece(said, 'under', 'under '),
];

/** The lines that columns stand for, each with its columns; the roof needs two of them. */
function linesFor(said: Said): readonly (readonly Piece[])[] {
  const roof = [...piece(said, 'length', 'roof '), ...piece(said, 'width', 'by '), ...piece(said, 'membrane')];
  const facts = (['built', 'in-service', 'acquired', 'kept-until', 'day-rate'] as const).map((column) =>
    piece(said, column, `${column} `),
  );
  return [
    piece(said, 'group', 'group '),
    textPiece(said, 'unit', 'unit '),
    textPiece(said, 'vin', 'vin '),
    ...facts,
    roof,
  ].filter((line) => line.length > 0);
}

function problemsOf(said: Said) {
  const hasRoof = said.length !== undefined || said.width !== undefined || said.membrane !== undefined;
  if (hasRoof && (said.length === undefined || said.width === undefined)) {
    const column: AnyColumn = said.length === undefined ? 'length' : 'width';
    return { column, message: 'The size of a roof is its length and its width, such as 28 ft and 8 ft 2 in.' };
  }
  const heading = lineProblem(headingOf(said), '', ' {\n}\n');
  if (heading) return heading;
  for (const line of linesFor(said)) {
    const wrong = lineProblem(line);
    if (wrong) return wrong;
  }
  return undefined;
}

function create(into: Import, one: TableRow, { into: folder, use }: ImportOptions): void {
  const { said } = one;
  const name = said.rig ?? '';
  const path = `${folder === '' ? '' : `${folder}/`}${name.toLowerCase()}.rig`;
  if (into.draft.files.read(path) !== undefined) {
    into.refuse(one, 'rig', `The file ${path} is there already, and holds no rig \`${name}\`: write it there by hand.`);
    return;
  }
  const lines = linesFor(said);
  const uses = use(said)
    .map((file) => `use "${file}"\n`)
    .join('');
  const head = `${uses}${uses === '' ? '' : '\n'}${lineOf(headingOf(said))}`;
  const body = lines.map((line) => `  ${lineOf(line)}\n`).join('');
  const text = lines.length === 0 ? `${head}\n` : `${head} {\n${body}}\n`;
  const [error] = into.draft.create(path, text);
  if (error) into.refuse(one, columnOf(said, error.message), `${error.message}${wayOut(said, error.message)}`);
  else {
    into.made(name, path);
    into.count('added', one);
  }
}

/** The column whose cell a message speaks of. */
const columnOf = (said: Said, message: string): AnyColumn =>
  rigColumns.find(
    (column) => column !== 'rig' && said[column] !== undefined && message.includes(`\`${said[column]}\``),
  ) ?? 'rig';

const wayOut = (said: Said, message: string): string =>
  (['like', 'under', 'group', 'membrane'] as const).some((column) => columnOf(said, message) === column)
    ? ' `--use FILE` lets new rigs use the file that declares it.'
    : '';

const headingColumns: readonly RigColumn[] = ['like', 'under'];
const isFact = (word: string) => rigTable.rows.get(word)?.class === 'fact';

function complete(into: Import, one: TableRow, rig: RigThere): void {
  const resolved = into.resolved(rig);
  const there = resolved && saidOf('rigs', into.draft.project, resolved)[0];
  if (!there) return;
  const isNew = (column: AnyColumn) => !headingColumns.includes(column as RigColumn) && there[column] === undefined;
  const fresh = linesFor(one.said).filter((line) => line.every(({ column }) => isNew(column)));
  const added = new Set(fresh.flatMap((line) => line.map(({ column }) => column)));
  const block = into.blockOf(rig);
  if (fresh.length > 0 && block) {
    const change = lineInsertion(block, fresh.map(lineOf), isFact);
    const [error] = change ? into.draft.insert(change, rig.file, 'other-lines') : [];
    if (error || !change) {
      into.refuse(one, error ? columnOf(one.said, error.message) : 'rig', error?.message ?? 'The rig has no block.');
      return;
    }
    into.count('added', one);
  }
  const rest = rigColumns.filter((column) => !added.has(column));
  if (into.compare(one, there, rest)) into.count('there', one);
}
