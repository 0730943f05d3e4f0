// Every possible course of the years, one by one: the true distribution of short horizons.
import type { Frame, Renewals } from '../../language/lifecost/index.ts';

export interface Possible {
  readonly worth: number;
  readonly chance: number;
}

/** All that may happen on a course within the horizon, in order of worth. Grows beyond measure with the horizon. */
export function everyRun(course: Renewals, { years, rate, dayRate }: Frame): readonly Possible[] {
  const found: Possible[] = [];
  const steps = [...course.lead, ...course.cycle];
  const follow = (year: number, index: number, worth: number, chance: number): void => {
    if (year >= years) {
      found.push({ worth, chance });
      return;
    }
    const { work, life } = steps[index]!;
    const spent = worth + (work.material + work.labour + work.days * dayRate) / (1 + rate) ** year;
    const next = index + 1 < steps.length ? index + 1 : course.lead.length;
    for (const [lasts, p] of life.entries()) if (p > 0) follow(year + lasts, next, spent, chance * p);
  };
  follow(0, 0, 0, 1);
  return found.sort((a, b) => a.worth - b.worth);
}

/** The least worth that is not exceeded with chance `p`. */
export function trueQuantile(p: number, possible: readonly Possible[]): number {
  let upTo = 0;
  for (const { worth, chance } of possible) {
    upTo += chance;
    if (upTo >= p - 1e-12) return worth;
  }
  return possible.at(-1)!.worth;
}
