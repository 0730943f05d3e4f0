// A schedule while it is made: what is decided so far of all rigs together.

import type { Fleet } from '../resolve/types.ts';
import { type BayPlan, baysOf, withoutStay, withStay } from './bay.ts';
import type { Cluster, RigPlans } from './clusters.ts';
import type { Crew } from './crew.ts';
import type { Bound, Job } from './job.ts';
import { type Ask, endOf, type Held, horizonOf, place, type Refusal, type Setting, type Wish } from './place.ts';

/** The work of one rig while its schedule is made. */
export interface RigWork extends RigPlans {
  readonly of: RigPlans;
  /** What is neither placed nor refused yet. */
  readonly open: Set<Job>;
  readonly held: Held[];
  readonly unplaced: { readonly job: Job; readonly because: string; readonly firstDay?: string }[];
}

export interface Board {
  readonly asOf: string;
  readonly crew: Crew;
  bays: BayPlan;
  /** How many visits are decided. */
  decided: number;
}

export function emptyBoard(asOf: string, crew: Crew, fleet?: Fleet): Board {
  return { asOf, crew, bays: baysOf(fleet), decided: 0 };
}

export function emptyWork(rig: RigPlans): RigWork {
  return { ...rig, of: rig, open: new Set(rig.jobs), held: [], unplaced: [] };
}

/** Whether nothing that is still open has to come first, apart from what is done in the same visit. */
export function isReady({ jobs }: Cluster, company: readonly Job[], { relations, open }: RigWork): boolean {
  const together = [...jobs, ...company];
  return relations.every(
    ({ first, then, wait }) =>
      !jobs.includes(then) || !open.has(first) || (together.includes(first) && wait === undefined),
  );
}

/** The first days on which some clusters can be done in one visit, or why none will do; a wish names its day. */
export function attempt(group: readonly Cluster[], work: RigWork, board: Board, wish?: Wish): Held | Refusal {
  return attemptJobs(
    group.flatMap(({ jobs }) => jobs),
    work,
    board,
    wish,
  );
}

/** The same of plans, whatever cluster they belong to. */
export function attemptJobs(jobs: readonly Job[], work: RigWork, board: Board, wish?: Wish): Held | Refusal {
  const limits = jobs.flatMap(({ limit, pinned }) => (limit && !pinned ? [limit.date] : []));
  const ask: Ask = {
    jobs,
    ...work.stepsOf(jobs),
    from: boundsOf(jobs, work),
    end: [...limits, horizonOf(board.asOf)].sort()[0] as string,
    ...(wish ? { wish } : {}),
  };
  const { asOf, crew, bays, decided } = board;
  const { days, held, clocksAfter } = work;
  const setting: Setting = { asOf, crew, bays, decided, days, held, clocksAfter };
  const found = place(ask, setting);
  // Out of season only where a day is set, and only indoors.
  const set = jobs.some(({ limit }) => limit !== undefined);
  if (!('refused' in found) || !set || board.bays.bays.length === 0) return found;
  const indoors = place({ ...ask, sheltered: true }, setting);
  return 'refused' in indoors || indoors.bay === undefined ? found : indoors;
}

/** From when a group may be done by what is placed already. */
function boundsOf(jobs: readonly Job[], { relations, held }: RigWork): readonly Bound[] {
  const rows = new Set(jobs.map(({ row }) => row));
  return relations.flatMap(({ first, then, wait }): readonly Bound[] => {
    if (!rows.has(then.row) || rows.has(first.row)) return [];
    const before = held.find((visit) => visit.jobs.includes(first));
    if (!before) return [];
    const end = endOf(before);
    if (wait) return [wait(end)];
    const bound = { date: end, because: `${first.word} ${first.items.join(', ')} comes first, until ${end}` };
    // Lay order is kept where the days allow it; a plan that has to be done earlier is, and says so.
    const soft = first.word === 'tape' && then.word === 'tape';
    return soft && then.limit && then.limit.date < end ? [] : [bound];
  });
}

/** The first day that would do if the plans had no last day. */
export function firstDayOf({ jobs }: Cluster, work: RigWork, board: Board): string | undefined {
  const found = attemptJobs(jobs.map(unlimited), work, board);
  return 'refused' in found ? undefined : found.packed.days[0];
}

/** The same plan without its last day. */
export function unlimited({ limit: _, ...job }: Job): Job {
  return { ...job, pinned: false, free: true };
}

export function hold(visit: Held, work: RigWork, board: Board): void {
  work.held.push(visit);
  board.decided++;
  for (const job of visit.jobs) work.open.delete(job);
  for (const [day, minutes] of visit.packed.taken) board.crew.take(visit.team, day, minutes);
  if (visit.bay !== undefined)
    board.bays = withStay(board.bays, visit.bay, visit.packed.days[0] as string, endOf(visit), visit.clocks);
}

/** Takes a visit off the board again. */
export function release(visit: Held, work: RigWork, board: Board): void {
  work.held.splice(work.held.indexOf(visit), 1);
  board.decided--;
  for (const job of visit.jobs) work.open.add(job);
  for (const [day, minutes] of visit.packed.taken) board.crew.take(visit.team, day, -minutes);
  if (visit.bay !== undefined) board.bays = withoutStay(board.bays, visit.bay, visit.packed.days[0] as string);
}

export function refuse(cluster: Cluster, because: string, work: RigWork, board: Board): void {
  const firstDay = firstDayOf(cluster, work, board);
  for (const job of cluster.jobs) {
    work.open.delete(job);
    work.unplaced.push({ job, because, ...(firstDay === undefined ? {} : { firstDay }) });
  }
}
