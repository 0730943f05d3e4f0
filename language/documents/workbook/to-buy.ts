// What is to be bought: for each rig, and for all rigs of a fleet together. Costs are count times price.
import type { Purchase } from '../../estimate/index.ts';
import type { EstimatePaper } from '../papers.ts';
import { countFormat, formula, input, moneyFormat, roundedMoney, text } from './cells.ts';
import type { Prices } from './prices.ts';
import { type Column, type Places, placesOf, type Row, type Table } from './table.ts';

const rig: Column = { key: 'rig', title: 'rig', width: 14 };
const columns: readonly Column[] = [
  { key: 'material', title: 'material', width: 22 },
  { key: 'need', title: 'needed', width: 13, right: true },
  { key: 'shelf', title: 'on hand', width: 13, right: true },
  { key: 'what', title: 'buy', width: 28 },
  { key: 'count', title: 'count', width: 16, right: true, input: true },
  { key: 'price', title: 'each', width: 14, right: true },
  { key: 'cost', title: 'cost', width: 15, right: true },
  { key: 'sum', title: 'of the material', width: 18, right: true },
  { key: 'why', title: 'why', width: 44 },
];

/** The sheet and the rows of each rig's costs. */
export interface ToBuy {
  readonly table: Table;
  readonly places: Places;
  /** The rows that a currency's sum goes over. */
  readonly rowsOf: (rig: string, currency: string) => readonly number[];
}

export function toBuy(paper: EstimatePaper, prices: Prices): ToBuy {
  const name = 'To buy';
  const shown = paper.kind === 'fleet' ? [rig, ...columns] : columns;
  const places = placesOf(name, shown);
  const rows: Row[] = [];
  const costs: { readonly rig: string; readonly currency: string | undefined; readonly row: number }[] = [];
  for (const { rig: of, purchases, totals } of paper.estimates) {
    for (const purchase of purchases) {
      for (const line of purchase.buy)
        costs.push({
          rig: of.name,
          currency: line.cost?.money.currency ?? totals.currency,
          row: rows.length + purchase.buy.indexOf(line),
        });
      const made = purchaseRows(purchase, totals.currency, { prices, places, first: rows.length });
      rows.push(...made.map((row) => ({ rig: text(of.name), ...row })));
    }
  }
  return {
    places,
    rowsOf: (of, currency) => costs.filter((one) => one.rig === of && one.currency === currency).map(({ row }) => row),
    table: {
      name,
      title: paper.kind === 'fleet' ? 'To buy, each rig for itself' : 'To buy',
      notes: ['Counts may be changed here, prices on the sheet Prices and rates; costs and totals follow.'],
      columns: shown,
      rows,
      landscape: true,
    },
  };
}

/** What all rigs of a fleet buy together, with what that comes to; nothing for a rig alone. */
export function toBuyTogether(paper: EstimatePaper, prices: Prices): readonly Table[] {
  if (paper.together.length === 0) return [];
  const name = 'To buy together';
  const shown = [...columns, { key: 'rigs', title: 'for', width: 24 }];
  const places = placesOf(name, shown);
  const currency = paper.estimates.find(({ totals }) => totals.currency)?.totals.currency;
  const rows: Row[] = [];
  const costs = new Map<string, { readonly rows: number[]; sum: number }>();
  for (const { purchase, rigs } of paper.together) {
    purchase.buy.forEach((line, i) => {
      const money = line.cost?.money.currency ?? currency ?? '';
      const known = costs.get(money) ?? { rows: [], sum: 0 };
      known.rows.push(rows.length + i);
      known.sum += line.cost ? Number(line.cost.money.amount) : 0;
      costs.set(money, known);
    });
    const made = purchaseRows(purchase, currency, { prices, places, first: rows.length });
    rows.push(...made.map((row, i) => (i === 0 ? { ...row, rigs: text(rigs.join(', ')) } : row)));
  }
  for (const [money, { rows: of, sum }] of costs) {
    const cost = formula(
      roundedMoney(places.sum('cost', of), money || undefined),
      sum,
      moneyFormat(money || undefined),
      'strong',
    );
    rows.push({ material: text('all of it', 'strong'), cost });
  }
  const note =
    'Whoever buys together buys by this sheet. The totals of the rigs are reckoned with each buying for itself.';
  return [{ name, title: 'To buy for all rigs together', notes: [note], columns: shown, rows, landscape: true }];
}

interface Around {
  readonly prices: Prices;
  readonly places: Places;
  /** The row in which it begins. */
  readonly first: number;
}

function purchaseRows(
  purchase: Purchase,
  currency: string | undefined,
  { prices, places, first }: Around,
): readonly Row[] {
  const { material, need, onHand, buy, proof, cost } = purchase;
  const head: Row = {
    material: text(material),
    need: text(need.text),
    shelf: text(onHand && onHand.value > 0 ? onHand.text : undefined),
    why: text(proof),
  };
  if (buy.length === 0) return [{ ...head, what: text('nothing') }];
  const money = cost?.money.currency ?? currency;
  const range = `${places.here('cost', first)}:${places.here('cost', first + buy.length - 1)}`;
  const sum = formula(
    `IF(COUNT(${range})=0,"",SUM(${range}))`,
    cost ? Number(cost.money.amount) : '',
    moneyFormat(money),
  );
  return buy.map((line, i) => {
    const own = line.unitPrice?.currency ?? currency;
    const format = moneyFormat(own);
    const at = prices.priceOf(material, line, currency);
    const [count, price] = [places.here('count', first + i), places.here('price', first + i)];
    return {
      ...(i === 0 ? { ...head, sum } : {}),
      what: text(line.what),
      count: input(line.count, countFormat),
      price: formula(
        `IF(ISNUMBER(${at}),${at},"no price")`,
        line.unitPrice ? Number(line.unitPrice.amount) : 'no price',
        format,
      ),
      cost: formula(
        `IF(ISNUMBER(${price}),${roundedMoney(`${count}*${price}`, own)},"")`,
        line.cost ? Number(line.cost.money.amount) : '',
        format,
      ),
    };
  });
}
