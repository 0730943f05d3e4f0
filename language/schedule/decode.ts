// A list of clusters decoded into dated visits: one after the other takes the first days that keep every constraint, and the
// other plans of its rig join its visit as long as that makes none of them late. What is placed is not moved again.
import { addDays, addPeriod } from '../values/calendar.ts';
import { inSeason, seasonEnd } from '../values/season.ts';
import { dearMove, latenessOf } from './aim.ts';
import { attempt, type Board, emptyWork, hold, isReady, type RigWork, refuse } from './board.ts';
import type { Cluster, RigPlans } from './clusters.ts';
import type { Kept } from './earlier.ts';
import type { Job } from './job.ts';
import { endOf, type Held } from './place.ts';

/** A plan waits for company at least this long beyond the day on which it could be done alone (from memory). */
export const companyDays = 7;

/** A list decoded. */
export interface Decoded {
  readonly work: readonly RigWork[];
  /** Why visits of an earlier schedule could not keep their day. */
  readonly refused: ReadonlyMap<Kept, string>;
}

/** What is decided while a list is decoded. */
interface Course {
  readonly board: Board;
  readonly workOf: ReadonlyMap<RigPlans, RigWork>;
  /** What is not decided yet, in the order of the list. */
  readonly waiting: Set<Cluster>;
  readonly waitingOf: ReadonlyMap<RigPlans, Set<Cluster>>;
  readonly keptOf: Map<Cluster, Kept>;
  readonly refused: Map<Kept, string>;
}

export function decode(
  rigs: readonly RigPlans[],
  list: readonly Cluster[],
  kept: readonly Kept[],
  board: Board,
): Decoded {
  const workOf = new Map(rigs.map((rig) => [rig, emptyWork(rig)]));
  const waitingOf = new Map(rigs.map((rig) => [rig, new Set<Cluster>()]));
  for (const cluster of list) waitingOf.get(cluster.rig)?.add(cluster);
  const keptOf = new Map(kept.flatMap((one) => one.clusters.map((cluster) => [cluster, one] as const)));
  const course: Course = { board, workOf, waiting: new Set(list), waitingOf, keptOf, refused: new Map() };
  while (course.waiting.size > 0) {
    let next: Cluster | undefined;
    for (const one of course.waiting) {
      next ??= one;
      if (!isReady(one, [], workOf.get(one.rig) as RigWork)) continue;
      next = one;
      break;
    }
    placeNext(next as Cluster, course);
  }
  return { work: [...workOf.values()], refused: course.refused };
}

function decided(cluster: Cluster, { waiting, waitingOf }: Course): void {
  waiting.delete(cluster);
  waitingOf.get(cluster.rig)?.delete(cluster);
}

function placeNext(seed: Cluster, course: Course): void {
  const kept = course.keptOf.get(seed);
  if (kept && keepsDay(kept, seed, course)) return;
  const { board } = course;
  const work = course.workOf.get(seed.rig) as RigWork;
  const alone = attempt([seed], work, board);
  if ('refused' in alone) {
    decided(seed, course);
    refuse(seed, alone.refused, work, board);
    return;
  }
  const patience = patienceOf(seed, alone);
  if (joinsKept(seed, patience, course)) return;
  const { visit, group } = grown([seed], alone, patience, work, course);
  for (const one of group) decided(one, course);
  hold(visit, work, board);
}

/** Lets a visit of the earlier schedule keep its day; false if it cannot, or if that would make it late for nothing. */
function keepsDay(kept: Kept, seed: Cluster, course: Course): boolean {
  const { board, keptOf } = course;
  const work = course.workOf.get(seed.rig) as RigWork;
  const waiting = kept.clusters.filter((cluster) => course.waiting.has(cluster));
  const company = waiting.flatMap(({ jobs }) => jobs);
  const group = waiting.filter((cluster) => cluster === seed || isReady(cluster, company, work));
  const release = () => {
    for (const cluster of kept.clusters) keptOf.delete(cluster);
  };
  const stays = attempt(group, work, board, kept.wish);
  if ('refused' in stays) {
    course.refused.set(kept, stays.refused);
    release();
    return false;
  }
  const late = kept.frozen ? 0 : lateness(stays);
  if (late > 0) {
    const free = attempt(group, work, board);
    if (!('refused' in free) && late - lateness(free) > (kept.dear ? dearMove : 0)) {
      release();
      return false;
    }
  }
  const { visit, group: all } = grown(group, stays, undefined, work, course);
  for (const one of all) decided(one, course);
  hold(visit, work, board);
  return true;
}

/** A plan that is new goes with a visit that is kept anyway, if that is near enough. */
function joinsKept(seed: Cluster, patience: string, course: Course): boolean {
  for (const other of course.waitingOf.get(seed.rig) ?? []) {
    const kept = course.keptOf.get(other);
    if (!kept || kept.wish.day > patience) continue;
    if (!isReady(other, [], course.workOf.get(seed.rig) as RigWork)) continue;
    keepsDay(kept, other, course);
    if (!course.waiting.has(seed)) return true;
  }
  return false;
}

const lateness = (visit: Held) => latenessOf(visit.jobs, endOf(visit));

/**
 * A visit with whatever can join it. One that keeps its day (no patience) takes in only what needs no other day; what keeps
 * another day itself does not join.
 */
function grown(
  begun: readonly Cluster[],
  alone: Held,
  begunPatience: string | undefined,
  work: RigWork,
  { board, waitingOf, keptOf }: Course,
): { readonly visit: Held; readonly group: readonly Cluster[] } {
  const group = [...begun];
  let [visit, patience, more] = [alone, begunPatience, true];
  while (more) {
    more = false;
    for (const other of waitingOf.get(work.of) ?? []) {
      if (group.includes(other) || keptOf.has(other) || !goTogether(group, other)) continue;
      const mates = group.flatMap(({ jobs }) => jobs);
      if (!isReady(other, mates, work)) continue;
      const single = attempt([other], work, board);
      if ('refused' in single) continue;
      const own = patienceOf(other, single);
      const both = attempt([...group, other], work, board, patience === undefined ? wishOf(visit) : undefined);
      if ('refused' in both) continue;
      if (patience === undefined) {
        if (endOf(both) !== endOf(visit) || endOf(both) > own) continue;
      } else {
        const limit = [patience, own].sort()[0] as string;
        if (endOf(both) > limit) continue;
        patience = limit;
      }
      visit = both;
      more = true;
      group.push(other);
    }
  }
  return { visit, group };
}

function wishOf({ packed, team, bay }: Held) {
  return { day: packed.days[0] as string, people: team.people, ...(bay === undefined ? {} : { bay }) };
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
