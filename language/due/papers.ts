// Dates that are written down: plans, quotes, best-before dates.
import { asWritten, itemsOf, openPlans } from '../resolve/done.ts';
import type { StockStatement } from '../statements/rig.ts';
import { type Due, dateInput, dueOn, type Ground } from './due.ts';
import { listed } from './inspection.ts';

type InFile = { readonly file: string };

/** Plans with a day of their own (`before`, `on`); one that may begin `after` a day is done once its work is recorded since. */
export function planDues(ground: Ground): readonly Due[] {
  const { rig } = ground.view;
  return openPlans(rig, ground.dates.asOf).flatMap((plan) => {
    const { statement, file } = plan;
    const day = statement.on ?? statement.before;
    if (!day) return [];
    const items = itemsOf(plan);
    const what = items.length === 0 ? 'the roof' : listed(items);
    const origin = {
      file,
      at: statement.spans[statement.on ? 'on' : 'before'] ?? statement.at,
      kind: 'record' as const,
    };
    const plain = {
      kind: 'plan' as const,
      word: statement.word,
      // By what is written, so that its name stays when some of it is done.
      ...(itemsOf(asWritten(plan)).length === 1 ? { item: items[0] as string } : {}),
      items,
      date: day.last,
      because: `It is planned to ${statement.word} ${what} ${statement.on ? 'on' : 'before'} ${day.text}.`,
      explained: { rule: 'as planned', formula: 'planned', inputs: [dateInput('planned', day.last, origin)] },
    };
    return [{ ...dueOn(plain, ground), sourceEvent: { file, at: statement.at } }];
  });
}

/** Quotes hold to their day. */
export function quoteDues(ground: Ground): readonly Due[] {
  return ground.view.rig.quotes.flatMap((quote) => {
    if (!quote.until) return [];
    const { from, price, file, at, until } = quote;
    const job = quote.job?.length ? ` for ${quote.job.join(', ')}` : '';
    const plain = {
      kind: 'quote' as const,
      nature: 'expiry' as const,
      date: until.last,
      because: `The quote of ${from}, ${price.text}${job}, holds until ${until.text}.`,
      explained: {
        rule: 'a quote holds to its day',
        formula: 'until',
        inputs: [dateInput('until', until.last, { file, at, kind: 'record' })],
      },
    };
    return [{ ...dueOn(plain, ground), sourceEvent: { file, at } }];
  });
}

/** A lot of material with its best-before date: a month stands for its last day. */
export interface Lot extends InFile {
  readonly material: string;
  readonly at: StockStatement['at'];
  readonly date: string;
  readonly text: string;
}

/**
 * The lots whose dates still matter. A count of the shelf (`on-hand`) beats purchases: where there is one, purchases of a
 * material that it does not name are used up, and a purchase lends its date to a line that gives none.
 */
export function lotsOf(stock: readonly (StockStatement & InFile)[]): readonly Lot[] {
  const counted = stock.filter((line) => line.word === 'on-hand');
  const shelf = counted.flatMap(({ stock: lines, file }) => lines.map((line) => ({ ...line, file })));
  const onShelf = new Set(shelf.map((line) => line.name));
  const dated = new Set(shelf.filter((line) => line.bestBefore).map((line) => line.name));
  const lots: Lot[] = [];
  for (const { name, at, file, bestBefore } of shelf) {
    if (bestBefore) lots.push({ material: name, at, file, date: bestBefore.last, text: bestBefore.text });
  }
  for (const line of stock) {
    if (line.word !== 'bought' || !line.bestBefore) continue;
    const { name } = line.material;
    if (dated.has(name) || (counted.length > 0 && !onShelf.has(name))) continue;
    lots.push({ material: name, at: line.at, file: line.file, date: line.bestBefore.last, text: line.bestBefore.text });
  }
  return lots;
}

/** Best-before dates of a rig's own stock. A fleet's stock is asked about with `lotsOf`. */
export function stockDues(ground: Ground): readonly Due[] {
  return lotsOf(ground.view.rig.stock).map(({ material, at, file, date, text }) => {
    const plain = {
      kind: 'best-before' as const,
      nature: 'expiry' as const,
      word: material,
      date,
      because: `${material} is best before ${text}.`,
      explained: {
        rule: 'as written on it',
        formula: 'best_before',
        inputs: [dateInput('best_before', date, { file, at, kind: 'record' })],
      },
    };
    return { ...dueOn(plain, ground), sourceEvent: { file, at } };
  });
}
