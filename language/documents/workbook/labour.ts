// The work: hours from amounts and rates, costs from hours.
import type { Estimate, LabourLine } from '../../estimate/index.ts';
import type { EstimatePaper } from '../papers.ts';
import { amountFormat, formula, hoursFormat, input, moneyFormat, number, roundedMoney, text } from './cells.ts';
import type { Prices } from './prices.ts';
import { type Cell, type Column, type Places, placesOf, type Row, type Table } from './table.ts';

const columns: readonly Column[] = [
  { key: 'visit', title: 'visit', width: 8, right: true },
  { key: 'task', title: 'task', width: 18 },
  { key: 'amount', title: 'amount', width: 18, right: true, input: true },
  { key: 'unit', title: 'unit', width: 9 },
  { key: 'rate', title: 'rate', width: 16, right: true, input: true },
  { key: 'per', title: 'rate in', width: 14 },
  { key: 'hours', title: 'hours', width: 10, right: true },
  { key: 'least', title: 'at least', width: 10, right: true },
  { key: 'most', title: 'at most', width: 10, right: true },
  { key: 'cost', title: 'cost', width: 15, right: true },
];

export interface Labour {
  readonly table: Table;
  readonly places: Places;
  readonly rowsOf: (rig: string) => readonly number[];
  /** The rows that a currency's sum goes over. */
  readonly costRowsOf: (rig: string, currency: string) => readonly number[];
}

export function labourSheet(paper: EstimatePaper, prices: Prices): Labour {
  const name = 'Labour';
  const shown = paper.kind === 'fleet' ? [{ key: 'rig', title: 'rig', width: 14 }, ...columns] : columns;
  const places = placesOf(name, shown);
  const rows: Row[] = [];
  const lines: { readonly rig: string; readonly currency: string | undefined; readonly row: number }[] = [];
  for (const estimate of paper.estimates) {
    for (const line of estimate.labour) {
      lines.push({
        rig: estimate.rig.name,
        currency: line.cost?.money.currency ?? estimate.totals.currency,
        row: rows.length,
      });
      rows.push({ rig: text(estimate.rig.name), ...labourRow(estimate, line, { prices, places, row: rows.length }) });
    }
  }
  const mine = (rig: string) => lines.filter((line) => line.rig === rig);
  return {
    places,
    rowsOf: (rig) => mine(rig).map(({ row }) => row),
    costRowsOf: (rig, currency) =>
      mine(rig)
        .filter((line) => line.currency === currency)
        .map(({ row }) => row),
    table: {
      name,
      title: 'Labour',
      notes: [
        'Amounts and rates may be changed here, the price of work on the sheet Prices and rates; hours, costs and totals follow.',
      ],
      columns: shown,
      rows,
      landscape: true,
    },
  };
}

interface Around {
  readonly prices: Prices;
  readonly places: Places;
  readonly row: number;
}

function labourRow(estimate: Estimate, line: LabourLine, { prices, places, row }: Around): Row {
  const { visit, task, quantity, hours, cost } = line;
  const currency = cost?.money.currency ?? estimate.totals.currency;
  const at = (key: string) => places.here(key, row);
  const { rate, day } = prices.wageOf(estimate, cost);
  const price = `${at('hours')}*${rate}${day === undefined ? '' : `/${day}`}`;
  return {
    visit: number(visit),
    task: text(task),
    amount: input(quantity.value, amountFormat),
    unit: text(quantity.unit),
    ...timed(line, at('amount'), at('rate')),
    least: number(hours.least.value, hoursFormat),
    most: number(hours.most.value, hoursFormat),
    cost: formula(
      `IF(ISNUMBER(${rate}),${roundedMoney(price, currency)},"no rate")`,
      cost ? Number(cost.money.amount) : 'no rate',
      moneyFormat(currency),
    ),
  };
}

/** The likely hours with their rate, live where the explanation has one of the two forms that a rate can have. */
function timed(
  { hours: { likely } }: LabourLine,
  amount: string,
  rate: string,
): Readonly<Record<string, Cell | undefined>> {
  const [, by, name, minutes] = /^quantity ([*/]) (\w+?)( \/ 60)?$/.exec(likely.formula) ?? [];
  const factor = likely.inputs.find((one) => one.name === name);
  if (typeof factor?.value !== 'number') return { hours: number(likely.value, hoursFormat) };
  return {
    rate: input(factor.value, amountFormat),
    per: text(factor.unit),
    hours: formula(`${amount}${by}${rate}${minutes ? '/60' : ''}`, likely.value, hoursFormat),
  };
}
