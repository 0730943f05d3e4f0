// Plans that are done in one visit in any case, and how pressing each such cluster is.
import { asWritten } from '../resolve/done.ts';
import type { Fleet, Rig } from '../resolve/types.ts';
import { baysOf, fitsAny } from './bay.ts';
import { type Clock, clocksAfter, type Laid } from './clocks.ts';
import { type Ground, type Job, jobsOf } from './job.ts';
import { compare, type RigDays, rigDays } from './obstacle.ts';
import { type Load, withLoad } from './pack.ts';
import { planKeys } from './plan-keys.ts';
import { type Relation, relationsOf } from './relations.ts';
import { type Step, stepsOf } from './steps.ts';

/** The work of one rig as it is written, whenever it is done. */
export interface RigPlans {
  readonly ground: Ground;
  readonly days: RigDays;
  /** It goes into an indoor bay. */
  readonly roofed: boolean;
  readonly jobs: readonly Job[];
  readonly relations: readonly Relation[];
  /** Names of the jobs that stay the same from one schedule to the next. */
  readonly keys: ReadonlyMap<Job, string>;
  /** The steps of some jobs in one visit; worked out once. */
  readonly stepsOf: (jobs: readonly Job[]) => { readonly steps: readonly Step[]; readonly load: Load };
  /** The clocks after what was laid; worked out once. */
  readonly clocksAfter: (laid: readonly Laid[]) => readonly Clock[];
}

/** Plans that are tied to one another, directly or by others. */
export interface Cluster {
  readonly rig: RigPlans;
  readonly jobs: readonly Job[];
  /** What it is placed by, in this order: pinned first, then the last day, how bad it is, the rig, the line. */
  readonly pinned: boolean;
  readonly deadline: string;
  readonly severity: number;
  readonly row: number;
}

export function rigPlans(ground: Ground, fleet?: Fleet): RigPlans {
  const jobs = jobsOf(ground);
  const roofed = fitsAny(ground.view.rig, baysOf(fleet));
  return {
    ground,
    days: rigDays(ground.view, fleet),
    roofed,
    jobs,
    relations: relationsOf(jobs),
    keys: keysOf(jobs, ground.view.rig),
    clocksAfter: remembered(
      (laid: readonly Laid[]) => [...new Set(laid.map(({ material, day }) => `${material.name} ${day}`))].join(),
      clocksAfter,
    ),
    stepsOf: remembered(
      // The same plan without its last day has the same steps, but they name their jobs.
      (some: readonly Job[]) => some.map((job) => `${job.row}${job.free ? '~' : ''}`).join(),
      (some) => withLoad(stepsOf(some, ground.view.rig, roofed)),
    ),
  };
}

/** A function that works out each answer once. */
function remembered<A, B>(keyOf: (input: A) => string, make: (input: A) => B): (input: A) => B {
  const known = new Map<string, B>();
  return (input) => {
    const key = keyOf(input);
    const before = known.get(key);
    if (before !== undefined) return before;
    const made = make(input);
    known.set(key, made);
    return made;
  };
}

function keysOf(jobs: readonly Job[], rig: Rig): ReadonlyMap<Job, string> {
  const keys = planKeys(rig);
  return new Map(jobs.map((job) => [job, keys.get(asWritten(job.plan)) as string]));
}

export function clustersOf(rig: RigPlans): readonly Cluster[] {
  const clusters: Job[][] = [];
  const place = new Map<Job, Job[]>();
  for (const job of rig.jobs) {
    const mine = [job];
    clusters.push(mine);
    place.set(job, mine);
  }
  for (const { first, then, tied } of rig.relations) {
    const [a, b] = [place.get(first) as Job[], place.get(then) as Job[]];
    if (!tied || a === b) continue;
    a.push(...b);
    for (const job of b) place.set(job, a);
    clusters.splice(clusters.indexOf(b), 1);
  }
  return clusters.map((jobs) => {
    const inOrder = jobs.sort((a, b) => a.row - b.row);
    const deadlines = inOrder.map((job) => deadlineOf(job, rig.relations, new Set()));
    return {
      rig,
      jobs: inOrder,
      pinned: inOrder.some(({ pinned }) => pinned),
      deadline: deadlines.sort()[0] as string,
      severity: Math.max(...inOrder.map(({ severity }) => severity)),
      row: (inOrder[0] as Job).row,
    };
  });
}

const NEVER = '9999-12-31';

/** The last day of a plan or of anything that waits for it. */
function deadlineOf(job: Job, relations: readonly Relation[], seen: Set<Job>): string {
  seen.add(job);
  const later = relations.flatMap(({ first, then }) => (first === job && !seen.has(then) ? [then] : []));
  const own = [job.limit?.date ?? NEVER, job.due?.date ?? NEVER];
  return [...own, ...later.map((then) => deadlineOf(then, relations, seen))].sort()[0] as string;
}

export function byPriority(a: Cluster, b: Cluster): number {
  return (
    Number(b.pinned) - Number(a.pinned) ||
    compare(a.deadline, b.deadline) ||
    b.severity - a.severity ||
    compare(a.rig.ground.view.rig.name, b.rig.ground.view.rig.name) ||
    a.row - b.row
  );
}
