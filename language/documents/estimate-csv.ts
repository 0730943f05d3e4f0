// The estimate as CSV: one line a figure of length, amount, time or money.
import type { Estimate, Priced } from '../estimate/index.ts';
import type { Explained } from '../explain.ts';
import { rounded } from '../values/exact.ts';
import type { Money } from '../values/money.ts';
import { csvOf } from './csv.ts';
import { explanationText } from './explanation.ts';
import type { EstimatePaper } from './papers.ts';

const columns = [
  'rig',
  'section',
  'item',
  'what',
  'quantity',
  'unit',
  'unit price',
  'currency',
  'amount',
  'proof',
  'explanation',
] as const;

type Row = Partial<Readonly<Record<(typeof columns)[number], string | number>>>;

export function estimateCsv(paper: EstimatePaper): string {
  const rows: Row[] = [
    ...paper.estimates.flatMap((estimate) => rowsOf(estimate).map((row) => ({ rig: estimate.rig.name, ...row }))),
    ...paper.unplanned.map(({ rig, title, date, because }) => ({
      rig,
      section: 'not planned',
      item: title,
      what: date,
      explanation: because,
    })),
    ...bought({ purchases: paper.together.map(({ purchase }) => purchase) }).map((row) => ({
      ...row,
      section: `all rigs, ${row.section}`,
    })),
    ...paper.together.flatMap(({ material, sent = [] }) =>
      sent.map(({ from, to, what, amount }) => ({
        section: 'all rigs, sent',
        item: material,
        what: `${what} from ${from} to ${to}`,
        ...quantity(amount),
      })),
    ),
    ...paper.sums.map(({ total, rigs, currency }) => ({
      section: 'all rigs',
      item: 'total',
      quantity: rigs,
      unit: 'rigs',
      currency,
      amount: total.value,
      explanation: explanationText(total),
    })),
  ];
  return csvOf(columns, rows);
}

function rowsOf(estimate: Estimate): Row[] {
  return [
    ...measured(estimate),
    ...bought(estimate),
    ...estimate.labour.map(({ visit, task, hours, cost }) => ({
      section: 'labour',
      item: `visit ${visit}`,
      what: task,
      ...quantity(hours.likely),
      ...money(cost?.money),
    })),
    { section: 'total', item: 'hours', ...quantity(estimate.hours.likely) },
    ...(['materials', 'labour', 'tax', 'total'] as const).flatMap((name) => {
      const priced = estimate.totals[name];
      return priced ? [{ section: 'total', item: name, ...cost(priced) }] : [];
    }),
    ...estimate.questions.map(({ about, text }) => ({ section: 'open question', item: about, what: text })),
  ];
}

function measured({ jobs, visits, cutting }: Estimate): Row[] {
  return [
    ...jobs.flatMap(({ pieces, beads, stripped }) => [
      ...pieces.map(({ item, number, tape, what, length }) => ({
        section: 'piece',
        item,
        what: `${number} ${tape} ${what}`,
        ...quantity(length),
      })),
      ...beads.map(({ item, sealant, volume }) => ({ section: 'bead', item, what: sealant, ...quantity(volume) })),
      ...stripped.map(({ item, hard, length }) => ({
        section: 'strip',
        item,
        what: hard ? 'hard' : '',
        ...quantity(length),
      })),
    ]),
    ...[...visits, ...jobs].flatMap(({ liquids }) =>
      liquids.map(({ task, material = '', volume, area }) => ({
        section: task,
        item: material,
        ...quantity(volume ?? area),
      })),
    ),
    ...cutting.flatMap(({ tape, stock }) =>
      stock.map(({ what, left }) => ({ section: 'left of a roll', item: tape, what, ...quantity(left) })),
    ),
  ];
}

function bought({ purchases }: Pick<Estimate, 'purchases'>): Row[] {
  return purchases.flatMap(({ material, kind, need, onHand, cost: all, buy, proof }) => [
    { section: 'need', item: material, what: kind, ...quantity(need), proof },
    ...(onHand ? [{ section: 'on hand', item: material, what: kind, ...quantity(onHand) }] : []),
    ...buy.map((line) => ({
      section: 'buy',
      item: material,
      what: line.what,
      quantity: line.count,
      unit: 'pieces',
      ...(line.unitPrice ? { 'unit price': Number(line.unitPrice.amount) } : {}),
      ...(line.cost ? cost(line.cost) : { explanation: 'no price is known' }),
      proof,
    })),
    ...(all && buy.length > 1 ? [{ section: 'buy', item: material, what: 'in all', ...cost(all), proof }] : []),
  ]);
}

/** To a millionth of the unit: more digits than any of them is known to. */
const quantity = (figure: Explained): Row => ({
  quantity: Number(rounded(figure.value, 6)),
  unit: figure.unit,
  explanation: explanationText(figure),
});

const money = (amount: Money | undefined): Row =>
  amount === undefined ? {} : { currency: amount.currency, amount: Number(amount.amount) };

const cost = ({ money: amount, figure }: Priced): Row => ({ ...money(amount), explanation: explanationText(figure) });
