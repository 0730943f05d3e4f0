import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { comparisonChart, rangeChart } from '../../language/documents/charts/index.ts';
import { scaleTo } from '../../language/documents/charts/scale.ts';
import { spread } from '../../language/documents/charts/spread.ts';
import { comparisonOf } from '../../language/lifecost/comparison.ts';
import type { Comparison } from '../../language/lifecost/schema.ts';
import { createProject } from '../../language/resolve/project.ts';
import { filesOf } from '../project/workspace.ts';
import { folder } from './books.ts';
import { papers } from './examples.ts';
import { xml } from './sheets.ts';

const view = createProject(filesOf(folder('single'))).rigs('wren.rig')[0]!;
const got = comparisonOf(view, '2026-11-25');
if (!('ways' in got)) throw new Error(got.reason);
const comparison: Comparison = got;
const named = (text: string, tag: string) => xml(text).all.filter(({ tagName }) => tagName === tag);

describe('the chart of the ways', () => {
  const chart = comparisonChart(comparison);

  it('has a name, a description and a line for each way, told apart without colour', () => {
    const { root } = xml(chart);
    expect(root.getAttribute('role')).toBe('img');
    expect(named(chart, 'desc')[0]?.textContent).toContain(comparison.ways[0]!.expected.text);
    const lines = named(chart, 'polyline');
    expect(lines).toHaveLength(comparison.ways.length);
    expect(new Set(lines.map((line) => line.getAttribute('stroke-dasharray'))).size).toBe(lines.length);
  });

  it('draws amounts to scale: heights above the axis are as the money', () => {
    const ticks = named(chart, 'line').map((line) => Number(line.getAttribute('y1')));
    const zero = Math.max(...named(chart, 'polyline').flatMap((l) => ends(l).map(([, y]) => y)), ...ticks.slice(0, 1));
    const [a, b] = named(chart, 'polyline').map((line) => zero - ends(line).at(-1)![1]);
    const [way, other] = comparison.ways;
    expect(a! / b!).toBeCloseTo(way!.spent.at(-1)! / other!.spent.at(-1)!, 1);
  });

  it('marks the year from which on a way has cost less', () => {
    const [first, ...rest] = comparison.ways;
    const paysFrom = { value: 3, unit: 'years', text: 'from year 3', rule: '' };
    const marked = comparisonChart({ ...comparison, ways: [first!, { ...rest[0]!, paysFrom }, ...rest.slice(1)] });
    const [mark] = named(marked, 'line').filter((line) => line.hasAttribute('data-year'));
    const points = ends(named(marked, 'polyline')[0]!);
    expect(Number(mark!.getAttribute('x1'))).toBe(points[3]![0]);
    expect(marked).toContain('from year 3');
  });

  it('keeps labels apart and takes hostile names as text', () => {
    const hostile = '</text><script>alert(1)</script>]]>"\u202e\u0000';
    for (const text of [comparisonChart, rangeChart].map((draw) =>
      draw({ ...comparison, ways: comparison.ways.map((way) => ({ ...way, name: hostile, key: hostile })) }),
    )) {
      expect(named(text, 'script')).toEqual([]);
      expect(text).toContain('&lt;/text>');
    }
  });
});

const ends = (line: { getAttribute(name: string): string | null }) =>
  (line.getAttribute('points') ?? '').split(' ').map((pair) => pair.split(',').map(Number) as [number, number]);

describe('labels and axes', () => {
  it('are spread in order, apart, and inside', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 1, maxLength: 6 }), (wanted) => {
        const places = spread(wanted, 10, 0, 100);
        const sorted = [...places].sort((a, b) => a - b);
        for (const [i, place] of sorted.entries()) {
          expect(place).toBeGreaterThanOrEqual(-1e-9);
          expect(place).toBeLessThanOrEqual(100 + 1e-9);
          if (i > 0) expect(place - (sorted[i - 1] as number)).toBeGreaterThanOrEqual(10 - 1e-9);
        }
        for (const [i, a] of wanted.entries())
          for (const [j, b] of wanted.entries()) if (a < b) expect(places[i]!).toBeLessThan(places[j]!);
      }),
    );
  });

  it('reach over the most in even round steps', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1e9, noNaN: true }), (most) => {
        const { end, ticks } = scaleTo(most, 5);
        expect(end).toBeGreaterThanOrEqual(most * (1 - 1e-9));
        expect(ticks.length).toBeLessThanOrEqual(7);
      }),
    );
  });
});

it('the estimate shows the chart that is written beside it, and none where there is none', () => {
  const shown = [...papers].flatMap(([name, text]) =>
    name.endsWith('.estimate.md')
      ? [...text.matchAll(/^!\[[^\]]+\]\(([^)]+)\)$/gm)].map(([, file]) => decodeURIComponent(file as string))
      : [],
  );
  const charts = [...papers.keys()].filter((name) => name.endsWith('.ways.svg'));
  expect(charts.length).toBeGreaterThan(1);
  expect(shown.sort()).toEqual(charts.sort());
});
