// Bars: over the months or weeks of an axis, each of several parts; and lying, one a line, each with its amount beside it.
import type { Element } from '../sheets/element.ts';
import { el } from '../sheets/element.ts';
import { shortened } from '../sheets/shown.ts';
import { line, picture, words } from './ink.ts';
import { at, scaleTo, tickText } from './scale.ts';

/** A fill that is told apart by its marks too, in black and white and by whoever sees no colours. */
export interface Fill {
  readonly colour: string;
  /** Lines or dots over the colour, as a path in a tile of 6 by 6. */
  readonly marks?: string;
  readonly stroke?: number;
}

export const fills = {
  solid: { colour: '#16334d' },
  blank: { colour: '#ffffff' },
  slanted: { colour: '#f3cf7a', marks: 'M-1.5 7.5L7.5 -1.5M-1.5 1.5L1.5 -1.5M4.5 7.5L7.5 4.5', stroke: 0.9 },
  crossed: { colour: '#d9763f', marks: 'M0 0L6 6M6 0L0 6', stroke: 0.9 },
  dotted: { colour: '#cfe3f5', marks: 'M3 2.5v1', stroke: 1.4 },
  barred: { colour: '#e4e4e4', marks: 'M0 3h6', stroke: 0.9 },
  upright: { colour: '#d5ead6', marks: 'M3 0v6', stroke: 0.9 },
} as const satisfies Readonly<Record<string, Fill>>;

export interface Series {
  readonly name: string;
  readonly fill: Fill;
}

const [letters, width] = [11, 350];

function tiles(id: string, all: readonly Fill[]): Element {
  return el(
    'defs',
    {},
    ...all.map(({ colour, marks, stroke = 1 }, i) =>
      el(
        'pattern',
        { id: `${id}-${i}`, width: 6, height: 6, patternUnits: 'userSpaceOnUse' },
        el('rect', { width: 6, height: 6, fill: colour }),
        marks ? el('path', { d: marks, fill: 'none', stroke: '#111111', 'stroke-width': stroke }) : null,
      ),
    ),
  );
}

const small = { 'font-size': letters };

/** A box of a bar; of nothing there is none. */
const box = (x: number, y: number, w: number, h: number, fill: string): Element | null =>
  h < 0.01 || w < 0.01
    ? null
    : el('rect', { x: at(x), y: at(y), width: at(w), height: at(h), fill, stroke: '#111111', 'stroke-width': 0.6 });

export interface Columns {
  /** Unique in the page. */
  readonly id: string;
  readonly title: string;
  /** What the axis counts: `EUR`, `h`. */
  readonly unit: string;
  /** What it tells in words. */
  readonly description: string;
  readonly series: readonly Series[];
  /** The parts in the order of the series, from the bottom; `limit` is a mark across the bar. */
  readonly bars: readonly { readonly label: string; readonly parts: readonly number[]; readonly limit?: number }[];
  readonly limitName?: string;
}

/** Stacked columns along an axis of time. */
export function columnChart({ id, title, unit, description, series, bars, limitName }: Columns): Element {
  const [top, high] = [40, 112];
  const bottom = top + high;
  const sums = bars.map(({ parts, limit = 0 }) =>
    Math.max(
      limit,
      parts.reduce((sum, one) => sum + one, 0),
    ),
  );
  const scale = scaleTo(Math.max(1, ...sums), 4, 1);
  // Room for the longest figure of the axis.
  const left = Math.max(40, 10 + Math.max(...scale.ticks.map((tick) => tickText(tick).length)) * letters * 0.64);
  const step = (width - left - 6) / Math.max(1, bars.length);
  const y = (value: number) => bottom - (value / scale.end) * high;
  const wide = step * 0.72;
  const every = Math.ceil(30 / step);
  const legend = [...series.map(({ name }) => name), ...(limitName === undefined ? [] : [limitName])];
  let along = left;
  const keys = legend.flatMap((name, i) => {
    const x = along;
    along += 15 + [...name].length * letters * 0.54 + 8;
    return [
      i < series.length
        ? box(x, 22, 10, 9, `url(#${id}-${i})`)
        : line([x, 26.5], [x + 11, 26.5], { 'stroke-width': 2.4, stroke: '#8a1c1c' }),
      words(x + 14, 30.5, name, small),
    ];
  });
  return picture(
    { id, width, height: bottom + 18, title, description },
    tiles(
      id,
      series.map(({ fill }) => fill),
    ),
    words(2, 13, title, { 'font-weight': 'bold', 'font-size': 12 }),
    words(width - 2, 13, unit, { ...small, 'text-anchor': 'end' }),
    ...keys,
    ...scale.ticks.flatMap((tick) => [
      line([left, y(tick)], [width - 4, y(tick)], { stroke: tick === 0 ? '#111111' : '#d4d4d4' }),
      words(left - 4, y(tick) + 4, tickText(tick), { ...small, 'text-anchor': 'end' }),
    ]),
    ...bars.flatMap(({ label, parts, limit }, i) => {
      const x = left + i * step + (step - wide) / 2;
      let below = 0;
      return [
        ...parts.map((part, k) => {
          below += part;
          return box(x, y(below), wide, y(below - part) - y(below), `url(#${id}-${k})`);
        }),
        limit === undefined
          ? null
          : line([x - 2, y(limit)], [x + wide + 2, y(limit)], { 'stroke-width': 2.4, stroke: '#8a1c1c' }),
        i % every === 0 ? words(x + wide / 2, bottom + 13, label, { ...small, 'text-anchor': 'middle' }) : null,
      ];
    }),
  );
}

export interface Rows {
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  readonly description: string;
  readonly rows: readonly {
    readonly label: string;
    readonly value: number;
    readonly text: string;
    readonly fill: Fill;
  }[];
  /** The end of the axis, where it is not the longest bar. */
  readonly end?: number;
}

/** Lying bars, one a line. */
export function rowChart({ id, title, unit, description, rows, end }: Rows): Element {
  const [left, top, gap, room] = [162, 22, 15, 78];
  const most = end ?? Math.max(1e-9, ...rows.map(({ value }) => value));
  const x = (value: number) => (value / most) * (width - left - room);
  return picture(
    { id, width, height: top + gap * Math.max(1, rows.length) + 4, title, description },
    tiles(
      id,
      rows.map(({ fill }) => fill),
    ),
    words(2, 13, title, { 'font-weight': 'bold', 'font-size': 12 }),
    words(width - 2, 13, unit, { ...small, 'text-anchor': 'end' }),
    ...rows.flatMap(({ label, value, text }, i) => {
      const y = top + gap * i;
      return [
        words(left - 5, y + 10, shortened(label, 27), { ...small, 'text-anchor': 'end' }),
        box(left, y, x(value), 11, `url(#${id}-${i})`),
        words(left + x(value) + 4, y + 10, text, small),
      ];
    }),
    line([left, top - 2], [left, top + gap * Math.max(1, rows.length)]),
  );
}
