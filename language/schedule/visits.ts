// Plans gathered into visits and visits placed one after the other, in a fixed order, so that a small change moves few others.
import type { Fleet } from '../resolve/types.ts';
import { addDays, addPeriod } from '../values/calendar.ts';
import { inSeason, seasonEnd } from '../values/season.ts';
import { type BayPlan, baysOf, withStay } from './bay.ts';
import type { Crew } from './crew.ts';
import type { Bound, Ground, Job } from './job.ts';
import { jobsOf } from './job.ts';
import { compare, type RigDays, rigDays } from './obstacle.ts';
import { type Ask, endOf, type Held, horizonOf, place, type Refusal, type Setting } from './place.ts';
import { type Relation, relationsOf } from './relations.ts';
import { stepsOf } from './steps.ts';

/** A plan waits for company at least this long beyond the day on which it could be done alone (from memory). */
export const companyDays = 7;

/** Plans that are done in one visit in any case. */
interface Cluster {
  readonly yard: RigWork;
  readonly jobs: readonly Job[];
  /** What it is placed by, in this order: pinned first, then the last day, how bad it is, the rig, the line. */
  readonly pinned: boolean;
  readonly deadline: string;
  readonly severity: number;
  readonly row: number;
}

/** The work of one rig while its schedule is made. */
export interface RigWork {
  readonly ground: Ground;
  readonly days: RigDays;
  readonly jobs: readonly Job[];
  readonly relations: readonly Relation[];
  /** What is neither placed nor refused yet. */
  readonly open: Set<Job>;
  readonly held: Held[];
  readonly unplaced: { readonly job: Job; readonly because: string; readonly firstDay?: string }[];
}

/** What is decided so far of all rigs together. */
interface Board {
  readonly asOf: string;
  readonly crew: Crew;
  bays: BayPlan;
}

/**
 * The visits of all rigs. List scheduling: the most pressing plans first (pinned days, then the earliest last day, then the
 * worst finding, then the name of the rig, then the line), each on the first days that keep every constraint; the other
 * plans of the rig join its visit as long as that makes none of them late. What is placed is not moved again.
 */
export function visitsOf(grounds: readonly Ground[], crew: Crew, asOf: string, fleet?: Fleet): readonly RigWork[] {
  const work = grounds.map((ground): RigWork => {
    const jobs = jobsOf(ground);
    return {
      ground,
      days: rigDays(ground.view, fleet),
      jobs,
      relations: relationsOf(jobs),
      open: new Set(jobs),
      held: [],
      unplaced: [],
    };
  });
  const board: Board = { asOf, crew, bays: baysOf(fleet) };
  const waiting = work.flatMap(clustersOf).sort(byPriority);
  while (waiting.length > 0) {
    const next = waiting.find((one) => isReady(one, [])) ?? (waiting[0] as Cluster);
    waiting.splice(waiting.indexOf(next), 1);
    const joined = schedule(next, waiting, board);
    for (const one of joined) waiting.splice(waiting.indexOf(one), 1);
  }
  return work;
}

