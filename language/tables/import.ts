// A table read into records: row by row, in a draft, so that nothing is written before every row was judged.
import type { Draft } from '../authoring/draft.ts';
import type { RecordBlock } from '../authoring/inspection-place.ts';
import type { RigDeclaration } from '../records/file.ts';
import type { ResolvedRig } from '../resolve/project.ts';
import { nearest } from '../values/nearest.ts';
import { type Cells, readColumns, type TableProblem } from './columns.ts';
import { type Row, readTable } from './csv.ts';
import { importInspections } from './import-inspections.ts';
import { importRigs } from './import-rigs.ts';
import { importSeams } from './import-seams.ts';
import { type AnyColumn, columnsOf, headerOf, type Said, type TableKind } from './kinds.ts';

/** What became of the rows, and what is to be told of some of them. */
export interface Imported {
  /** How many rows brought something new. */
  readonly added: number;
  /** How many say what is there already. */
  readonly there: number;
  /** `differs`: there is another value, which stays; `error`: the row is left out. */
  readonly problems: readonly (TableProblem & { readonly kind: 'error' | 'differs' })[];
}

/** A row with what it says. */
export interface TableRow {
  readonly row: Row;
  readonly said: Said;
}

/** A rig that rows are about. */
export interface RigThere {
  readonly name: string;
  readonly file: string;
  readonly declaration: RigDeclaration;
}

/** What the tables of each kind are read with. */
export interface Import {
  readonly draft: Draft;
  /** The rig of that name; without one, or with several, the row is told so. */
  rigOf(one: TableRow): RigThere | undefined;
  /** The same, undefined where there is none. */
  known(name: string): RigThere | undefined;
  resolved(rig: RigThere): ResolvedRig | undefined;
  /** Its block as it is written now. */
  blockOf(rig: RigThere): RecordBlock | undefined;
  /** A rig that was made. */
  made(name: string, file: string): void;
  refuse(one: TableRow, column: AnyColumn, message: string): void;
  /** Tells of each cell that says something else than what is there; whether none does. */
  compare(one: TableRow, there: Said, columns: readonly AnyColumn[]): boolean;
  /** What became of rows; one that brought something stays so. */
  count(what: 'added' | 'there', ...rows: readonly TableRow[]): void;
}

export interface ImportOptions {
  /** The files whose rigs the table may be about. */
  readonly files: readonly string[];
  /** The folder for new rigs. */
  readonly into: string;
  /** Paths of the files that a new rig uses, as seen from that folder. */
  readonly use: (said: Said) => readonly string[];
}

/** Reads a table into a draft. What is there already is left as it is. */
export function importTable(kind: TableKind, text: string, draft: Draft, options: ImportOptions): Imported {
  const table = readTable(text);
  const { cells, rows, problems: found } = readColumns(text, table, headerOf(kind));
  const problems: Imported['problems'][number][] = found.map((problem) => ({ ...problem, kind: 'error' }));
  const outcomes = new Map<Row, 'added' | 'there'>();
  if (cells) {
    const all = rows.map((row) => ({ row, said: saidIn(kind, cells, row) }));
    const context = importInto(draft, options, problems, outcomes, cells);
    const named = all.filter((one) => {
      if (one.said.rig === undefined) context.refuse(one, 'rig', 'No rig is named in this row.');
      return one.said.rig !== undefined;
    });
    if (kind === 'rigs') importRigs(context, named, options);
    else if (kind === 'seams') importSeams(context, named);
    else importInspections(context, named);
  }
  const counted = (what: 'added' | 'there') => [...outcomes.values()].filter((one) => one === what).length;
  return { added: counted('added'), there: counted('there'), problems: problems.sort((a, b) => a.at[0] - b.at[0]) };
}

function saidIn(kind: TableKind, cells: Cells<AnyColumn>, row: Row): Said {
  const said = columnsOf[kind].map((column) => [column, cells.of(row, column)] as const);
  return Object.fromEntries(said.filter(([, cell]) => cell !== '')) as Said;
}

function importInto(
  draft: Draft,
  { files }: ImportOptions,
  problems: Imported['problems'][number][],
  outcomes: Map<Row, 'added' | 'there'>,
  cells: Cells<AnyColumn>,
): Import {
  const { project } = draft;
  const places = new Map<string, string[]>();
  const add = (name: string, file: string) => void places.set(name, [...(places.get(name) ?? []), file]);
  for (const file of files)
    for (const { kind, name } of project.records(file)?.declarations ?? []) if (kind === 'rig') add(name, file);
  const tell = (kind: 'error' | 'differs', { row }: TableRow, column: AnyColumn, message: string) =>
    void problems.push({ kind, at: cells.at(row, column), line: row.line, message: `${column}: ${message}` });
  const known = (name: string): RigThere | undefined => {
    const [file] = places.get(name) ?? [];
    const declaration = project
      .records(file ?? '')
      ?.declarations.find((one): one is RigDeclaration => one.kind === 'rig' && one.name === name);
    return file !== undefined && declaration ? { name, file, declaration } : undefined;
  };
  return {
    draft,
    known,
    rigOf(one) {
      const name = one.said.rig ?? '';
      const there = places.get(name) ?? [];
      if (there.length > 1) tell('error', one, 'rig', `Two rigs are called \`${name}\`, in ${there.join(' and ')}.`);
      if (there.length === 0) {
        const close = nearest(name, places.keys());
        const hint = close === undefined ? 'Import the rigs first.' : `Did you mean \`${close}\`?`;
        tell('error', one, 'rig', `No rig is called \`${name}\`. ${hint}`);
      }
      return there.length === 1 ? known(name) : undefined;
    },
    resolved: ({ file, name }) => project.rigs(file).find(({ rig }) => rig.kind === 'rig' && rig.name === name),
    blockOf(rig) {
      const now = known(rig.name);
      const text = now && project.text(now.file);
      return now && text !== undefined ? { file: now.file, text, start: now.declaration.at[0] } : undefined;
    },
    made: add,
    refuse: (one, column, message) => tell('error', one, column, message),
    compare(one, there, columns) {
      let same = true;
      for (const column of columns) {
        const [said, is] = [one.said[column], there[column]];
        if (said === undefined || blanksAside(said) === blanksAside(is ?? '')) continue;
        same = false;
        const now = is === undefined ? 'nothing is said of it there' : `there it is \`${is}\``;
        tell('differs', one, column, `\`${said}\` here, and ${now}; that is left as it is.`);
      }
      return same;
    },
    count(what, ...rows) {
      for (const { row } of rows) if (outcomes.get(row) !== 'added') outcomes.set(row, what);
    },
  };
}

const blanksAside = (text: string) => text.replace(/\s+/g, ' ').trim();
