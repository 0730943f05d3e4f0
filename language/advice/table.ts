// The table of advice: its rows in order of precedence. The first that holds decides.
import type { AdviceRow, InterimRow } from './row.ts';
import { crackedBeads, hairlines, harmful } from './rows/beads.ts';
import { covers } from './rows/covers.ts';
import { damp, watched } from './rows/damp.ts';
import { gravest } from './rows/gravest.ts';
import { lettingGo } from './rows/letting-go.ts';
import { looks } from './rows/looks.ts';
import { membrane, membraneWorn } from './rows/membrane.ts';
import { openParts } from './rows/open-parts.ts';

/**
 * What is grave goes before what is slight, what lets water in before what may, and what was found before what was not
 * looked at. The last row always holds.
 */
export const table: readonly AdviceRow[] = [
  ...gravest,
  ...openParts,
  ...membrane,
  ...lettingGo,
  ...damp,
  ...harmful,
  ...crackedBeads,
  ...watched,
  ...hairlines,
  ...membraneWorn,
  ...looks,
];

/** What is done until the lasting repair, beside it. Here too the first row that holds decides; mostly none does. */
export const interimTable: readonly InterimRow[] = covers;

/** The row for a leak of which nobody knows where it comes in, which is about the roof as a whole. */
export const rowById = (id: string): AdviceRow => {
  const row = table.find((one) => one.id === id);
  if (!row) throw new Error(`the table of advice has no row ${id}`);
  return row;
};
