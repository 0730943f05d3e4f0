// The sheets of the workbook as data: tables of cells, and where in the workbook a cell stands.

/** How a cell is shown: a kind of text, or the number format of a number. */
export type Look = 'plain' | 'strong';

export interface TextCell {
  readonly text: string;
  readonly look?: Look;
}

export interface NumberCell {
  /** Missing: an empty cell that waits for a number. */
  readonly number?: number;
  readonly format: string;
  readonly look?: Look;
  /** A person may change it, and what depends on it follows. */
  readonly input?: true;
}

export interface FormulaCell {
  /** Without the `=`. */
  readonly formula: string;
  /** What comes of it, for programs that show a workbook without working it out. */
  readonly result: number | string;
  readonly format: string;
  readonly look?: Look;
}

export type Cell = TextCell | NumberCell | FormulaCell;

export interface Column {
  readonly key: string;
  readonly title: string;
  /** In characters. */
  readonly width: number;
  readonly right?: true;
  /** Its cells may be changed; the head says so. */
  readonly input?: true;
}

/** A row by the keys of its columns; what is missing is empty. */
export type Row = Readonly<Record<string, Cell | undefined>>;

export interface Table {
  readonly name: string;
  readonly title: string;
  /** What a reader should know first, one line each. */
  readonly notes: readonly string[];
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  readonly landscape?: true;
}

/** Title, notes and head stand above the first row: a table with the notes that every table has starts here. */
export const rowsAbove = 3;

/** `A` for 0, `AA` for 26. */
export function letterOf(column: number): string {
  const rest = String.fromCharCode(65 + (column % 26));
  return column < 26 ? rest : letterOf(Math.floor(column / 26) - 1) + rest;
}

/** Addresses in a table: `F7` in itself, `'To buy'!$F$7` from elsewhere. */
export interface Places {
  readonly here: (key: string, row: number) => string;
  readonly from: (key: string, row: number) => string;
  /** The sum over some rows of a column, wherever they stand; `0` of none. */
  readonly sum: (key: string, rows: readonly number[]) => string;
}

export function placesOf(name: string, columns: readonly Column[]): Places {
  const letter = (key: string) => letterOf(columns.findIndex((column) => column.key === key));
  const fixed = (key: string, row: number) => `$${letter(key)}$${row + rowsAbove + 1}`;
  const from = (key: string, row: number) => `'${name}'!${fixed(key, row)}`;
  return {
    here: (key, row) => `${letter(key)}${row + rowsAbove + 1}`,
    from,
    sum: (key, rows) =>
      runs(rows)
        .map(([first, last]) => `SUM(${from(key, first)}:${fixed(key, last)})`)
        .join('+') || '0',
  };
}

/** Rows that follow one another, as first and last: a row that a person inserts among them is counted too. */
function runs(rows: readonly number[]): readonly (readonly [number, number])[] {
  const out: [number, number][] = [];
  for (const row of rows) {
    const last = out.at(-1);
    if (last && last[1] === row - 1) last[1] = row;
    else out.push([row, row]);
  }
  return out;
}
