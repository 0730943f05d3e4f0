// Plans that wait for what has to be ordered.
import type { RigWork } from './board.ts';
import { titleOf } from './job.ts';
import { compare } from './obstacle.ts';
import type { Waiting } from './types.ts';

/**
 * A plan whose material is not on hand is waiting until that can be there: all materials of each plan, the latest first, since
 * the next schedule counts each from the day on which it was first named.
 */
export function waitingOf({ ground, jobs }: RigWork): readonly Waiting[] {
  const rig = ground.view.rig.name;
  return jobs.flatMap((job) =>
    [...job.waits]
      .sort((a, b) => compare(b.date, a.date))
      .map(({ material, since, date, because }): Waiting => {
        return { rig, title: titleOf(job), material, since, until: date, because: `${because}.` };
      }),
  );
}
