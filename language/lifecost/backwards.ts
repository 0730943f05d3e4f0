// Works a course of renewals backwards in time: what lies ahead of a work, from what lies ahead of the later ones.
import { costIn, factorOf } from './expected.ts';
import { nextOf, stepsOf } from './occurrences.ts';
import type { YearlyLife } from './servicelife.ts';
import { type Frame, type Renewals, spanOf } from './streams.ts';

/** One way on: with `chance` the next work comes in a certain year, at `cost` (present value), and `ahead` after it. */
export interface Branch<T> {
  readonly chance: number;
  readonly cost: number;
  readonly ahead: T;
}

/**
 * What lies ahead of a course today, by dynamic programming over (work, year). `nothing` lies ahead where no further work
 * comes before the horizon; `mixed` makes one of the branches, whose chances are positive and add up to 1.
 */
export function backwards<T>(
  course: Renewals,
  frame: Frame,
  nothing: T,
  mixed: (branches: readonly Branch<T>[]) => T,
): T {
  const steps = stepsOf(course);
  const { through } = spanOf(course, frame);
  const known = new Map<number, T>();

  const behind = (index: number, year: number): T => {
    const key = index * (through + 1) + year;
    const value = known.get(key) ?? ahead(nextOf(course, index), year, steps[index]!.life);
    known.set(key, value);
    return value;
  };
  const ahead = (next: number | undefined, year: number, life: YearlyLife): T => {
    if (next === undefined) return nothing;
    const { work } = steps[next]!;
    const branches: Branch<T>[] = [];
    let never = 1;
    for (let years = 0; years < life.length && year + years <= through; years++) {
      const chance = life[years]!;
      if (chance <= 0) continue;
      const then = year + years;
      never -= chance;
      const cost = costIn(then, work, course, frame) * factorOf(then, course, frame);
      branches.push({ chance, cost, ahead: behind(next, then) });
    }
    // What is left by rounding alone is no way on.
    if (never > 1e-14 || branches.length === 0) branches.push({ chance: never, cost: 0, ahead: nothing });
    return mixed(branches);
  };
  return ahead(steps.length > 0 ? 0 : undefined, 0, course.wait ?? [1]);
}
