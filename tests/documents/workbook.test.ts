import type { Workbook } from '@cj-tech-master/excelts';
import { Decimal } from 'decimal.js';
import { describe, expect, it } from 'vitest';
import type { EstimatePaper } from '../../language/documents/papers.ts';
import { estimateWorkbook } from '../../language/documents/workbook/index.ts';
import { dates, papersOf, single } from './examples.ts';
import {
  cellOf,
  estimateOf,
  readWorkbook,
  recalculated,
  rowCount,
  sheet,
  titles,
  workbookOf,
} from './workbook-read.ts';

const names = ['Wren', 'Highmeadow'] as const;
const money = (of: { readonly money: { readonly amount: string } } | undefined) => Number(of?.money.amount);

/** Half up at the minor unit, in decimals of another library than ours. */
const halfUp = (amount: Decimal, digits = 2) => amount.toDecimalPlaces(digits, Decimal.ROUND_HALF_UP);

/** The price in the row of the sheet of prices whose columns say so. */
function priceCell(workbook: Workbook, says: Readonly<Record<string, unknown>>) {
  const prices = sheet(workbook, 'Prices and rates');
  for (let row = 0; row < rowCount(prices); row += 1)
    if (Object.entries(says).every(([title, text]) => cellOf(prices, title, row).value === text))
      return cellOf(prices, 'value', row);
  throw new Error(`no row says ${JSON.stringify(says)}`);
}

describe.each(names)('the workbook of %s, worked out anew', (name) => {
  it('comes to the totals of the JSON', async () => {
    const summary = sheet(await recalculated(await workbookOf(name)), 'Summary');
    const { estimates, sums } = estimateOf(name);
    estimates.forEach(({ rig, totals, hours }, row) => {
      expect(cellOf(summary, 'rig', row).value).toBe(rig.name);
      expect(cellOf(summary, 'hours', row).result).toBeCloseTo(hours.likely.value, 9);
      for (const each of ['materials', 'labour', 'tax', 'total'] as const)
        expect([each, cellOf(summary, each, row).result]).toEqual([each, money(totals[each])]);
    });
    sums.forEach(({ total }, i) => {
      expect(cellOf(summary, 'total', estimates.length + i).result).toBe(total.value);
    });
  });

  it('has in every line what the JSON says', async () => {
    const workbook = await recalculated(await workbookOf(name));
    const { estimates } = estimateOf(name);
    const bought = estimates.flatMap(({ purchases }) =>
      purchases.flatMap(({ buy }) => (buy.length === 0 ? [undefined] : buy.map((line) => line))),
    );
    bought.forEach((line, row) => {
      expect(cellOf(sheet(workbook, 'To buy'), 'count', row).value ?? undefined).toBe(line?.count);
      expect(cellOf(sheet(workbook, 'To buy'), 'cost', row).result).toBe(line && money(line.cost));
    });
    estimates
      .flatMap(({ labour }) => labour)
      .forEach((line, row) => {
        const labour = sheet(workbook, 'Labour');
        expect(cellOf(labour, 'hours', row).formula).toBeDefined();
        expect(cellOf(labour, 'hours', row).result).toBeCloseTo(line.hours.likely.value, 9);
        expect(cellOf(labour, 'cost', row).result).toBe(money(line.cost));
      });
  });

  it('holds the result of each formula for programs that work nothing out', async () => {
    const bytes = await workbookOf(name);
    const [told, worked] = [await readWorkbook(bytes), await recalculated(bytes)];
    let formulas = 0;
    for (const of of told.worksheets)
      of.eachRow((row) =>
        row.eachCell((cell) => {
          if (cell.formula === undefined) return;
          formulas += 1;
          const again = sheet(worked, of.name).getCell(cell.address).result;
          if (typeof cell.result === 'number') expect(again, `${of.name} ${cell.address}`).toBeCloseTo(cell.result, 9);
          else expect(again ?? '', `${of.name} ${cell.address}`).toBe(cell.result ?? '');
        }),
      );
    expect(formulas).toBeGreaterThan(20);
  });
});

