// For which day the page of the morning is made.
import type { Schedule } from '../../schedule/index.ts';

/** The first day from the as-of date on with work of a visit; the as-of date itself where none is planned. */
export function morningDate({ visits, asOf }: Schedule): string {
  const [first] = visits.flatMap(({ days }) => days.filter((day) => day >= asOf)).sort();
  return first ?? asOf;
}
