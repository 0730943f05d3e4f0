// A workbook read back by a library that had no part in writing it, which also works out its formulas.
import { Workbook, type Worksheet } from '@cj-tech-master/excelts';
import { installFormulaEngine } from '@cj-tech-master/excelts/formula';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import type { EstimatePaper } from '../../language/documents/papers.ts';
import { estimateWorkbook } from '../../language/documents/workbook/index.ts';
import { paper } from './examples.ts';

installFormulaEngine();

export async function readWorkbook(bytes: Uint8Array): Promise<Workbook> {
  const workbook = new Workbook();
  await workbook.xlsx.load(bytes);
  return workbook;
}

export const estimateOf = (name: string): EstimatePaper => JSON.parse(paper(`${name}.estimate.json`)) as EstimatePaper;
export const workbookOf = async (name: string): Promise<Uint8Array> => estimateWorkbook(estimateOf(name));

/** The head of a sheet stands above its rows. */
export const headRow = 3;

export function sheet(workbook: Workbook, name: string): Worksheet {
  const found = workbook.getWorksheet(name);
  if (!found) throw new Error(`there is no sheet ${name}`);
  return found;
}

/** The titles of the columns, without what marks an input. */
export function titles(of: Worksheet): string[] {
  const row = of.getRow(headRow);
  return Array.from({ length: of.columnCount }, (_, i) => String(row.getCell(i + 1).value).replace(' (change)', ''));
}

/** The cell of a column by its title, in a row below the head that begins with 0. */
export function cellOf(of: Worksheet, title: string, row: number) {
  const column = titles(of).indexOf(title);
  if (column < 0) throw new Error(`${of.name} has no column ${title}`);
  return of.getRow(headRow + 1 + row).getCell(column + 1);
}

/** How many rows there are below the head. */
export const rowCount = (of: Worksheet): number => of.rowCount - headRow;

/** Changes the text of the parts of a workbook, as another program would. */
export function changed(bytes: Uint8Array, change: (text: string, part: string) => string): Uint8Array {
  const parts = unzipSync(bytes);
  for (const [name, part] of Object.entries(parts)) {
    if (name.endsWith('.xml')) parts[name] = strToU8(change(strFromU8(part), name));
  }
  return zipSync(parts);
}

/** Takes away what came of each formula, so that a program that reads the workbook has to work it out. */
export const withoutResults = (bytes: Uint8Array): Uint8Array =>
  changed(bytes, (text, part) =>
    part.startsWith('xl/worksheets/') ? text.replace(/(<\/f>)<v>[^<]*<\/v>/g, '$1') : text,
  );

/** Every formula worked out anew. */
export async function recalculated(bytes: Uint8Array): Promise<Workbook> {
  const workbook = await readWorkbook(withoutResults(bytes));
  workbook.calculateFormulas();
  return workbook;
}
