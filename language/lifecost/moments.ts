// Mean and variance of a present value, exact.
import { backwards } from './backwards.ts';
import { costIn, factorOf } from './expected.ts';
import { type Frame, type Stream, spanOf, type Yearly } from './streams.ts';
import { meanOf, varianceOf } from './threepoint.ts';

export interface Moments {
  readonly mean: number;
  readonly variance: number;
}

/** Mean and variance of the present value of a stream. */
export function momentsOf(stream: Stream, frame: Frame): Moments {
  if (stream.kind === 'yearly') return ofYearly(stream, frame);
  return backwards<Moments>(stream, frame, { mean: 0, variance: 0 }, (branches) => {
    const mean = branches.reduce((sum, { chance, cost, ahead }) => sum + chance * (cost + ahead.mean), 0);
    // The law of total variance: no great squares are taken from each other.
    const variance = branches.reduce(
      (sum, { chance, cost, ahead }) => sum + chance * (ahead.variance + (cost + ahead.mean - mean) ** 2),
      0,
    );
    return { mean, variance };
  });
}

/** What the whole of a yearly work costs in each of its years, in present values. */
export function wholeYears(stream: Yearly, frame: Frame): readonly number[] {
  const { from, through } = spanOf(stream, frame);
  return Array.from({ length: Math.max(0, through - from + 1) }, (_, i) => {
    return costIn(from + i, stream.work, stream, frame) * factorOf(from + i, stream, frame);
  });
}

function ofYearly(stream: Yearly, frame: Frame): Moments {
  const years = wholeYears(stream, frame);
  const whole = years.reduce((sum, cost) => sum + cost, 0);
  const squares = stream.drawn === 'once' ? whole * whole : years.reduce((sum, cost) => sum + cost * cost, 0);
  return { mean: whole * meanOf(stream.share), variance: squares * varianceOf(stream.share) };
}
