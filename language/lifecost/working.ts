// How a present value came about, as a formula over plain numbers: for `Explained`.
import type { Input } from '../explain.ts';
import { rounded } from '../values/exact.ts';
import { moneyOf } from '../values/money.ts';
import { presentValue, type Row, rowsOf, timeOf } from './expected.ts';
import { costOf, type Frame, type Stream, type Work, type Yearly } from './streams.ts';

/** A figure, and the formula that gives it. */
export interface Formula {
  readonly value: number;
  readonly formula: string;
  readonly inputs: readonly Input[];
}

/** Where the factors come from, for `Explained.source`. */
export const METHOD = 'NIST Handbook 135 (2020); ASTM E917';

/** Today's cost of a work: `material + labour + days * day_rate`. */
export function costFormula(work: Work, frame: Frame, currency: string): Formula {
  return {
    value: costOf(work, frame),
    formula: 'material + labour + days * day_rate',
    inputs: [
      money('material', work.material, currency),
      money('labour', work.labour, currency),
      { name: 'days', value: work.days, unit: 'days', text: `${rounded(work.days, 2)} days` },
      money('day_rate', frame.dayRate, currency),
    ],
  };
}

/**
 * The expected present value of a stream: for each of its works today's cost times the sum, over the years, of expected
 * number times growth over discount. `cost_1 * (n_1_0 + n_1_5 / (1 + rate)^5) + ...`; a yearly work has its mean share in
 * place of the numbers.
 */
export function presentFormula(stream: Stream, frame: Frame, currency: string): Formula {
  const rows = rowsOf(stream, frame);
  const works = [...new Set(rows.map((row) => row.work))];
  const parts = works.map((work, i) => {
    const ours = rows.filter((row) => row.work === work);
    const cost = money(`cost_${i + 1}`, costOf(work, frame), currency);
    const { formula, inputs } =
      stream.kind === 'yearly' ? evenly(ours, stream, frame) : numbered(ours, `n_${i + 1}`, stream, frame);
    return { formula: `${cost.name} * ${formula}`, inputs: [cost, ...inputs] };
  });
  const rates = [percent('rate', frame.rate), ...(stream.growth ? [percent('growth', stream.growth)] : [])];
  return {
    value: presentValue(stream, frame),
    formula: parts.map(({ formula }) => formula).join(' + ') || '0',
    inputs: parts.length === 0 ? [] : [...rates, ...parts.flatMap(({ inputs }) => inputs)],
  };
}

type Part = Pick<Formula, 'formula' | 'inputs'>;

function numbered(rows: readonly Row[], name: string, stream: Stream, frame: Frame): Part {
  const inputs = rows.map(({ year, number }) => {
    return { name: `${name}_${year}`, value: number, text: rounded(number, 4) };
  });
  return { formula: yearsTogether(rows, (year) => `${name}_${year}`, stream, frame), inputs };
}

function evenly(rows: readonly Row[], stream: Yearly, frame: Frame): Part {
  const { least, likely, most, shape } = stream.share;
  const share = shape === 'pert' ? '(least + 4 * likely + most) / 6' : '(least + likely + most) / 3';
  const inputs = Object.entries({ least, likely, most }).map(([name, value]) => percent(name, value));
  return { formula: `${share} * ${yearsTogether(rows, () => '1', stream, frame)}`, inputs };
}

/** `(n_0 + n_3 * (1 + growth)^3 / (1 + rate)^3 + ...)`. */
function yearsTogether(rows: readonly Row[], numberIn: (year: number) => string, stream: Stream, frame: Frame): string {
  const terms = rows.map(({ year }) => {
    const grown = stream.growth && year > 0 ? [numberIn(year), `(1 + growth)^${year}`] : [numberIn(year)];
    const discounted = year > 0 ? [`(1 + rate)^${timeOf(year, stream, frame)}`] : [];
    return [grown.join(' * '), ...discounted].join(' / ');
  });
  return `(${terms.join(' + ')})`;
}

function money(name: string, value: number, currency: string): Input {
  return { name, value, unit: currency, text: moneyOf(value, currency).text };
}

function percent(name: string, value: number): Input {
  return { name, value, text: `${Number(rounded(value * 100, 4))} %` };
}
