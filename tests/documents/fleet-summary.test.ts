// The summary of a fleet: its figures are those of the other papers, and what people typed stays text.
import { describe, expect, it } from 'vitest';
import { columnChart, fills } from '../../language/documents/charts/bars.ts';
import { fileOf } from '../../language/documents/charts/ink.ts';
import { decimal, sumOf, totalOf } from '../../language/documents/fleet/budget.ts';
import { lateLines, lateSum } from '../../language/documents/fleet/late.ts';
import {
  bayLoads,
  conditionsOf,
  duesByMonth,
  loadByWeek,
  moneyByMonth,
} from '../../language/documents/fleet/summary/figures.ts';
import { fleetPapers, twoYards } from './fleets.ts';
import { attribute, html, textOf, xml } from './sheets.ts';

const { scene, budget, texts } = fleetPapers({ 'a.rig': twoYards }, '2027-04-05', 'a.rig');
const text = texts.get('Yard.summary.html') as string;
const page = html(text);

describe('the figures of a summary', () => {
  it('count every overdue date once, and each month ahead', () => {
    const [late, ...months] = duesByMonth(scene);
    const work = scene.rigs.flatMap(({ dues }) => dues).filter(({ due }) => due.status === 'overdue');
    expect(late?.label).toBe('late');
    expect((late?.planned ?? 0) + (late?.pressing ?? 0) + (late?.later ?? 0)).toBe(work.length);
    expect(months.map(({ label }) => label)[0]).toBe('2027-04');
    expect(months).toHaveLength(12);
  });

  it('have as much seam as the rows have', () => {
    const rows = (texts.get('Yard.seams.jsonl') as string)
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line))
      .filter(({ role }) => role === 'sealed');
    const all = conditionsOf(scene).reduce((sum, { nm }) => sum + nm, 0);
    const byItem = new Map(rows.map(({ rig, item, length_mm }) => [`${rig} ${item}`, length_mm as number]));
    expect(all / 1e6).toBeCloseTo(
      [...byItem.values()].reduce((sum, mm) => sum + mm, 0),
      3,
    );
    expect(conditionsOf(scene).find(({ id }) => id === 'open')?.seams).toBe(1);
  });

  it('have the money of the budget, month by month', () => {
    for (const { month, material, labour, tax, expected } of moneyByMonth(budget, scene.asOf, 'USD')) {
      const sums = sumOf(budget.entries.filter((one) => one.currency === 'USD' && one.month === month));
      expect((material + labour + tax).toFixed(2)).toBe(decimal(totalOf(sums.planned), 'USD'));
      expect(expected.toFixed(2)).toBe(decimal(totalOf(sums.expected), 'USD'));
    }
  });

  it('set the work of a week against the hours of its crews: two yards with two people for 8 h on five days', () => {
    const weeks = loadByWeek(scene);
    expect(weeks[0]).toMatchObject({ monday: '2027-04-05', there: 2 * 2 * 8 * 5 });
    // A pair does in an hour what one person does in one and a half.
    const all = scene.schedule.visits
      .filter(({ days }) => days[0]! < '2027-07-05')
      .reduce((sum, { minutes, people }) => sum + (minutes / 60) * (people === 2 ? 2 / 1.5 : 1), 0);
    expect(weeks.reduce((sum, { taken }) => sum + taken, 0)).toBeCloseTo(all, 1);
  });

  it('know the bays of both yards', () => {
    expect(bayLoads(scene).map(({ bay }) => bay)).toEqual(['North-Shed', 'South-Shed', 'Long-barn']);
  });
});

describe('the page of a summary', () => {
  it('is strict HTML with one heading of the first level; every chart has a name, words and a table', () => {
    expect(page.errors).toEqual([]);
    expect(page.all.filter(({ tagName }) => tagName === 'h1')).toHaveLength(1);
    const charts = page.all.filter((one) => attribute(one, 'class') === 'chart');
    expect(charts).toHaveLength(5);
    for (const chart of charts) {
      const ids = (attribute(chart, 'aria-labelledby') as string).split(' ');
      for (const id of ids) expect(textOf(page.all.find((one) => attribute(one, 'id') === id)!)).toMatch(/\S/);
    }
    expect(page.all.filter(({ tagName }) => tagName === 'details')).toHaveLength(charts.length);
    const ids = page.all.flatMap((one) => attribute(one, 'id') ?? []);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('counts what is late as the list does, and says nothing of a roof that is safe or dry', () => {
    const words = textOf(page.all.find(({ tagName }) => tagName === 'main')!);
    expect(words).toContain(`${lateSum('', lateLines(scene)).lines} late`);
    expect(words).toContain('The budget in EUR stands in');
    expect(words).not.toMatch(/\b(is|are) (safe|dry)\b/);
  });
});

describe('a column chart', () => {
  it('has room for the longest figure of its axis, and no bar for nothing', () => {
    const chart = columnChart({
      id: 'c',
      title: 'T',
      unit: 'USD',
      description: 'D',
      series: [{ name: 'a', fill: fills.solid }],
      bars: [
        { label: 'x', parts: [187_000] },
        { label: 'y', parts: [0] },
      ],
    });
    const { all } = xml(fileOf(chart));
    const figure = all.find((one) => one.textContent === '200000' && one.tagName === 'text')!;
    // Its end stands at x; a letter is some 0.6 of its height wide.
    expect(Number(figure.getAttribute('x'))).toBeGreaterThan(6 * 11 * 0.6);
    const bars = all.filter((one) => one.tagName === 'rect' && one.getAttribute('fill')?.startsWith('url('));
    expect(bars).toHaveLength(2); // its key and the one bar
  });
});
