// What a schedule is to be good at: least lateness weighted by severity, fewest visits, nobody moved, earliest.
import { daysBetween } from '../values/calendar.ts';
import type { RigWork } from './board.ts';
import type { Cost } from './core/index.ts';
import type { Kept } from './earlier.ts';
import type { Job } from './job.ts';
import { endOf, type Held } from './place.ts';

/**
 * What a move costs, in days of lateness times severity (from memory): later on a little less than a day sooner is worth for
 * the repair of an open seam, two plans of 6 each; next week twice that, since it has been told. Nobody is told a new day for less.
 */
export const laterMove = 10;
export const dearMove = 2 * laterMove;

/** What it costs that a visit leaves its day, in days of lateness times severity; this week does not move at all. */
export function moveCost({ frozen, dear }: Kept): number {
  return frozen ? 0 : dear ? dearMove : laterMove;
}

export function weightOf({ severity }: Job): number {
  return severity + 1;
}

/** Days late, times weight, of some jobs that are over on a day. */
export function latenessOf(jobs: readonly Job[], end: string): number {
  return jobs.reduce((sum, job) => {
    const last = [job.due?.date, job.pinned ? undefined : job.limit?.date].filter((day) => day !== undefined).sort()[0];
    return last === undefined || end <= last ? sum : sum + weightOf(job) * daysBetween(last, end);
  }, 0);
}

export function latenessOfAll(work: readonly RigWork[]): number {
  return work.reduce(
    (sum, { held }) => sum + held.reduce((all, visit) => all + latenessOf(visit.jobs, endOf(visit)), 0),
    0,
  );
}

/** Visits of the earlier schedule of which something is on another day now, or has none. */
export function movesOf(kept: readonly Kept[], dayOf: (job: Job) => string | undefined): readonly Kept[] {
  return kept.filter(({ clusters, wish }) => clusters.some(({ jobs }) => jobs.some((job) => dayOf(job) !== wish.day)));
}

export function dayOfIn(work: readonly RigWork[]): (job: Job) => string | undefined {
  const days = new Map<Job, string>();
  for (const { held } of work)
    for (const visit of held) for (const job of visit.jobs) days.set(job, visit.packed.days[0] as string);
  return (job) => days.get(job);
}

/** In this order: what has no day, lateness and moves, visits, days until the work begins. */
export function costOf(work: readonly RigWork[], kept: readonly Kept[], asOf: string): Cost {
  const moves = kept.length === 0 ? [] : movesOf(kept, dayOfIn(work));
  const visits: readonly Held[] = work.flatMap(({ held }) => held);
  const out = work.flatMap(({ unplaced }) => unplaced.map(({ job }) => weightOf(job)));
  return [
    out.reduce((sum, weight) => sum + weight, 0),
    latenessOfAll(work) + moves.reduce((sum, one) => sum + moveCost(one), 0),
    visits.length,
    visits.reduce((sum, { packed, jobs }) => {
      const weight = jobs.reduce((all, job) => all + weightOf(job), 0);
      return sum + weight * daysBetween(asOf, packed.days[0] as string);
    }, 0),
  ];
}
