// Plans with a last day that are too long for the days until then, whoever else has plans.
import type { Dates, RigView } from '../resolve/types.ts';
import { emptyBoard } from './board.ts';
import { clustersOf, rigPlans } from './clusters.ts';
import { crewOf } from './crew.ts';
import { type Ground, groundWith, type Job } from './job.ts';
import { type TooLong, tooLong } from './too-long.ts';

/**
 * Plans of a rig for which one person, with the hours of the policy's workday, has too few days before their last one; of
 * plans that are done in one visit the first one with a last day stands for all. `worked` is asked for only where there are such
 * plans.
 */
export function tooLongPlans(
  view: RigView,
  dates: Dates,
  worked: () => Pick<Ground, 'state' | 'dues'>,
): readonly (TooLong & { readonly job: Job })[] {
  const isAhead = ({ statement: { before, on } }: RigView['rig']['plans'][number]) =>
    !on && before !== undefined && before.last > dates.asOf;
  if (!view.rig.plans.some(isAhead)) return [];
  const rig = rigPlans(groundWith(worked(), view, dates));
  const board = emptyBoard(dates.asOf, crewOf(view.rig.policy));
  return clustersOf(rig).flatMap(({ jobs }) => {
    const job = jobs.find(({ plan }) => isAhead(plan));
    const found = job && tooLong(jobs, rig, board);
    return job && found ? [{ ...found, job }] : [];
  });
}
