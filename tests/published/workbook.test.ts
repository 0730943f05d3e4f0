// The workbook worked out by LibreOffice Calc, a program that had no part in writing it, where it is on the PATH. What came of the
// formulas is taken out before, so that all it says is its own. Changed cells are followed by decimal.js.
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Decimal } from 'decimal.js';
import Papa from 'papaparse';
import { afterAll, describe, expect, it } from 'vitest';
import type { EstimatePaper } from '../../language/documents/papers.ts';
import { estimateTables, estimateWorkbook } from '../../language/documents/workbook/index.ts';
import { changed, estimateOf, headRow, withoutResults, workbookOf } from '../documents/workbook-read.ts';

const hasCalc = spawnSync('soffice', ['--version'], { stdio: 'ignore' }).status === 0;
const absent = 'soffice is not on the PATH: the workbook was worked out by one other program only';
const folder = mkdtempSync(join(tmpdir(), 'rigseam-workbook-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Fields 44, text in 34, UTF-8, from line 1; as text no, values as they are, formulas no; every sheet a file of its own. */
const everySheet = 'csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1';
let run = 0;

const sums = ['materials', 'labour', 'tax', 'total'] as const;
type Line = Partial<Readonly<Record<'rig' | 'count' | 'cost' | (typeof sums)[number], string>>>;
type Lines = readonly Line[];

/** The rows of a sheet by the titles of its columns, as LibreOffice works them out. */
function workedOut(bytes: Uint8Array): (sheet: string) => Lines {
  run += 1;
  writeFileSync(join(folder, `w${run}.xlsx`), withoutResults(bytes));
  const profile = `-env:UserInstallation=${pathToFileURL(join(folder, 'profile')).href}`;
  execFileSync('soffice', [profile, '--headless', '--convert-to', everySheet, '--outdir', folder, `w${run}.xlsx`], {
    cwd: folder,
    stdio: 'ignore',
    timeout: 120_000,
  });
  const mine = run;
  return (sheet) => {
    const rows = Papa.parse<string[]>(readFileSync(join(folder, `w${mine}-${sheet}.csv`), 'utf8')).data;
    const head = (rows[headRow - 1] ?? []).map((title) => title.replace(' (change)', ''));
    return rows
      .slice(headRow)
      .filter((row) => row.length > 1)
      .map((row) => Object.fromEntries(head.map((title, i) => [title, row[i] ?? ''])));
  };
}

/** To the last decimal of the currency: what is compared are amounts, not their spelling. */
function same(said: string | undefined, amount: string | number | undefined): void {
  expect(new Decimal(said || 'NaN').equals(amount ?? 'NaN'), `${said} is ${amount}`).toBe(true);
}

function comesToTheJson(paper: EstimatePaper, calc: (sheet: string) => Lines): void {
  const { estimates, sums: all } = paper;
  const rows = calc('Summary');
  estimates.forEach(({ rig, totals }, i) => {
    expect(rows[i]?.rig).toBe(rig.name);
    for (const each of sums) same(rows[i]?.[each], totals[each]?.money.amount);
  });
  all.forEach(({ total }, i) => {
    same(rows[estimates.length + i]?.total, total.value);
  });
  const bought = calc('To buy').filter((row) => row.count !== '');
  const lines = estimates.flatMap(({ purchases }) => purchases.flatMap(({ buy }) => buy));
  expect(bought).toHaveLength(lines.length);
  lines.forEach((line, i) => {
    same(bought[i]?.cost, line.cost?.money.amount);
  });
  const labour = calc('Labour');
  const tasks = estimates.flatMap((estimate) => estimate.labour);
  expect(labour).toHaveLength(tasks.length);
  tasks.forEach((task, i) => {
    same(labour[i]?.cost, task.cost?.money.amount);
  });
}

describe.each(['Wren', 'Highmeadow'])('LibreOffice works out the workbook of %s', (name) => {
  it('to the JSON, in every line and total', { timeout: 150_000 }, async (context) => {
    if (!hasCalc) return context.skip(absent);
    comesToTheJson(estimateOf(name), workedOut(await workbookOf(name)));
  });
});

/** The workbook of the trailer with other values in cells: by sheet, column and what the row says. */
function withValues(
  bytes: Uint8Array,
  paper: EstimatePaper,
  values: readonly (readonly [string, string, string, number])[],
) {
  const tables = estimateTables(paper);
  return changed(bytes, (text, part) => {
    const table = tables[Number(/sheet(\d+)\.xml$/.exec(part)?.[1]) - 1];
    let out = text;
    for (const [name, key, says, value] of values) {
      if (!part.startsWith('xl/worksheets/') || table?.name !== name) continue;
      const row = table.rows.findIndex((one) =>
        Object.values(one).some((cell) => cell && 'text' in cell && cell.text === says),
      );
      const column = String.fromCharCode(65 + table.columns.findIndex((one) => one.key === key));
      const cell = new RegExp(`(<c r="${column}${headRow + 1 + row}"[^>]*><v>)[^<]*`);
      if (!cell.test(out)) throw new Error(`${name} has no number at ${says}`);
      out = out.replace(cell, `$1${value}`);
    }
    return out;
  });
}

describe('a person changes', () => {
  const prices = 'Prices and rates';
  it.for([
    ['a price', { price: 61.37, count: 1, wage: 20, percent: 6 }],
    ['a price, a count, the price of work and the tax', { price: 60.05, count: 3, wage: 31.45, percent: 8.875 }],
  ] as const)('%s, and the total of LibreOffice follows', { timeout: 150_000 }, async ([, to], context) => {
    if (!hasCalc) return context.skip(absent);
    const paper = estimateOf('Wren');
    const [estimate] = paper.estimates;
    const [tape] = estimate?.purchases ?? [];
    if (!estimate || !tape) throw new Error('there is nothing to change');
    const calc = workedOut(
      withValues(await workbookOf('Wren'), paper, [
        [prices, 'value', tape.material, to.price],
        ['To buy', 'count', tape.material, to.count],
        [prices, 'value', 'hours of work', to.wage],
        [prices, 'value', 'tax', to.percent],
      ]),
    );
    const halfUp = (amount: Decimal) => amount.toDecimalPlaces(2, Decimal.ROUND_HALF_UP);
    const materials = new Decimal(estimate.totals.materials?.money.amount ?? 'NaN')
      .minus(tape.cost?.money.amount ?? 'NaN')
      .plus(new Decimal(to.price).times(to.count));
    const labour = estimate.labour.reduce(
      (sum, { hours }) => sum.plus(halfUp(new Decimal(hours.likely.value).times(to.wage).toDecimalPlaces(9))),
      new Decimal(0),
    );
    const tax = halfUp(materials.times(to.percent).div(100));
    const [row] = calc('Summary');
    same(row?.materials, materials.toString());
    same(row?.labour, labour.toString());
    same(row?.tax, tax.toString());
    same(row?.total, materials.plus(labour).plus(tax).toString());
  });
});

describe('halves of the minor unit', () => {
  /** Bases and rates whose tax lies at a half of a cent, where binary fractions err to either side. */
  const halves = [0.5, 0.7, 1.1, 2.3, 10.1, 16.7, 33.3, 70.1, 100.7, 1005.1, 8192.3].flatMap((base) =>
    [5, 15, 2.5, 7.5].map((percent) => [base, percent] as const),
  );

  it('are rounded up by LibreOffice as by the engine', { timeout: 150_000 }, async (context) => {
    if (!hasCalc) return context.skip(absent);
    const paper = estimateOf('Wren');
    const [estimate] = paper.estimates;
    const [purchase] = estimate?.purchases ?? [];
    const { totals } = estimate ?? {};
    const [line] = purchase?.buy ?? [];
    if (!estimate || !purchase || !line?.unitPrice || !totals?.tax) throw new Error('there is nothing to tax');
    const { tax } = totals;
    const estimates = halves.map(([base, percent], i) => ({
      ...estimate,
      rig: { ...estimate.rig, name: `rig-${i}` },
      labour: [],
      purchases: [
        { ...purchase, buy: [{ ...line, count: 1, unitPrice: { amount: String(base), currency: 'USD', text: '' } }] },
      ],
      totals: {
        ...totals,
        tax: {
          ...tax,
          figure: {
            ...tax.figure,
            inputs: tax.figure.inputs.map((one) => (one.name === 'tax' ? { ...one, value: percent } : one)),
          },
        },
      },
    }));
    const rows = workedOut(await estimateWorkbook({ ...paper, estimates }))('Summary');
    halves.forEach(([base, percent], i) => {
      const exact = new Decimal(base).times(percent).div(100).toDecimalPlaces(2, Decimal.ROUND_HALF_UP);
      same(rows[i]?.tax, exact.toString());
    });
  });
});
