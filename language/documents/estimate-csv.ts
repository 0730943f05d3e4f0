// The estimate as CSV (RFC 4180, lines end with CR LF): one line a figure of money, amount or time.
import Papa from 'papaparse';
import type { EstimatePaper } from './papers.ts';

const head = [
  'rig',
  'section',
  'item',
  'what',
  'quantity',
  'unit',
  'unit_price',
  'amount',
  'currency',
  'explanation',
] as const;
type Cell = string | number;

/** Text cells that a spreadsheet would take for a formula get an apostrophe before them (OWASP: CSV injection). Numbers stay numbers. */
const formula = /^[=+\-@\t\r\n]/;

export function estimateCsv(paper: EstimatePaper): string {
  const rows: Cell[][] = [];
  for (const { rig, purchases, labour, totals, jobs, cutting, hours } of paper.estimates) {
    const add = (
      section: string,
      item: Cell,
      what: Cell,
      quantity: Cell = '',
      unit: Cell = '',
      price: Cell = '',
      amount: Cell = '',
      currency: Cell = '',
      why: Cell = '',
    ) => rows.push([rig.name, section, item, what, quantity, unit, price, amount, currency, why]);
    for (const job of jobs) {
      for (const piece of job.pieces)
        add(
          'piece',
          piece.item,
          `${piece.number} ${piece.tape} ${piece.what}`,
          piece.length.value,
          piece.length.unit,
          '',
          '',
          '',
          piece.length.rule,
        );
      for (const bead of job.beads)
        add('bead', bead.item, bead.sealant, bead.volume.value, bead.volume.unit, '', '', '', bead.volume.rule);
    }
    for (const list of cutting)
      for (const stock of list.stock)
        add('cut', list.tape, stock.what, stock.left.value, stock.left.unit, '', '', '', 'left over');
    for (const purchase of purchases) {
      add(
        'need',
        purchase.material,
        purchase.kind,
        purchase.need.value,
        purchase.need.unit,
        '',
        purchase.cost ? Number(purchase.cost.money.amount) : '',
        purchase.cost?.money.currency ?? '',
        purchase.proof,
      );
      for (const line of purchase.buy)
        add(
          'buy',
          purchase.material,
          line.what,
          line.count,
          '',
          line.unitPrice ? Number(line.unitPrice.amount) : '',
          line.cost ? Number(line.cost.money.amount) : '',
          line.cost?.money.currency ?? '',
          line.cost?.figure.rule ?? 'no price is known',
        );
    }
    for (const line of labour)
      add(
        'labour',
        `visit ${line.visit}`,
        line.task,
        line.hours.likely.value,
        line.hours.likely.unit,
        '',
        line.cost ? Number(line.cost.money.amount) : '',
        line.cost?.money.currency ?? '',
        line.hours.likely.rule,
      );
    add('total', 'hours', 'all tasks', hours.likely.value, hours.likely.unit, '', '', '', hours.likely.rule);
    for (const name of ['materials', 'labour', 'tax', 'total'] as const) {
      const priced = totals[name];
      if (priced)
        add('total', name, '', '', '', '', Number(priced.money.amount), priced.money.currency, priced.figure.rule);
    }
    for (const why of totals.missing) add('missing', '', why);
  }
  for (const sum of paper.sums)
    rows.push(['', 'sum', 'all rigs', '', sum.rigs, 'rigs', '', sum.total.value, sum.currency, sum.total.rule]);
  return `${Papa.unparse({ fields: [...head], data: rows }, { newline: '\r\n', escapeFormulae: formula })}\r\n`;
}
