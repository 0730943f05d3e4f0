// The estimate as a workbook with live formulas: `NAME.estimate.xlsx`.
import { writeXlsx } from 'hucre/xlsx';
import type { EstimatePaper } from '../papers.ts';
import { labourSheet } from './labour.ts';
import { cuttingSheet, takeOffSheet } from './measured.ts';
import { pricesOf } from './prices.ts';
import { sealed } from './sealed.ts';
import { font } from './styles.ts';
import { summarySheet } from './summary.ts';
import type { Table } from './table.ts';
import { cellText } from './text.ts';
import { toBuy, toBuyTogether } from './to-buy.ts';
import { adviceSheet, assumptionsSheet, cautionsSheet, openPointsSheet } from './words.ts';
import { sheetOf } from './written-sheet.ts';
import { yearsSheet } from './years.ts';

/** The sheets of the workbook in their order, as data. Those of which there is nothing to say are left out. */
export function estimateTables(paper: EstimatePaper): readonly Table[] {
  const prices = pricesOf(paper);
  const bought = toBuy(paper, prices);
  const labour = labourSheet(paper, prices);
  const all = [
    bought.table,
    ...toBuyTogether(paper, prices),
    prices.table,
    cuttingSheet(paper),
    takeOffSheet(paper),
    labour.table,
    yearsSheet(paper),
    adviceSheet(paper),
    openPointsSheet(paper),
    assumptionsSheet(paper),
    cautionsSheet(paper),
  ];
  return [summarySheet(paper, { prices, bought, labour }), ...all.filter(({ rows }) => rows.length > 0)];
}

/**
 * The workbook as bytes, the same for the same paper. Costs, hours, tax and totals are formulas over prices, counts,
 * amounts and rates that a person may change; they come to what the JSON says, to the minor unit. What people typed is
 * text, never a formula. Form: Office Open XML, ECMA-376.
 */
export async function estimateWorkbook(paper: EstimatePaper): Promise<Uint8Array> {
  const footer = cellText(`Estimate: ${paper.name}, as of ${paper.asOf}`);
  const size = paper.estimates[0]?.system === 'us' ? 'letter' : 'a4';
  const sheets = estimateTables(paper).map((table) => sheetOf(table, { paper: size, footer }));
  const properties = { title: cellText(`Estimate: ${paper.name}`) };
  return sealed(await writeXlsx({ sheets, properties, defaultFont: font }), paper.asOf);
}
