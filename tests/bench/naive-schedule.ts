// A rule without thought, to compare with: each plan for itself on its earliest free day, rig by rig and line by line.
import type { Dates, Fleet, RigView } from '../../language/resolve/types.ts';
import { latenessOfAll } from '../../language/schedule/aim.ts';
import { attempt, emptyBoard, emptyWork, hold, isReady, refuse } from '../../language/schedule/board.ts';
import { clustersOf, rigPlans } from '../../language/schedule/clusters.ts';
import { crewOf } from '../../language/schedule/crew.ts';
import { groundOf } from '../../language/schedule/job.ts';
import { endOf } from '../../language/schedule/place.ts';

export interface Naive {
  readonly lateness: number;
  readonly visits: number;
  readonly last: string;
}

/** Plans that are tied to one another stay in one visit: what is stripped is not left bare. Every other constraint is kept. */
export function naiveSchedule(fleet: Fleet, views: readonly RigView[], dates: Dates): Naive {
  const board = emptyBoard(dates.asOf, crewOf(fleet.policy, fleet), fleet);
  const all = views.map((view) => {
    const booked = fleet.booked.filter(({ rig }) => rig === view.rig.name);
    const rig = rigPlans(groundOf({ ...view, booked }, dates, fleet.stock), fleet);
    const work = emptyWork(rig);
    const waiting = [...clustersOf(rig)];
    while (waiting.length > 0) {
      const next = waiting.find((one) => isReady(one, [], work)) ?? waiting[0];
      if (!next) break;
      waiting.splice(waiting.indexOf(next), 1);
      const alone = attempt([next], work, board);
      if ('refused' in alone) refuse(next, alone.refused, work, board);
      else hold(alone, work, board);
    }
    return work;
  });
  const visits = all.flatMap(({ held }) => held);
  return { lateness: latenessOfAll(all), visits: visits.length, last: visits.map(endOf).sort().at(-1) ?? '' };
}
