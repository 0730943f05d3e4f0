// The charts of the summary, each with a table of its figures for whoever does not see it.
import { hoursText, lengthText, type System } from '../../../values/display.ts';
import { rounded } from '../../../values/exact.ts';
import { columnChart, type Fill, fills, rowChart } from '../../charts/bars.ts';
import { type Element, el } from '../../sheets/element.ts';
import { table } from '../../sheets/marks.ts';
import { shown } from '../../sheets/shown.ts';
import type { Budget } from '../budget.ts';
import type { FleetScene } from '../scene.ts';
import { bayLoads, conditionsOf, duesByMonth, loadByWeek, moneyByMonth } from './figures.ts';

/** A chart and, folded away, its figures. */
function framed(
  chart: Element,
  caption: string,
  heads: readonly string[],
  rows: readonly (readonly string[])[],
): Element {
  return el(
    'div',
    { class: 'picture' },
    chart,
    el('details', {}, el('summary', {}, `Figures: ${caption}`), table(caption, heads, rows)),
  );
}

/** `Nov` for `2026-11`; January with its year. */
function monthName(month: string): string {
  const [year = '', number = ''] = month.split('-');
  const name = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ')[Number(number) - 1] ?? month;
  return number === '01' ? `${name} ${year.slice(2)}` : name;
}

export function duesChart(scene: FleetScene): Element {
  const dues = duesByMonth(scene);
  const all = dues.reduce((sum, one) => sum + one.planned + one.pressing + one.later, 0);
  const [late] = dues;
  const chart = columnChart({
    id: 'dues',
    title: 'What falls due',
    unit: 'dates that ask for work',
    description: `Over today: ${(late?.planned ?? 0) + (late?.pressing ?? 0)}. In the twelve months ahead and over today together ${all}. The table beside it has each month.`,
    series: [
      { name: 'due or soon, no plan', fill: fills.crossed },
      { name: 'later, no plan', fill: fills.dotted },
      { name: 'planned', fill: fills.solid },
    ],
    bars: dues.map(({ label, planned, pressing, later }) => ({
      label: label === 'late' ? 'late' : monthName(label),
      parts: [pressing, later, planned],
    })),
  });
  return framed(
    chart,
    'what falls due, by month',
    ['month', 'due or soon, no plan', 'later, no plan', 'planned'],
    dues.map(({ label, planned, pressing, later }) => [label, ...[pressing, later, planned].map(String)]),
  );
}

const conditionFills: Readonly<Record<string, Fill>> = {
  open: fills.solid,
  lifting: { colour: '#d9763f', marks: 'M1.5 0v6M4.5 0v6', stroke: 1.3 },
  cracked: fills.crossed,
  hairline: fills.slanted,
  chalky: { colour: '#f4ecb8', marks: 'M3 2.5v1', stroke: 1.4 },
  'not-seen': { colour: '#e4e4e4', marks: 'M1 1h2v2h-2z', stroke: 0.8 },
  unknown: { colour: '#f6f6f6', marks: 'M0 3h6', stroke: 0.7 },
  renewed: fills.dotted,
  sound: fills.blank,
};

export function conditionsChart(scene: FleetScene, system: System): Element {
  const all = conditionsOf(scene).filter(({ seams }) => seams > 0);
  const length = (nm: number) => (system === 'us' ? `${rounded(nm / 304_800_000, 0)} ft` : `${rounded(nm / 1e9, 1)} m`);
  const chart = rowChart({
    id: 'conditions',
    title: 'Seams by what was last found',
    unit: 'length',
    description: all.map(({ words, nm, seams }) => `${words}: ${length(nm)} in ${seams} seams`).join('; '),
    rows: all.map(({ id, words, nm }) => ({
      label: words,
      value: nm,
      text: length(nm),
      fill: conditionFills[id] ?? fills.blank,
    })),
  });
  return framed(
    chart,
    'seams by what was last found',
    ['found', 'length', 'seams'],
    all.map(({ words, nm, seams }) => [words, lengthText(nm, system), String(seams)]),
  );
}

export function moneyChart(scene: FleetScene, budget: Budget, currency: string): Element {
  const months = moneyByMonth(budget, scene.asOf, currency);
  const sum = (key: 'material' | 'labour' | 'tax' | 'expected') => months.reduce((all, one) => all + one[key], 0);
  const money = (amount: number) => rounded(amount, 2);
  const planned = sum('material') + sum('labour') + sum('tax');
  const chart = columnChart({
    id: 'money',
    title: 'Budget',
    unit: currency,
    description: `In the twelve months ahead ${money(planned)} ${currency} are planned and ${money(sum('expected'))} ${currency} expected beyond.`,
    series: [
      { name: 'material', fill: fills.solid },
      { name: 'labour', fill: fills.slanted },
      { name: 'tax', fill: fills.barred },
      { name: 'only expected', fill: fills.blank },
    ],
    bars: months.map(({ month, material, labour, tax, expected }) => ({
      label: monthName(month),
      parts: [material, labour, tax, expected],
    })),
  });
  return framed(
    chart,
    `budget by month in ${currency}`,
    ['month', 'material', 'labour', 'tax', 'only expected'],
    months.map(({ month, material, labour, tax, expected }) => [
      month,
      ...[material, labour, tax, expected].map(money),
    ]),
  );
}

export function loadChart(scene: FleetScene): Element {
  const weeks = loadByWeek(scene);
  const full = weeks.filter(({ taken, there }) => there > 0 && taken > 0.9 * there).length;
  const hours = (all: number) => hoursText(all * 60);
  const chart = columnChart({
    id: 'load',
    title: 'Crew by week',
    unit: 'hours of people',
    description: `Of the ${weeks.length} weeks ahead ${full} are taken to more than nine tenths. The mark across each bar is what the crews have.`,
    series: [{ name: 'planned', fill: fills.upright }],
    limitName: 'what the crews have',
    bars: weeks.map(({ monday, taken, there }) => ({ label: monday.slice(5), parts: [taken], limit: there })),
  });
  return framed(
    chart,
    'hours of people by week',
    ['week from', 'planned', 'what the crews have'],
    weeks.map(({ monday, taken, there }) => [monday, hours(taken), hours(there)]),
  );
}

/** Nothing where the fleet has no indoor bay. */
export function baysChart(scene: FleetScene): Element | undefined {
  const all = bayLoads(scene);
  if (all.length === 0) return undefined;
  const text = ({ taken, of }: (typeof all)[number]) => `${taken} of ${of} days`;
  const shownRows = all.slice(0, 8);
  const chart = rowChart({
    id: 'bays',
    title: 'Bays',
    unit: 'days taken in 13 weeks',
    description: all.map((one) => `${shown(one.bay)}: ${text(one)}`).join('; '),
    end: all[0]?.of ?? 1,
    rows: shownRows.map((one) => ({ label: one.bay, value: one.taken, text: text(one), fill: fills.slanted })),
  });
  return framed(
    chart,
    'bays',
    ['bay', 'taken'],
    all.map((one) => [shown(one.bay), text(one)]),
  );
}
