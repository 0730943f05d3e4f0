// Tables as CSV (RFC 4180, every line ends with CR LF).
import Papa from 'papaparse';

/** A text that a spreadsheet would take for a formula gets an apostrophe before it (OWASP: CSV injection). Numbers stay numbers. */
const formula = /^[=+\-@\t\r\n]/;

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
