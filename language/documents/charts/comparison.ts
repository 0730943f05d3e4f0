// What each way costs over the years, as lines; and how far each may fall out of its mean, as bars.
import type { Comparison, WayLine } from '../../lifecost/schema.ts';
import { rounded } from '../../values/exact.ts';
import type { Element } from '../sheets/element.ts';
import { el } from '../sheets/element.ts';
import { shortened, shown } from '../sheets/shown.ts';
import { fileOf, letters, line, picture, strokeOf, wideAs, words } from './ink.ts';
import { at, scaleTo, tickText } from './scale.ts';
import { spread } from './spread.ts';

export interface ChartOptions {
  /** Before the ids within the picture: unique where several charts stand in one page. */
  readonly id?: string;
}

const width = 640;
const [left, right, gap] = [58, 212, 17];
/** An end label takes a name on up to two lines and its amount. */
const [labelHigh, labelLetters, labelWide] = [46, 12, 24];

/**
 * Money spent up to the end of each year, at its present value, a line for each way, as an SVG document. A vertical mark
 * stands at the year from which on a way has cost less than touching up.
 */
export const comparisonChart = (comparison: Comparison, options: ChartOptions = {}): string =>
  fileOf(comparisonFigure(comparison, options));

/** The same as an element, to be put into a page. */
export function comparisonFigure(comparison: Comparison, { id = 'ways' }: ChartOptions = {}): Element {
  const { ways, currency, horizon } = comparison;
  const years = Math.max(1, ...ways.map(({ spent }) => spent.length - 1));
  const money = scaleTo(Math.max(1, ...ways.flatMap(({ spent }) => spent)), 5);
  const marks = marksOf(ways);
  const plotHigh = Math.max(250, labelHigh * ways.length);
  const top = 54 + marks.length * gap;
  const bottom = top + plotHigh;
  const x = (year: number) => left + (year / years) * (width - left - right);
  const y = (amount: number) => bottom - (amount / money.end) * plotHigh;
  const frame = {
    id,
    width,
    height: bottom + 44,
    title: 'What each way costs over the years',
    description: description(comparison),
  };
  return picture(
    frame,
    words(8, 20, 'What each way costs over the years', { 'font-weight': 'bold' }),
    words(8, 38, `${currency} at present value, spent up to the end of each year`),
    ...money.ticks.flatMap((tick) => [
      line([left, y(tick)], [width - right, y(tick)], { stroke: tick === 0 ? '#111111' : '#c8c8c8' }),
      words(left - 6, y(tick) + 4, tickText(tick), { 'text-anchor': 'end' }),
    ]),
    ...scaleTo(years, 8, 1)
      .ticks.filter((year) => year <= years)
      .flatMap((year) => [
        line([x(year), bottom], [x(year), bottom + 4]),
        words(x(year), bottom + 18, tickText(year), { 'text-anchor': 'middle' }),
      ]),
    words(x(years / 2), bottom + 36, `years from now, of ${horizon.text}`, { 'text-anchor': 'middle' }),
    ...marks.flatMap((mark, i) => markAt(mark, x(mark.year), top - gap * (marks.length - i) + 8, bottom)),
    ...linesOf(ways, x, y, years, [top, bottom]),
  );
}

interface Mark {
  readonly year: number;
  readonly text: string;
}

function marksOf(ways: readonly WayLine[]): readonly Mark[] {
  return ways.flatMap(({ name, paysFrom }) =>
    paysFrom ? [{ year: paysFrom.value, text: `${shortened(name, 30)} has cost less ${paysFrom.text}` }] : [],
  );
}

/** The label stands on the side of its mark that has room. */
function markAt({ year, text }: Mark, x: number, y: number, bottom: number): readonly Element[] {
  const fits = x + 5 + wideAs(text) < width;
  return [
    line([x, y - 10], [x, bottom], { 'stroke-width': 1.2, 'stroke-dasharray': '1 3', 'data-year': year }),
    words(fits ? x + 5 : x - 5, y, text, fits ? {} : { 'text-anchor': 'end' }),
  ];
}

