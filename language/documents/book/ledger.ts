// Materials with their lots, and what was paid, year by year.

import { unknownMaterial } from '../../statements/slots/amounts.ts';
import { moneyText } from '../../values/display.ts';
import { type Money, printMoney, sumMoney } from '../../values/money.ts';
import type { Content } from '../sheets/element.ts';
import { typed } from '../sheets/marks.ts';
import { shown } from '../sheets/shown.ts';
import { type Account, evidenceOf } from './account.ts';
import { joined, notRecorded } from './facts.ts';
import { linked } from './links.ts';
import { amountsText, amountText, dateOf, materialsOf, placesOf, verbOf } from './telling.ts';

/** A row for each material of each record that used one; by material, then in order of time. */
export function materialRows({ events, system }: Account): readonly (readonly Content[])[] {
  const rows = events.flatMap((event) => {
    const record = evidenceOf(event);
    return materialsOf(event).map((used) => ({
      name: used.name === unknownMaterial ? 'unknown' : used.name,
      cells: [
        dateOf(event),
        `${verbOf(event)} ${placesOf(event, system)}`,
        amountsText(used) ?? notRecorded,
        record?.lot === undefined ? notRecorded : typed(record.lot),
      ] as const,
    }));
  });
  return rows
    .map((row, i) => ({ ...row, i }))
    .sort((a, b) => (a.name === b.name ? a.i - b.i : a.name < b.name ? -1 : 1))
    .map(({ name, cells }) => [typed(name), ...cells]);
}

/** Purchases that the record names. */
export function boughtRows({ view, asOf }: Account): readonly (readonly Content[])[] {
  return view.rig.stock.flatMap((line) => {
    if (line.word !== 'bought' || line.date.first > asOf) return [];
    const { date, material, amount, price, from, lot, bestBefore } = line;
    return [
      [
        date.text,
        typed(material.name),
        amountText(amount),
        price ? moneyText(price) : notRecorded,
        from === undefined ? notRecorded : typed(from),
        [
          lot === undefined ? 'lot not recorded' : ['lot ', typed(lot)],
          bestBefore ? `; best before ${bestBefore.text}` : '',
        ],
      ],
    ];
  });
}

interface Payment {
  readonly date: string;
  readonly year: string;
  readonly what: Content;
  readonly money: Money;
  readonly papers: Content;
}

function payments({ events, view, asOf, system, folder }: Account): readonly Payment[] {
  const works = events.flatMap((event): Payment[] => {
    const record = evidenceOf(event);
    if (!record?.paid) return [];
    const papers = record.papers ?? [];
    return [
      {
        date: dateOf(event),
        year: event.last.slice(0, 4),
        what: `${verbOf(event)} ${placesOf(event, system)}`,
        money: record.paid,
        papers: papers.length === 0 ? notRecorded : joined(papers.map((paper) => linked(paper, event.file, folder))),
      },
    ];
  });
  const bought = view.rig.stock.flatMap((line): Payment[] => {
    if (line.word !== 'bought' || !line.price || line.date.first > asOf) return [];
    const { date, material, amount, price } = line;
    const what = ['material: ', typed(material.name), ` ${amountText(amount)}`];
    return [{ date: date.text, year: date.last.slice(0, 4), what, money: price, papers: notRecorded }];
  });
  return [...works, ...bought].sort((a, b) => (a.year === b.year ? 0 : a.year < b.year ? -1 : 1));
}

/** Every payment that is written down, with its papers. */
export function paidRows(account: Account): readonly (readonly Content[])[] {
  return payments(account).map(({ date, what, money, papers }) => [date, what, moneyText(money), papers]);
}

/** Sums by year and currency; a last row over all years. Currencies are never added to each other. */
export function yearRows(account: Account): readonly (readonly Content[])[] {
  const all = payments(account);
  const sums = (some: readonly Payment[]) =>
    [...new Set(some.map(({ money }) => money.currency))].sort().map((currency) => {
      const sum = sumMoney(
        some.flatMap(({ money }) => (money.currency === currency ? [money] : [])),
        currency,
      );
      return sum.ok ? printMoney(sum.value) : '';
    });
  const years = [...new Set(all.map(({ year }) => year))].sort();
  const count = (some: readonly Payment[]) => `${some.length} ${some.length === 1 ? 'payment' : 'payments'}`;
  const row = (name: string, some: readonly Payment[]) => [name, sums(some).join('; '), count(some)];
  if (years.length === 0) return [];
  return [
    ...years.map((year) =>
      row(
        year,
        all.filter((one) => one.year === year),
      ),
    ),
    row('all years', all),
  ];
}

/** Papers that records name, paid or not. */
export function paperRows({ events, folder, system }: Account): readonly (readonly Content[])[] {
  return events.flatMap((event) =>
    (evidenceOf(event)?.papers ?? []).map((paper) => [
      dateOf(event),
      linked(paper, event.file, folder),
      shown(`${verbOf(event)} ${placesOf(event, system)}`),
    ]),
  );
}
