// How a figure came about: printed alike by hover, estimate and test.
import type { Origin } from './resolve/types.ts';

/** One input of a figure. `value` and `unit` are the numbers that the formula was worked with. */
export interface Input {
  readonly name: string;
  readonly value: number | string;
  readonly unit?: string;
  /** As a person reads it: `28 ft`. */
  readonly text: string;
  readonly origin?: Origin;
}

/** A figure with its formula, its inputs and its source. */
export interface Explained {
  /** The figure, in `unit`. */
  readonly value: number;
  readonly unit: string;
  /** As a person reads it: `103 ft 2 in`. */
  readonly text: string;
  /** The rule in words. */
  readonly rule: string;
  /**
   * The formula over the names of the inputs, in plain arithmetic (`2 * (W + L) + 4 * w`): evaluated with their values it
   * gives `value`, rounding apart. Functions: ceil, floor, round, min, max, pi, sum.
   */
  readonly formula: string;
  readonly inputs: readonly Input[];
  /** A published source, where there is one. */
  readonly source?: string;
}
