// What is done over the years under one choice, in plain numbers. Money is in major units of one currency, at today's
// prices; time in whole years from today, which is year 0.
import type { Timing } from './factors.ts';
import type { YearlyLife } from './servicelife.ts';
import type { ThreePoint } from './threepoint.ts';

/** A piece of work and what it costs today. */
export interface Work {
  readonly title: string;
  readonly material: number;
  readonly labour: number;
  /** Days off the road, each at the day rate of the frame. */
  readonly days: number;
}

/** A work, and how long it lasts until the next one is due. */
export interface Step {
  readonly work: Work;
  readonly life: YearlyLife;
}

/**
 * Works that follow each other as the one before wears out: first those of `lead` in order, then those of `cycle` round
 * and round (none: the last of `lead` is the last of all). Lives are independent of each other.
 */
export interface Renewals {
  readonly kind: 'renewals';
  readonly title: string;
  /** How long until the first work; today where it is missing. */
  readonly wait?: YearlyLife;
  readonly lead: readonly Step[];
  readonly cycle: readonly Step[];
  /** Yearly growth of the cost beyond the general rise of prices; 0 where missing. */
  readonly growth?: number;
  /** The last year that counts. The year before the horizon where missing: nobody renews on the day of parting. */
  readonly through?: number;
}

/** A share of a work, done every year. */
export interface Yearly {
  readonly kind: 'yearly';
  readonly title: string;
  /** The whole of it; each year costs its share. */
  readonly work: Work;
  /** From 0 to 1 as a rule. */
  readonly share: ThreePoint;
  /** Whether the share is drawn once and holds for all years (it is not known), or anew each year (it varies). */
  readonly drawn: 'once' | 'each year';
  readonly growth?: number;
  /** First and last year; 1 and the horizon where missing. */
  readonly from?: number;
  readonly through?: number;
}

export type Stream = Renewals | Yearly;

/** One choice: streams that do not depend on each other. */
export interface Choice {
  readonly name: string;
  readonly streams: readonly Stream[];
}

/** What all choices of a comparison share. */
export interface Frame {
  /** The horizon, in whole years. */
  readonly years: number;
  /** Discount rate a year, such as 0.03; real, as costs are at today's prices. */
  readonly rate: number;
  /** For yearly flows. */
  readonly timing: Timing;
  /** Cost of a day off the road. */
  readonly dayRate: number;
}

/** What a work costs at today's prices. */
export function costOf(work: Work, frame: Frame): number {
  return work.material + work.labour + work.days * frame.dayRate;
}

/** First and last year in which a stream may cost something. */
export function spanOf(stream: Stream, frame: Frame): { readonly from: number; readonly through: number } {
  return stream.kind === 'yearly'
    ? { from: stream.from ?? 1, through: Math.min(stream.through ?? frame.years, frame.years) }
    : { from: 0, through: Math.min(stream.through ?? frame.years - 1, frame.years) };
}
