// Tables as CSV (RFC 4180, every line ends with CR LF).
import Papa from 'papaparse';

/**
 * A text that a spreadsheet would take for a formula gets an apostrophe before it (OWASP: CSV injection). Numbers stay numbers.
 * One that has apostrophes already gets one more, so that {@link unguarded} gives back what was written.
 */
const formula = /^'*[=+\-@\t\r\n]/;

/** A cell without the apostrophe that guards it. */
export const unguarded = (cell: string): string => (cell.startsWith("'") && formula.test(cell) ? cell.slice(1) : cell);

/** The rows under their columns; a cell that is missing is empty. */
export function csvOf<C extends string>(
  columns: readonly C[],
  rows: readonly Partial<Readonly<Record<C, string | number>>>[],
): string {
  const text = Papa.unparse(
    { fields: [...columns], data: rows.map((row) => columns.map((column) => row[column] ?? '')) },
    { newline: '\r\n', escapeFormulae: formula },
  );
  return `${text}\r\n`;
}
