// What a stream is expected to cost, year by year.
import { requireRate, requireYears, singleFactor } from './factors.ts';
import { occurrences, stepsOf } from './occurrences.ts';
import { type Choice, costOf, type Frame, type Stream, spanOf, type Work } from './streams.ts';
import { meanOf } from './threepoint.ts';

/** One work in one year. `present = number x cost x factor`. */
export interface Row {
  readonly year: number;
  readonly work: Work;
  /** How often it is expected in that year: a chance, or the mean share of a yearly work. */
  readonly number: number;
  /** Cost of the whole work at the prices of that year: growth is in it, inflation is not. */
  readonly cost: number;
  /** What 1 in that year is worth today. */
  readonly factor: number;
  readonly present: number;
}

/** The years of a stream, in order of time; works that cannot occur have no row. */
export function rowsOf(stream: Stream, frame: Frame): readonly Row[] {
  requireFrame(frame);
  const rows: Row[] = [];
  const add = (year: number, work: Work, number: number) => {
    if (number === 0) return;
    const cost = costIn(year, work, stream, frame);
    const factor = factorOf(year, stream, frame);
    rows.push({ year, work, number, cost, factor, present: number * cost * factor });
  };
  const { from, through } = spanOf(stream, frame);
  if (stream.kind === 'yearly') {
    for (let year = from; year <= through; year++) add(year, stream.work, meanOf(stream.share));
    return rows;
  }
  const [steps, chances] = [stepsOf(stream), occurrences(stream, frame)];
  for (let year = from; year <= through; year++) {
    const numbers = new Map<Work, number>();
    for (const [index, { work }] of steps.entries()) {
      numbers.set(work, (numbers.get(work) ?? 0) + chances[index]![year]!);
    }
    for (const [work, number] of numbers) add(year, work, number);
  }
  return rows;
}

/** Cost of a work of the stream at the prices of a year. */
export function costIn(year: number, work: Work, { growth = 0 }: Stream, frame: Frame): number {
  requireRate(growth);
  return costOf(work, frame) * (1 + growth) ** year;
}

/** The discount factor of a stream in a year. */
export function factorOf(year: number, stream: Stream, frame: Frame): number {
  return singleFactor(frame.rate, timeOf(year, stream, frame));
}

/** The time from today that a year's cost is discounted for: single events their date, yearly flows as the frame times them. */
export function timeOf(year: number, stream: Stream, { timing }: Frame): number {
  return stream.kind === 'yearly' && timing === 'middle' && year > 0 ? year - 0.5 : year;
}

/** What is expected of all streams in one year. */
export interface YearSum {
  readonly year: number;
  /** Works, each by its chance or share. */
  readonly number: number;
  /** Days off the road. */
  readonly days: number;
  readonly cost: number;
  readonly present: number;
}

/** Years 0 to the horizon, each with what is expected of the choice in it. */
export function yearSums(choice: Choice, frame: Frame): readonly YearSum[] {
  const rows = choice.streams.flatMap((stream) => rowsOf(stream, frame));
  return Array.from({ length: frame.years + 1 }, (_, year) => {
    const ours = rows.filter((row) => row.year === year);
    const sum = (figure: (row: Row) => number) => ours.reduce((total, row) => total + figure(row), 0);
    return {
      year,
      number: sum((row) => row.number),
      days: sum((row) => row.number * row.work.days),
      cost: sum((row) => row.number * row.cost),
      present: sum((row) => row.present),
    };
  });
}

/** Expected present value of a stream. */
export function presentValue(stream: Stream, frame: Frame): number {
  return rowsOf(stream, frame).reduce((sum, row) => sum + row.present, 0);
}

function requireFrame({ years, rate }: Frame): void {
  requireYears(years);
  requireRate(rate);
}