/** Plans that are tied to one another, directly or by others. */
function clustersOf(yard: RigWork): readonly Cluster[] {
  const clusters: Job[][] = [];
  const place = new Map<Job, Job[]>();
  for (const job of yard.jobs) {
    const mine = [job];
    clusters.push(mine);
    place.set(job, mine);
  }
  for (const { first, then, tied } of yard.relations) {
    const [a, b] = [place.get(first) as Job[], place.get(then) as Job[]];
    if (!tied || a === b) continue;
    a.push(...b);
    for (const job of b) place.set(job, a);
    clusters.splice(clusters.indexOf(b), 1);
  }
  return clusters.map((jobs) => {
    const inOrder = jobs.sort((a, b) => a.row - b.row);
    const deadlines = inOrder.map((job) => deadlineOf(job, yard.relations, new Set()));
    return {
      yard,
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

function byPriority(a: Cluster, b: Cluster): number {
  return (
    Number(b.pinned) - Number(a.pinned) ||
    compare(a.deadline, b.deadline) ||
    b.severity - a.severity ||
    compare(a.yard.ground.view.rig.name, b.yard.ground.view.rig.name) ||
    a.row - b.row
  );
}

/** Whether nothing that is still open has to come first, apart from what is done in the same visit. */
function isReady({ jobs, yard }: Cluster, company: readonly Job[]): boolean {
  const together = [...jobs, ...company];
  return yard.relations.every(
    ({ first, then, wait }) =>
      !jobs.includes(then) || !yard.open.has(first) || (together.includes(first) && wait === undefined),
  );
}

/** Places a cluster with whatever can join it; returns what joined. */
function schedule(seed: Cluster, waiting: readonly Cluster[], board: Board): readonly Cluster[] {
  const { yard } = seed;
  const alone = attempt([seed], yard, board);
  if ('refused' in alone) {
    const firstDay = firstDayOf(seed, board);
    for (const job of seed.jobs) {
      yard.open.delete(job);
      yard.unplaced.push({ job, because: alone.refused, ...(firstDay === undefined ? {} : { firstDay }) });
    }
    return [];
  }
  let visit = alone;
  const group = [seed];
  let patience = patienceOf(seed, alone);
  let grown = true;
  while (grown) {
    grown = false;
    for (const other of waiting) {
      if (other.yard !== yard || group.includes(other) || !goTogether(group, other)) continue;
      const mates = group.flatMap(({ jobs }) => jobs);
      if (!isReady(other, mates)) continue;
      const single = attempt([other], yard, board);
      if ('refused' in single) continue;
      const both = attempt([...group, other], yard, board);
      const limit = [patience, patienceOf(other, single)].sort()[0] as string;
      if ('refused' in both || endOf(both) > limit) continue;
      [visit, patience, grown] = [both, limit, true];
      group.push(other);
    }
  }
  hold(visit, yard, board);
  return group.slice(1);
}

/** A temporary cover bridges the time until the repair: both in one visit would be for nothing. */
function goTogether(group: readonly Cluster[], other: Cluster): boolean {
  const jobs = [...group, other].flatMap((one) => one.jobs);
  return !(jobs.some(({ word }) => word === 'cover') && jobs.some(({ season }) => season));
}

/** Until when a plan may be held back so that others are done with it: in time, and not over a winter. */
function patienceOf({ jobs }: Cluster, alone: Held): string {
  const end = endOf(alone);
  const { policy } = (jobs[0] as Job).view.rig;
  const soft = jobs.flatMap(({ due, season }) => [
    ...(due ? [due.date] : []),
    ...(season && inSeason(end, policy.season.value) ? [seasonEnd(end, policy.season.value)] : []),
    ...(!season && !due ? [addPeriod(end, policy.dueSoon.value)] : []),
  ]);
  const held = soft.length > 0 ? (soft.sort()[0] as string) : end;
  return [held, addDays(end, companyDays)].sort()[1] as string;
}

function attempt(group: readonly Cluster[], yard: RigWork, board: Board, free = false): Held | Refusal {
  const written = group.flatMap(({ jobs }) => jobs);
  const jobs = free ? written.map(unlimited) : written;
  const limits = jobs.flatMap(({ limit, pinned }) => (limit && !pinned ? [limit.date] : []));
  const ask: Ask = {
    jobs,
    steps: stepsOf(jobs, yard.ground.view.rig),
    from: boundsOf(written, yard),
    end: [...limits, horizonOf(board.asOf)].sort()[0] as string,
  };
  const setting: Setting = { asOf: board.asOf, crew: board.crew, days: yard.days, bays: board.bays, held: yard.held };
  const found = place(ask, setting);
  // Out of season only where a day is set, and only indoors.
  const set = jobs.some(({ limit }) => limit !== undefined);
  if (!('refused' in found) || !set || board.bays.bays.length === 0) return found;
  const indoors = place({ ...ask, sheltered: true }, setting);
  return 'refused' in indoors || indoors.bay === undefined ? found : indoors;
}

/** The same plan without its last day. */
function unlimited({ limit: _, ...job }: Job): Job {
  return { ...job, pinned: false };
}

/** From when a group may be done by what is placed already. */
function boundsOf(jobs: readonly Job[], { relations, held }: RigWork): readonly Bound[] {
  return relations.flatMap(({ first, then, wait }): readonly Bound[] => {
    if (!jobs.includes(then) || jobs.includes(first)) return [];
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

function firstDayOf(cluster: Cluster, board: Board): string | undefined {
  const found = attempt([cluster], cluster.yard, board, true);
  return 'refused' in found ? undefined : found.packed.days[0];
}

function hold(visit: Held, yard: RigWork, board: Board): void {
  yard.held.push(visit);
  for (const job of visit.jobs) yard.open.delete(job);
  for (const [day, minutes] of visit.packed.taken) board.crew.take(visit.team, day, minutes);
  if (visit.bay !== undefined)
    board.bays = withStay(board.bays, visit.bay, visit.packed.days[0] as string, endOf(visit), visit.clocks);
}