function linesOf(
  ways: readonly WayLine[],
  x: (year: number) => number,
  y: (amount: number) => number,
  years: number,
  [top, bottom]: readonly [number, number],
): readonly Element[] {
  const ends = ways.map(({ spent }) => y(spent.at(-1) ?? 0));
  const places = spread(ends, labelHigh, top + letters - 6, bottom - 2 * gap + 8);
  const edge = x(years);
  return ways.map((way, i) => {
    const { colour, dash } = strokeOf(i);
    const points = way.spent.map((amount, year) => `${at(x(year))},${at(y(amount))}`).join(' ');
    const stroke = { stroke: colour, 'stroke-width': 2.2, 'stroke-dasharray': dash };
    const place = places[i] as number;
    return el(
      'g',
      { 'data-way': shown(way.key) },
      el('polyline', { points, fill: 'none', 'stroke-linejoin': 'round', ...stroke }),
      line([edge + 2, ends[i] as number], [edge + 10, place - 4], { stroke: '#777777', 'stroke-width': 0.8 }),
      line([edge + 10, place - 4], [edge + 36, place - 4], stroke),
      ...[...inLines(way.name), way.expected.text].map((text, row) =>
        words(edge + 40, place + row * (gap - 3), text, {
          'font-size': labelLetters,
          ...(text === way.expected.text ? { 'font-weight': 'bold' } : {}),
        }),
      ),
    );
  });
}

/** At most two lines; a name that is longer ends with an ellipsis. */
function inLines(name: string): readonly string[] {
  const all = shortened(name, 2 * labelWide);
  if ([...all].length <= labelWide) return [all];
  const cut = all.lastIndexOf(' ', labelWide);
  const [first, rest] = cut > 0 ? [all.slice(0, cut), all.slice(cut + 1)] : [all, ''];
  return rest === '' ? [shortened(first, labelWide)] : [first, shortened(rest, labelWide)];
}

function description({ ways, cheapest }: Comparison): string {
  if (ways.length === 0) return 'There is no way to compare.';
  const ends = ways.map(({ name, expected }) => `${shortened(name, 60)} ${expected.text}`).join('; ');
  const best = ways.find(({ key }) => key === cheapest);
  const pays = marksOf(ways).map(({ text }) => ` ${text}.`);
  return `Expected over the years: ${ends}.${best ? ` The least is expected of ${shortened(best.name, 60)}.` : ''}${pays.join('')}`;
}

/**
 * For each way a bar from the cost that is not exceeded with a chance of 10 % to that of 90 %, with a tick at 50 % and a
 * diamond at the expected cost, as an SVG document.
 */
export const rangeChart = (comparison: Comparison, options: ChartOptions = {}): string =>
  fileOf(rangeFigure(comparison, options));

export function rangeFigure({ ways, currency }: Comparison, { id = 'ranges' }: ChartOptions = {}): Element {
  const money = scaleTo(Math.max(1, ...ways.flatMap(({ high, expected }) => [high.value, expected.value])), 5);
  const [first, row] = [64, 46];
  const bottom = first + row * Math.max(1, ways.length);
  const x = (amount: number) => 24 + (amount / money.end) * (width - 70);
  const told = ways.map(
    ({ name, low, median, high, expected }) =>
      `${shortened(name, 60)}: ${low.text} to ${high.text}, half of the time up to ${median.text}, expected ${expected.text}`,
  );
  const title = 'How far the cost of each way may reach';
  return picture(
    { id, width, height: bottom + 28, title, description: `${told.join('; ')}.` },
    words(8, 20, title, { 'font-weight': 'bold' }),
    words(8, 38, `${currency} at present value: bar 10 to 90 %, tick 50 %, diamond the expected cost`),
    ...money.ticks.flatMap((tick) => [
      line([x(tick), first - 14], [x(tick), bottom], { stroke: '#c8c8c8' }),
      words(x(tick), bottom + 16, tickText(tick), { 'text-anchor': 'middle' }),
    ]),
    ...ways.map(({ key, name, low, median, high, expected }, i) => {
      const y = first + row * i;
      const [from, to, middle] = [x(low.value), x(high.value), x(expected.value)];
      const size = { x: at(from), y: y + 6, width: at(Math.max(1, to - from)), height: 14 };
      return el(
        'g',
        { 'data-way': shown(key) },
        words(26, y, `${shortened(name, 40)}, expected ${rounded(expected.value, 0)} ${currency}`),
        el('rect', { ...size, fill: '#d8d8d8', stroke: '#111111' }),
        line([x(median.value), y + 6], [x(median.value), y + 20], { 'stroke-width': 2 }),
        el('path', { d: `M${at(middle)} ${y + 5}l6 8l-6 8l-6 -8z`, fill: '#111111' }),
      );
    }),
  );
}
