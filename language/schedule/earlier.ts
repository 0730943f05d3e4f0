// What was written before: visits of an earlier schedule, and which of the work of today they were to do.
import { addDays } from '../values/calendar.ts';
import type { Cluster } from './clusters.ts';
import type { Job } from './job.ts';
import type { Wish } from './place.ts';
import type { Schedule, Visit } from './types.ts';

/** This week is frozen: visits that begin so many days from the as-of date or sooner stay. */
export const frozenDays = 7;
/** Next week costs: until so many days from the as-of date a move has to save something. */
export const dearDays = 14;

/** A visit of an earlier schedule with the clusters of today that it was to do. */
export interface Kept {
  readonly visit: Visit;
  readonly clusters: readonly Cluster[];
  readonly wish: Wish;
  readonly frozen: boolean;
  readonly dear: boolean;
  /** Some of its work is gone, or new work is tied to it: it may need other days than it did. */
  readonly altered: boolean;
}

/** The visits that are still ahead and have work left, in the order in which they were decided. */
export function keptOf(earlier: Schedule | undefined, clusters: readonly Cluster[], asOf: string): readonly Kept[] {
  if (!earlier) return [];
  const ofRig = new Map<string, Cluster[]>();
  for (const cluster of clusters) {
    const { name } = cluster.rig.ground.view.rig;
    ofRig.set(name, [...(ofRig.get(name) ?? []), cluster]);
  }
  const taken = new Set<Cluster>();
  return [...earlier.visits]
    .sort((a, b) => (a.order ?? 0) - (b.order ?? 0))
    .flatMap((visit): readonly Kept[] => {
      // Today is frozen too; what was begun and has no record goes on.
      const day = visit.days.find((each) => each >= asOf);
      if (day === undefined) return [];
      const plans = new Set(visit.plans);
      const mine = (ofRig.get(visit.rig) ?? []).filter(
        (cluster) => !taken.has(cluster) && cluster.jobs.some((job) => plans.has(cluster.rig.keys.get(job) as string)),
      );
      if (mine.length === 0) return [];
      for (const cluster of mine) taken.add(cluster);
      const { crew, crewName, bay, because } = visit;
      return [
        {
          visit,
          clusters: mine,
          wish: {
            day,
            ...(crew ? { people: crew } : {}),
            ...(crewName === undefined ? {} : { crew: crewName }),
            ...(bay === undefined ? {} : { bay }),
            ...(because[0] === undefined ? {} : { because: because[0] }),
          },
          altered:
            plans.size !== count(mine) ||
            mine.some(({ jobs, rig }) =>
              jobs.some((job) => !plans.has(rig.keys.get(job) as string) || isPartlyDone(job, earlier.asOf)),
            ),
          frozen: day <= addDays(asOf, frozenDays),
          dear: day > addDays(asOf, frozenDays) && day <= addDays(asOf, dearDays),
        },
      ];
    });
}

/** Whether some of a plan was done since an earlier schedule was made. */
function isPartlyDone({ plan: { partly } }: Job, since: string): boolean {
  return partly !== undefined && partly.by.last >= since;
}

function count(clusters: readonly Cluster[]): number {
  return clusters.reduce((sum, { jobs }) => sum + jobs.length, 0);
}
