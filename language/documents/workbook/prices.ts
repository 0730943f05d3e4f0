// Prices, wages and taxes: each figure once, however many lines of however many rigs rest on it.
import type { Estimate, Priced, PurchaseLine } from '../../estimate/index.ts';
import type { EstimatePaper } from '../papers.ts';
import { input, inputOf, moneyFormat, plainFormat, text } from './cells.ts';
import { type Column, placesOf, type Row, type Table } from './table.ts';

export const pricesName = 'Prices and rates';

const columns: readonly Column[] = [
  { key: 'kind', title: 'kind', width: 12 },
  { key: 'of', title: 'of', width: 28 },
  { key: 'what', title: 'what', width: 34 },
  { key: 'value', title: 'value', width: 18, right: true, input: true },
  { key: 'unit', title: 'unit', width: 24 },
];

/** The rate that labour lines are charged at; `day` is the cell with the hours of a working day, where it is by the day. */
export interface Wage {
  readonly rate: string;
  readonly day?: string;
}

/** The sheet of prices, and the cell of each price as seen from other sheets. */
export interface Prices {
  readonly table: Table;
  readonly priceOf: (material: string, line: PurchaseLine, currency: string | undefined) => string;
  readonly wageOf: (estimate: Estimate, cost: Priced | undefined) => Wage;
  readonly taxOf: (tax: Priced) => string;
}

export function pricesOf(paper: EstimatePaper): Prices {
  const rows: Row[] = [];
  const known = new Map<string, string>();
  const { from } = placesOf(pricesName, columns);
  /** The cell of a figure, which gets a row when it is met for the first time. */
  const cell = (key: readonly unknown[], row: () => Row): string => {
    const found = known.get(JSON.stringify(key));
    if (found !== undefined) return found;
    rows.push(row());
    const place = from('value', rows.length - 1);
    known.set(JSON.stringify(key), place);
    return place;
  };

  const priceOf: Prices['priceOf'] = (material, { what, unitPrice }, currency) => {
    const money = unitPrice?.currency ?? currency;
    return cell(['price', material, what, unitPrice?.amount, money], () => ({
      kind: text('material'),
      of: text(material),
      what: text(what),
      value: input(unitPrice && Number(unitPrice.amount), moneyFormat(money)),
      unit: text(unitPrice ? `${money} each` : 'no price is known: enter it'),
    }));
  };

  const wageOf: Prices['wageOf'] = ({ totals }, cost) => {
    const wage = cost?.figure.inputs.find(({ name }) => name === 'labour');
    const currency = cost?.money.currency ?? totals.currency;
    const rate = cell(['wage', wage?.value, wage?.unit ?? currency], () => ({
      kind: text('labour'),
      of: text('hours of work'),
      what: text(wage ? 'one person' : 'no rate is known: enter one'),
      value: input(typeof wage?.value === 'number' ? wage.value : undefined, moneyFormat(currency)),
      unit: text(wage?.unit ?? `${currency ?? 'money'} per h`),
    }));
    const hours = cost && inputOf(cost.figure, 'workday');
    if (hours === undefined) return { rate };
    const day = cell(['day', hours], () => ({
      kind: text('labour'),
      of: text('working day'),
      value: input(hours, plainFormat),
      unit: text('h'),
    }));
    return { rate, day };
  };

  const taxOf: Prices['taxOf'] = ({ figure }) => {
    const percent = inputOf(figure, 'tax');
    const on = taxesLabour(figure) ? 'materials and labour' : 'materials';
    return cell(['tax', percent, on], () => ({
      kind: text('tax'),
      of: text(on),
      value: input(percent, plainFormat),
      unit: text('%'),
    }));
  };

  // Met here in the order in which the sheet lists them.
  for (const { purchases, totals } of paper.estimates)
    for (const { material, buy } of purchases) for (const line of buy) priceOf(material, line, totals.currency);
  for (const { purchase } of paper.together)
    for (const line of purchase.buy) priceOf(purchase.material, line, paper.estimates[0]?.totals.currency);
  for (const estimate of paper.estimates) for (const { cost } of estimate.labour) wageOf(estimate, cost);
  for (const { totals } of paper.estimates) if (totals.tax) taxOf(totals.tax);

  return {
    priceOf,
    wageOf,
    taxOf,
    table: {
      name: pricesName,
      title: 'Prices and rates',
      notes: ['Change a value here, and every line and total that rests on it follows.'],
      columns,
      rows,
    },
  };
}

/** Whether a tax is on labour too, as its explanation says. */
export const taxesLabour = ({ inputs }: Priced['figure']): boolean => inputs.some(({ name }) => name === 'labour');
