// The usual courses of work as streams.
import { chanceLife, fixedLife, type YearlyLife } from './servicelife.ts';
import type { Renewals, Step, Work } from './streams.ts';

/** A coating cycle. */
export interface Coating {
  readonly title: string;
  readonly recoat: Work;
  /** Strip down and coat anew: in place of a recoat where that would be one coat too many. */
  readonly strip: Work;
  /** How long a coat lasts. */
  readonly life: YearlyLife;
  /** The most coats that may lie on each other, 1 or more. */
  readonly limit: number;
  /** Coats that lie there now; where nobody knows, it counts as the limit, and the first work is a strip. */
  readonly now?: number;
  /** How long until the first work; today where missing. */
  readonly wait?: YearlyLife;
}

/** Recoating on a cycle, with a strip each time the limit of coats is reached. */
export function coatings({ title, recoat, strip, life, limit, now = limit, wait }: Coating): Renewals {
  if (!Number.isInteger(limit) || limit < 1) throw new RangeError(`no limit of coats: ${limit}`);
  if (!Number.isInteger(now) || now < 0) throw new RangeError(`no number of coats: ${now}`);
  const recoats = (count: number): Step[] => new Array<Step>(Math.max(0, count)).fill({ work: recoat, life });
  const cycle = [{ work: strip, life }, ...recoats(limit - 1)];
  return { kind: 'renewals', title, ...(wait && { wait }), lead: recoats(limit - now), cycle };
}

/** A work done now, such as laying tape or what a shop has quoted, and its renewal at the end of every life. */
export function renewed(title: string, first: Step, renewal: Step): Renewals {
  return { kind: 'renewals', title, lead: [first], cycle: [renewal] };
}

/** A work done now (a shop's quote, say) in front of a course that begins when it wears out. */
export function preceded(title: string, first: Step, course: Renewals): Renewals {
  return { ...course, title, lead: [first, ...course.lead] };
}

/** A single work in a year that is known: this year's, or the re-roof at the membrane's end; years up to the horizon count. */
export function once(title: string, work: Work, year: number): Renewals {
  const step = { work, life: fixedLife(1) };
  return {
    kind: 'renewals',
    title,
    ...(year > 0 && { wait: fixedLife(year) }),
    lead: [step],
    cycle: [],
    through: year,
  };
}

/** A single work when a life ends, such as a re-roof at the membrane's end, if that is before the horizon. */
export function atEndOf(title: string, wait: YearlyLife, work: Work): Renewals {
  return { kind: 'renewals', title, wait, lead: [{ work, life: fixedLife(1) }], cycle: [] };
}

/** A loss that comes with the same chance in each of `years` years, every year for itself: a leak that was missed. */
export function yearlyChance(title: string, loss: Work, chance: number, years: number): Renewals {
  const life = chanceLife(chance, years);
  return { kind: 'renewals', title, wait: life, lead: [], cycle: [{ work: loss, life }], through: years };
}
