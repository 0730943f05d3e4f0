// A table as a sheet of the library that writes workbooks.
import type { Cell as Made, WriteSheet } from 'hucre/xlsx';
import { headStyle, headText, noteStyle, styleOf, titleStyle } from './styles.ts';
import { type Cell, letterOf, rowsAbove, type Table } from './table.ts';
import { cellText } from './text.ts';

/** Points that a line of text takes in the standard font, and the most that a row may have. */
const lineHeight = 15;
const mostHeight = 409;

/** Points for a text in so many characters of width. Not every program measures wrapped text when it opens a workbook. */
function heightOf(text: string, width: number): number {
  const lines = text.split('\n').reduce((sum, line) => sum + Math.max(1, Math.ceil(line.length / width)), 0);
  return Math.min(mostHeight, lines * lineHeight);
}

/**
 * The sheet: title, notes, head, rows; the head stays in sight and is printed on every page, the width fits on one.
 * `letter` is the paper; a footer says what it is and which page.
 */
export function sheetOf(
  table: Table,
  { paper, footer }: { readonly paper: 'letter' | 'a4'; readonly footer: string },
): WriteSheet {
  const { name, title, notes, columns, rows, landscape } = table;
  const cells = new Map<string, Partial<Made>>();
  const put = (row: number, column: number, cell: Partial<Made>) => cells.set(`${row},${column}`, cell);
  const head = rowsAbove - 1;
  put(0, 0, { value: cellText(title), style: titleStyle });
  put(1, 0, { value: cellText(notes.join('\n')), style: noteStyle });
  columns.forEach((column, i) => {
    put(head, i, { value: headText(column), style: headStyle(column) });
  });
  rows.forEach((row, r) => {
    columns.forEach((column, c) => {
      const cell = row[column.key];
      if (cell) put(rowsAbove + r, c, { ...made(cell), style: styleOf(cell, column) });
    });
  });
  const headHeight = Math.max(...columns.map((column) => heightOf(headText(column), column.width)));
  const heights = rows.flatMap((row, r) => {
    const tall = Math.max(...columns.map(({ key, width: wide }) => heightOf(textIn(row[key]), wide)));
    return tall > lineHeight ? [[rowsAbove + r, { height: tall }] as const] : [];
  });
  const last = columns.length - 1;
  const width = columns.reduce((sum, column) => sum + column.width, 0);
  return {
    name,
    rows: Array.from({ length: rowsAbove + rows.length }, () => columns.map(() => null)),
    columns: columns.map((column) => ({ width: column.width })),
    cells,
    merges: [0, 1].map((row) => ({ startRow: row, startCol: 0, endRow: row, endCol: last })),
    rowDefs: new Map([[1, { height: heightOf(notes.join('\n'), width) }], [head, { height: headHeight }], ...heights]),
    freezePane: { rows: rowsAbove },
    pageSetup: {
      paperSize: paper,
      orientation: landscape ? 'landscape' : 'portrait',
      fitToPage: true,
      fitToWidth: 1,
      fitToHeight: 0,
      printArea: `$A$1:$${letterOf(last)}$${rowsAbove + rows.length}`,
      printTitlesRow: `$${rowsAbove}:$${rowsAbove}`,
      margins: { top: 0.6, right: 0.5, bottom: 0.7, left: 0.5, header: 0.3, footer: 0.3 },
    },
    headerFooter: { oddFooter: `&L${footer.replace(/&/g, '&&')}&C${name}&R&P / &N` },
  };
}

function made(cell: Cell): Partial<Made> {
  if ('text' in cell) return { value: cellText(cell.text), type: 'string' };
  if ('formula' in cell) return { formula: cell.formula, formulaResult: cell.result, type: 'formula' };
  return cell.number === undefined ? { value: null, type: 'empty' } : { value: cell.number, type: 'number' };
}

const textIn = (cell: Cell | undefined): string => (cell && 'text' in cell ? cellText(cell.text) : '');