describe('a changed cell', () => {
  const estimate = () => estimateOf('Wren').estimates[0] as EstimatePaper['estimates'][number];
  const wage = 20;

  it.each([
    ['a price', 61.37, 1, 20, 6],
    ['a count', 58.5, 3, 20, 6],
    ['the price of work', 58.5, 1, 23.45, 6],
    ['the tax', 58.5, 1, 20, 7.25],
    ['all of them', 59.99, 2, 31.4, 8.875],
  ])('is followed by every total: %s', async (_, price, count, rate, percent) => {
    const workbook = await recalculated(await workbookOf('Wren'));
    priceCell(workbook, { of: 'SeamStrip4' }).value = price;
    priceCell(workbook, { of: 'hours of work' }).value = rate;
    priceCell(workbook, { kind: 'tax' }).value = percent;
    cellOf(sheet(workbook, 'To buy'), 'count', 0).value = count;
    workbook.calculateFormulas();

    const { purchases, labour, totals } = estimate();
    const materials = new Decimal(money(totals.materials))
      .minus(money(purchases[0]?.cost))
      .plus(new Decimal(price).times(count));
    const work = labour.reduce(
      (sum, line) => sum.plus(halfUp(new Decimal(line.hours.likely.value).times(rate).toDecimalPlaces(9))),
      new Decimal(0),
    );
    const tax = halfUp(materials.times(percent).div(100));
    const summary = sheet(workbook, 'Summary');
    expect(cellOf(summary, 'materials', 0).result).toBe(materials.toNumber());
    expect(cellOf(summary, 'labour', 0).result).toBe(work.toNumber());
    expect(cellOf(summary, 'tax', 0).result).toBe(tax.toNumber());
    expect(cellOf(summary, 'total', 0).result).toBe(materials.plus(work).plus(tax).toNumber());
    if (rate === wage) expect(work.toNumber()).toBe(money(totals.labour));
  });

  it('is one for the whole fleet: the tax and the price of a roll stand once', async () => {
    const workbook = await recalculated(await workbookOf('Highmeadow'));
    priceCell(workbook, { kind: 'tax' }).value = 0;
    workbook.calculateFormulas();
    const summary = sheet(workbook, 'Summary');
    const { estimates } = estimateOf('Highmeadow');
    const plain = estimates.map(({ totals }) => new Decimal(money(totals.materials)).plus(money(totals.labour)));
    plain.forEach((total, row) => {
      expect(cellOf(summary, 'total', row).result).toBe(total.toNumber());
    });
    const sum = plain.reduce((all, one) => all.plus(one), new Decimal(0));
    expect(cellOf(summary, 'total', estimates.length).result).toBe(sum.toNumber());

    const together = sheet(workbook, 'To buy together');
    const what = cellOf(together, 'buy', 0).value;
    const roll = priceCell(workbook, { of: 'RidgeTape100', what });
    roll.value = Number(roll.value) + 10;
    workbook.calculateFormulas();
    expect(cellOf(together, 'each', 0).result).toBe(Number(roll.value));
    const rolls = estimates.flatMap(({ purchases }) => purchases.filter((one) => one.material === 'RidgeTape100'));
    const lines = rolls.flatMap(({ buy }) => buy.filter((line) => line.what === what));
    const more = lines.reduce((all, line) => all + line.count, 0) * 10;
    expect(more).toBeGreaterThan(0);
    expect(cellOf(summary, 'total', estimates.length).result).toBe(sum.plus(more).toNumber());
  });

  it('may be a price that nobody knew', async () => {
    const paper = structuredClone(estimateOf('Wren')) as unknown as {
      estimates: { purchases: { cost?: unknown; buy: { unitPrice?: unknown; cost?: unknown }[] }[] }[];
    };
    const purchase = paper.estimates[0]?.purchases[0];
    delete purchase?.cost;
    delete purchase?.buy[0]?.unitPrice;
    delete purchase?.buy[0]?.cost;
    const workbook = await recalculated(await estimateWorkbook(paper as unknown as EstimatePaper));
    const cost = () => cellOf(sheet(workbook, 'To buy'), 'cost', 0).result ?? '';
    expect(cellOf(sheet(workbook, 'To buy'), 'each', 0).result).toBe('no price');
    expect(cost()).toBe('');
    priceCell(workbook, { unit: 'no price is known: enter it' }).value = 58.5;
    workbook.calculateFormulas();
    expect(cost()).toBe(58.5);
    expect(cellOf(sheet(workbook, 'Summary'), 'total', 0).result).toBe(money(estimate().totals.total));
  });
});

