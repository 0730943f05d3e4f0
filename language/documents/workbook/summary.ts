// The first sheet: what each rig comes to, and all rigs of a fleet together.
import type { Estimate } from '../../estimate/index.ts';
import type { EstimatePaper } from '../papers.ts';
import { countFormat, formula, hoursFormat, moneyFormat, number, plainFormat, roundedMoney, text } from './cells.ts';
import type { Labour } from './labour.ts';
import { type Prices, taxesLabour } from './prices.ts';
import { type Cell, type Column, type Places, placesOf, type Row, type Table } from './table.ts';
import type { ToBuy } from './to-buy.ts';

const columns: readonly Column[] = [
  { key: 'rig', title: 'rig', width: 20 },
  { key: 'unit', title: 'unit', width: 10 },
  { key: 'jobs', title: 'jobs', width: 7, right: true },
  { key: 'hours', title: 'hours', width: 10, right: true },
  { key: 'materials', title: 'materials', width: 16, right: true },
  { key: 'labour', title: 'labour', width: 16, right: true },
  { key: 'percent', title: 'tax, %', width: 9, right: true },
  { key: 'taxed', title: 'tax on', width: 22 },
  { key: 'tax', title: 'tax', width: 15, right: true },
  { key: 'total', title: 'total', width: 17, right: true },
  { key: 'whole', title: 'whole', width: 24 },
];

/** Where the lines stand that the totals add up. */
export interface Lines {
  readonly prices: Prices;
  readonly bought: ToBuy;
  readonly labour: Labour;
}

export function summarySheet(paper: EstimatePaper, lines: Lines): Table {
  const name = 'Summary';
  const places = placesOf(name, columns);
  const rows = paper.estimates.map((estimate, row) => rigRow(estimate, lines, { places, row }));
  return {
    name,
    title: `Estimate: ${paper.name}`,
    notes: [
      `As of ${paper.asOf}, computed from what was recorded and planned. Built-in figures: library ${paper.library}.`,
      'Cells with a shaded ground and a frame, in columns marked (change), may be changed; the rest is worked out from them.',
    ],
    columns,
    rows: [...rows, ...sumRows(paper, places)],
    landscape: true,
  };
}

interface Here {
  readonly places: Places;
  readonly row: number;
}

function rigRow(estimate: Estimate, { prices, bought, labour }: Lines, { places, row }: Here): Row {
  const { rig, jobs, hours, totals } = estimate;
  const base: Row = {
    rig: text(rig.name, 'strong'),
    unit: text(rig.unit),
    jobs: number(jobs.length, countFormat),
    hours: formula(labour.places.sum('hours', labour.rowsOf(rig.name)), hours.likely.value, hoursFormat),
    whole: text(totals.complete ? 'yes' : 'no: see Open points'),
  };
  const { currency, materials, labour: work, tax, total } = totals;
  if (currency === undefined || !materials || !work || !total) return { ...base, total: text('no currency is known') };
  const money = (made: string, amount: string, strong?: 'strong'): Cell =>
    formula(roundedMoney(made, currency), Number(amount), moneyFormat(currency), strong);
  const at = (key: string) => places.here(key, row);
  const percent = tax && prices.taxOf(tax);
  const taxed = tax && taxesLabour(tax.figure);
  return {
    ...base,
    materials: money(bought.places.sum('cost', bought.rowsOf(rig.name, currency)), materials.money.amount),
    labour: money(labour.places.sum('cost', labour.costRowsOf(rig.name, currency)), work.money.amount),
    ...(tax && percent
      ? {
          percent: formula(percent, tax.figure.inputs.find((one) => one.name === 'tax')?.value ?? '', plainFormat),
          taxed: text(taxed ? 'materials and labour' : 'materials'),
          tax: money(
            `${taxed ? `(${at('materials')}+${at('labour')})` : at('materials')}*${at('percent')}/100`,
            tax.money.amount,
          ),
        }
      : {}),
    total: money(`${at('materials')}+${at('labour')}${tax ? `+${at('tax')}` : ''}`, total.money.amount, 'strong'),
  };
}

/** One line for each currency that rigs of a fleet are counted in. */
function sumRows({ estimates, sums }: EstimatePaper, places: Places): readonly Row[] {
  return sums.map(({ currency, rigs, incomplete, total }) => {
    const mine = estimates.flatMap(({ totals }, row) => (totals.total?.money.currency === currency ? [row] : []));
    return {
      rig: text(`${rigs} ${rigs === 1 ? 'rig' : 'rigs'} in ${currency}`, 'strong'),
      total: formula(roundedMoney(places.sum('total', mine), currency), total.value, moneyFormat(currency), 'strong'),
      whole: text(incomplete.length === 0 ? 'yes' : `not whole: ${incomplete.join(', ')}`),
    };
  });
}
