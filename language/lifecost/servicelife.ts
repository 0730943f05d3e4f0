// How long a work lasts, in whole years.
import { chanceUpTo, gridded, type ThreePoint } from './threepoint.ts';

/** Chances that a work lasts 0, 1, 2, ... years, by index; they add up to 1, and none lasts 0 years. */
export type YearlyLife = readonly number[];

/**
 * A life over three points (in years, fractions welcome) on the yearly grid.
 *
 * `kept mean` (the default) shares a life of 1.5 years evenly between 1 and 2: as many renewals fall into a long horizon
 * as without the grid. It is the life of a work that was done at any time of its year. `year end` counts every life up to
 * the next end of a year, so chance of k is F(k) - F(k - 1): what wears out in a year is renewed at its end, and a cycle
 * of 1.5 years becomes one of 2.
 * Either way a life of less than a year counts as one: nothing is renewed twice a year.
 */
export function yearlyLife(points: ThreePoint, rounding: 'kept mean' | 'year end' = 'kept mean'): YearlyLife {
  if (points.least < 0) throw new RangeError(`no life: ${points.least}`);
  const chances = rounding === 'kept mean' ? keptMean(points) : yearEnd(points);
  const [none = 0, one = 0, ...more] = chances;
  return [0, none + one, ...more];
}

function keptMean(points: ThreePoint): readonly number[] {
  const { index, chances } = gridded(points, 1);
  return [...new Array<number>(index).fill(0), ...chances];
}

function yearEnd(points: ThreePoint): readonly number[] {
  const upTo = (year: number) => chanceUpTo(year, points);
  return Array.from(
    { length: Math.ceil(points.most) + 1 },
    (_, year) => upTo(year) - (year === 0 ? 0 : upTo(year - 1)),
  );
}

/** A life of just so many whole years, 1 or more. */
export function fixedLife(years: number): YearlyLife {
  requireLife(years);
  return [...new Array<number>(years).fill(0), 1];
}

/** A wait for something that comes with the same chance every year; what lies beyond `years` comes one year later. */
export function chanceLife(chance: number, years: number): YearlyLife {
  if (!(chance >= 0 && chance <= 1)) throw new RangeError(`no chance: ${chance}`);
  const comes = Array.from({ length: years }, (_, i) => chance * (1 - chance) ** i);
  return [0, ...comes, (1 - chance) ** years];
}

/** The life of what ends after so many years (1 or more) at the latest, as tape does with its membrane. */
export function cutOff(life: YearlyLife, years: number): YearlyLife {
  requireLife(years);
  if (life.length <= years + 1) return life;
  return [...life.slice(0, years), life.slice(years).reduce((sum, chance) => sum + chance, 0)];
}

/** The life of what ends with the first of two that wear out independently. */
export function soonest(a: YearlyLife, b: YearlyLife): YearlyLife {
  const [left, right] = [survival(a), survival(b)];
  const both = (year: number) => (left[year] ?? 0) * (right[year] ?? 0);
  return Array.from({ length: Math.min(a.length, b.length) }, (_, year) =>
    year === 0 ? 0 : both(year - 1) - both(year),
  );
}

/** Chances of lasting longer than 0, 1, 2, ... years. */
export function survival(life: YearlyLife): readonly number[] {
  let rest = 1;
  return life.map((chance, year) => {
    rest = year === life.length - 1 ? 0 : rest - chance;
    return rest;
  });
}

/** The mean life in years. */
export function meanLife(life: YearlyLife): number {
  return life.reduce((sum, chance, years) => sum + chance * years, 0);
}

/** The least number of years that is not outlived with chance `p`. */
export function lifeQuantile(p: number, life: YearlyLife): number {
  const left = survival(life);
  return left.findIndex((chance) => 1 - chance >= p - 1e-12);
}

function requireLife(years: number): void {
  if (!Number.isInteger(years) || years < 1) throw new RangeError(`no life in whole years: ${years}`);
}
