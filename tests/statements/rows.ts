// The rows of the statement table, and their examples as files.
import type { BlockTable, Row } from '../../language/statements/row.ts';
import { allTables } from '../../language/statements/vocabulary.ts';

export interface Placed {
  readonly table: BlockTable;
  readonly row: Row;
  /** Names the row in the output of a test. */
  readonly name: string;
}

/** Every row with the block it stands in. */
export const rows: readonly Placed[] = allTables().flatMap((table) =>
  [...table.rows.values(), ...(table.names ? [table.names] : [])].map((row) => ({
    table,
    row,
    name: `${row.word || 'a finding'} in ${table.name}`,
  })),
);

const headings: Readonly<Record<string, readonly string[]>> = {
  file: [],
  tape: ['tape EdgeTape4'],
  sealant: ['sealant GreyLap'],
  primer: ['primer EdgePrimer'],
  cleaner: ['cleaner MildWash'],
  coating: ['coating RoofCoat'],
  surface: ['surface epdm'],
  policy: ['policy Yard'],
  group: ['group Coastal'],
  model: ['model Alder28'],
  rig: ['rig Heron'],
  history: ['history Heron'],
  fleet: ['fleet Saltmarsh'],
  yard: ['fleet Saltmarsh', 'yard Harbour'],
  findings: ['rig Heron', 'inspected 2026-04-18'],
};

/** A file in which lines stand in a block of that kind. */
export function fileWith(table: BlockTable, ...lines: readonly string[]): string {
  const above = headings[table.name];
  if (!above) throw new Error(`no heading is known for the block ${table.name}`);
  const opened = above.map((heading, i) => `${'  '.repeat(i)}${heading} {`);
  const inside = lines.map((line) => '  '.repeat(above.length) + line);
  const closed = above.map((_, i) => `${'  '.repeat(i)}}`).reverse();
  return `${[...opened, ...inside, ...closed].join('\n')}\n`;
}