describe('money', () => {
  const inCurrency = (code: string, decimals: (text: string) => string) =>
    Object.fromEntries(
      Object.entries(single).map(([path, text]) => [
        path,
        text.replace(/(\d+(?:\.\d+)?) USD/g, (_, amount) => `${decimals(amount)} ${code}`).replaceAll('USD', code),
      ]),
    );

  it.each([
    ['JPY', '#,##0 "JPY"', (amount: string) => amount.replace(/\..*/, '')],
    ['USD', '#,##0.00 "USD"', (amount: string) => amount],
    ['KWD', '#,##0.000 "KWD"', (amount: string) => amount],
  ])('in %s has the decimals of its minor unit: %s', async (code, format, decimals) => {
    const paper = JSON.parse(
      papersOf(inCurrency(code, decimals), dates).get('Wren.estimate.json') as string,
    ) as EstimatePaper;
    const { totals } = paper.estimates[0] as EstimatePaper['estimates'][number];
    expect(totals.currency).toBe(code);
    const summary = sheet(await recalculated(await estimateWorkbook(paper)), 'Summary');
    for (const each of ['materials', 'labour', 'tax', 'total'] as const) {
      expect(cellOf(summary, each, 0).result).toBe(money(totals[each]));
      expect(cellOf(summary, each, 0).numFmt).toBe(format);
    }
  });
});

describe('the sheets', () => {
  it('are those that the papers have something for, under plain titles', async () => {
    const of = async (name: string) => (await readWorkbook(await workbookOf(name))).worksheets.map((one) => one.name);
    const rig = ['Summary', 'To buy', 'Prices and rates', 'Cutting list', 'Take-off', 'Labour', 'Over the years'];
    const words = ['Advice', 'Open points', 'Assumptions', 'Cautions'];
    expect(await of('Wren')).toEqual([...rig, ...words].filter((each) => (each === 'Open points' ? hasOpen : true)));
    expect(await of('Highmeadow')).toEqual(expect.arrayContaining(['To buy together', ...rig, 'Cautions']));
  });
  const { estimates, unplanned } = estimateOf('Wren');
  const hasOpen = unplanned.length + estimates.flatMap(({ questions }) => questions).length > 0;

  it('name the rig in a fleet, and only there', async () => {
    for (const each of ['To buy', 'Cutting list', 'Take-off', 'Labour', 'Over the years', 'Advice', 'Assumptions']) {
      expect(titles(sheet(await readWorkbook(await workbookOf('Highmeadow')), each))).toContain('rig');
      expect(titles(sheet(await readWorkbook(await workbookOf('Wren')), each))).not.toContain('rig');
    }
  });

  it('tell assumptions with their kind and source, and cautions with theirs', async () => {
    const workbook = await readWorkbook(await workbookOf('Wren'));
    const assumptions = sheet(workbook, 'Assumptions');
    const rows = Array.from({ length: rowCount(assumptions) }, (_, row) =>
      ['figure', 'value', 'kind'].map((title) => cellOf(assumptions, title, row).value),
    );
    for (const { name, text, kind } of estimates[0]?.assumptions ?? []) expect(rows).toContainEqual([name, text, kind]);
    estimateOf('Wren').cautions.forEach(({ text, source }, row) => {
      expect(cellOf(sheet(workbook, 'Cautions'), 'caution', row).value).toBe(text);
      expect(cellOf(sheet(workbook, 'Cautions'), 'source', row).value).toBe(source);
    });
  });

  it('hold the ways over the years as numbers', async () => {
    const years = sheet(await readWorkbook(await workbookOf('Wren')), 'Over the years');
    const comparison = estimateOf('Wren').comparisons[0]?.comparison;
    if (!comparison || 'reason' in comparison) throw new Error('nothing is compared');
    comparison.ways.forEach((way, row) => {
      expect(cellOf(years, 'expected', row).value).toBe(way.expected.value);
      expect(cellOf(years, 'range from', row).value).toBe(way.low.value);
      expect(cellOf(years, 'range to', row).value).toBe(way.high.value);
      expect(cellOf(years, 'days off', row).value).toBe(way.daysOff.value);
    });
  });
});
