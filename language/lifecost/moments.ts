// Mean, variance and ends of a present value, exact.
import { backwards } from './backwards.ts';
import { costIn, factorOf } from './expected.ts';
import { type Frame, type Stream, spanOf, type Yearly } from './streams.ts';
import { meanOf, varianceOf } from './threepoint.ts';

export interface Moments {
  readonly mean: number;
  readonly variance: number;
  /** The least and the most that is possible at all, however unlikely. */
  readonly least: number;
  readonly most: number;
}

/** Mean, variance and ends of the present value of a stream. */
export function momentsOf(stream: Stream, frame: Frame): Moments {
  if (stream.kind === 'yearly') return ofYearly(stream, frame);
  return backwards<Moments>(stream, frame, { mean: 0, variance: 0, least: 0, most: 0 }, (branches) => {
    const mean = branches.reduce((sum, { chance, cost, ahead }) => sum + chance * (cost + ahead.mean), 0);
    // The law of total variance: no great squares are taken from each other.
    const variance = branches.reduce(
      (sum, { chance, cost, ahead }) => sum + chance * (ahead.variance + (cost + ahead.mean - mean) ** 2),
      0,
    );
    const least = Math.min(...branches.map(({ cost, ahead }) => cost + ahead.least));
    const most = Math.max(...branches.map(({ cost, ahead }) => cost + ahead.most));
    return { mean, variance, least, most };
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
  const ends = [whole * stream.share.least, whole * stream.share.most];
  return {
    mean: whole * meanOf(stream.share),
    variance: squares * varianceOf(stream.share),
    least: Math.min(...ends),
    most: Math.max(...ends),
  };
}
