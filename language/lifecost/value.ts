// What a choice is worth: mean, range, the course of the years.
import { type YearSum, yearSums } from './expected.ts';
import { type Moments, momentsOf } from './moments.ts';
import { certainly, chanceLess, type Outcomes, outcomeQuantile, together } from './outcomes.ts';
import { spreadOf } from './spread.ts';
import type { Choice, Frame } from './streams.ts';

/**
 * Cells of the money grid in a standard deviation of the present value. The mean is exact whatever the grid; a quantile
 * is right within three cells.
 */
const CELLS_PER_DEVIATION = 128;
const CELLS_OF_TOLERANCE = 3;

/** Cells from the least to the most possible amount at most: something dear and next to impossible makes the grid coarser. */
const MOST_CELLS = 16_384;

export interface Value {
  readonly name: string;
  /** Expected present value, exact on the yearly grid. */
  readonly mean: number;
  /** Standard deviation of the present value, exact on the yearly grid. */
  readonly deviation: number;
  /** The present value as a distribution. */
  readonly outcomes: Outcomes;
  /** Not exceeded with a chance of 10, 50 and 90 %; right within `tolerance`. */
  readonly low: number;
  readonly median: number;
  readonly high: number;
  readonly tolerance: number;
  /** Years 0 to the horizon. */
  readonly years: readonly YearSum[];
  /** Expected days off the road, all years together. */
  readonly days: number;
  /** Expected number of works, all years together; a yearly share counts as its share. */
  readonly works: number;
}

/** Values a choice over the horizon of the frame. Deterministic: no random numbers anywhere. */
export function valued(choice: Choice, frame: Frame): Value {
  const years = yearSums(choice, frame);
  const moments = choice.streams.map((stream) => momentsOf(stream, frame));
  const total = (figure: (each: Moments) => number) => moments.reduce((sum, each) => sum + figure(each), 0);
  const mean = total((each) => each.mean);
  const deviation = Math.sqrt(total(({ variance }) => variance));
  // Nothing is uncertain where all that deviates is rounding; any step will do then.
  const known = deviation <= 1e-12 * total(({ mean }) => Math.abs(mean));
  const step = known
    ? 1
    : Math.max(deviation / CELLS_PER_DEVIATION, total(({ least, most }) => most - least) / MOST_CELLS);
  const outcomes = choice.streams.map((stream) => spreadOf(stream, frame, step)).reduce(together, certainly(0, step));
  return {
    name: choice.name,
    mean,
    deviation: known ? 0 : deviation,
    outcomes,
    low: outcomeQuantile(0.1, outcomes),
    median: outcomeQuantile(0.5, outcomes),
    high: outcomeQuantile(0.9, outcomes),
    tolerance: known ? 0 : CELLS_OF_TOLERANCE * step,
    years,
    days: years.reduce((sum, year) => sum + year.days, 0),
    works: years.reduce((sum, year) => sum + year.number, 0),
  };
}

/** Chance that A turns out cheaper than B, the two being independent. See `chanceLess` for what that means. */
export function chanceCheaper(a: Value, b: Value): number {
  return chanceLess(a.outcomes, b.outcomes);
}
