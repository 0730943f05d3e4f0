// When the works of a course fall due: sums of renewal theory on the yearly grid, exact.
import { type Frame, type Renewals, type Step, spanOf } from './streams.ts';

/** The works of a course, those of the lead first. */
export function stepsOf(course: Renewals): readonly Step[] {
  return [...course.lead, ...course.cycle];
}

/** Which of the works follows the one at `index`; undefined after the last. */
export function nextOf(course: Renewals, index: number): number | undefined {
  const [lead, all] = [course.lead.length, course.lead.length + course.cycle.length];
  if (index + 1 < all) return index + 1;
  return course.cycle.length > 0 ? lead : undefined;
}

/** Chance that a work falls due in a year: `chances[index][year]`. Each work is done at most once a year. */
export function occurrences(course: Renewals, frame: Frame): readonly (readonly number[])[] {
  const steps = stepsOf(course);
  const { through } = spanOf(course, frame);
  const chances = steps.map(() => new Array<number>(Math.max(0, through + 1)).fill(0));
  const add = (index: number, from: number, chance: number, life: readonly number[]) => {
    for (let years = 0; years < life.length && from + years <= through; years++) {
      chances[index]![from + years]! += chance * life[years]!;
    }
  };
  if (steps.length > 0) add(0, 0, 1, course.wait ?? [1]);
  for (let year = 0; year <= through; year++) {
    for (const [index, step] of steps.entries()) {
      const [chance, next] = [chances[index]![year]!, nextOf(course, index)];
      if (chance > 0 && next !== undefined) add(next, year, chance, step.life);
    }
  }
  return chances;
}
