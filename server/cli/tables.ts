// `rigseam import` and `rigseam export`: tables of rigs, seams and inspections.
import { readFileSync } from 'node:fs';
import { relative } from 'node:path';
import { draftOver } from '../../language/authoring/draft.ts';
import { csvOf } from '../../language/documents/csv.ts';
import { createProject } from '../../language/resolve/project.ts';
import type { Dates } from '../../language/resolve/types.ts';
import { importTable } from '../../language/tables/import.ts';
import { columnsOf, type TableKind } from '../../language/tables/kinds.ts';
import { rowsOf } from '../../language/tables/said.ts';
import { diskFailure } from '../disk-failure.ts';
import { enginePath } from '../disk-node.ts';
import { writeWhole } from '../whole-file.ts';
import type { Printed } from './add-record.ts';
import { type BulkOptions, carriedOut } from './bulk.ts';
import { type Asked, askedOrEmpty, diskOf, Misuse } from './paths.ts';
import { positions } from './text.ts';

export interface ImportOptions extends BulkOptions {
  /** The folder for new rigs; the rigs that are there are those in it and in the current folder. */
  readonly into: string;
  /** Files that new rigs use, as seen from the current folder. */
  readonly use?: readonly string[];
}

/** Reads a table into records. Rows that cannot be read are told with their place and left out; the others are written. */
export function importFile(kind: TableKind, file: string, dates: Dates, options: ImportOptions, from: string): Printed {
  const text = tableText(file);
  const what = askedOrEmpty([from, options.into], from);
  const disk = diskOf(what);
  const draft = draftOver(disk, dates, disk.exists);
  const into = enginePath(options.into);
  const use = (options.use ?? []).map((path) => relative(into, path).replaceAll('\\', '/'));
  const { problems, added, there } = importTable(kind, text, draft, { files: what.files, into, use: () => use });

  const rangeOf = positions(text);
  const name = (path: string) => relative(from, path) || path;
  const told = problems.map(({ at, line, kind: severity, message }) => {
    const { start } = rangeOf(at);
    return { file, line: start.line + 1, column: start.character + 1, row: line, kind: severity, message };
  });
  const { lines, files } = carriedOut(draft.changes(), from, options);
  const caused = draft.caused.map((finding) => ({
    file: name(finding.file),
    rule: finding.rule,
    message: finding.message,
  }));
  const text2 = [
    ...told.map((one) => `${one.file}:${one.line}:${one.column}: ${one.kind}  ${one.message}`),
    ...caused.map((one) => `${one.file}: with this it says: ${one.message}  [${one.rule}]`),
    ...lines,
    `${added} ${added === 1 ? 'row' : 'rows'} new, ${there} already there, ${left(told)} left out.`,
  ];
  return {
    text: `${text2.join('\n')}\n`,
    json: { written: options.write === true && files.length > 0, added, there, problems: told, caused, files },
    failed: told.some((one) => one.kind === 'error'),
  };
}

/** Rows, not cells. */
const left = (told: readonly { readonly row: number; readonly kind: string }[]) =>
  new Set(told.filter(({ kind }) => kind === 'error').map(({ row }) => row)).size;

export interface ExportOptions {
  readonly out?: string;
}

/** Writes a table of all rigs of files and folders, into a file or to the standard output. */
export function exportFile(kind: TableKind, asked: Asked, { out }: ExportOptions): string {
  const project = createProject(diskOf(asked));
  const rows = rowsOf(kind, project, asked.files);
  const table = csvOf(columnsOf[kind], rows);
  if (out === undefined) return table;
  writeWhole(out, table);
  return `${rows.length} ${rows.length === 1 ? 'row' : 'rows'} written to ${out}.\n`;
}

function tableText(file: string): string {
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(file);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') throw new Misuse(`There is no file \`${file}\`.`);
    throw diskFailure(file, 'read', error);
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Misuse(`\`${file}\` is no UTF-8 text: save it as "CSV UTF-8".`);
  }
}
