// Plans that wait for what has to be ordered.
import type { RigWork } from './board.ts';
import { titleOf } from './job.ts';
import { compare } from './obstacle.ts';
import type { Waiting } from './types.ts';

/** A plan whose material is not on hand is waiting until that can be there; the latest material of each plan. */
export function waitingOf({ ground, jobs }: RigWork): readonly Waiting[] {
  const rig = ground.view.rig.name;
  return jobs.flatMap((job): readonly Waiting[] => {
    const last = [...job.waits].sort((a, b) => compare(b.date, a.date))[0];
    if (!last) return [];
    return [
      {
        rig,
        title: titleOf(job),
        material: last.material,
        since: last.since,
        until: last.date,
        because: `${last.because}.`,
      },
    ];
  });
}
