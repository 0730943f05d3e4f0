// A list of clusters decoded into dated visits: one after the other takes the first days that keep every constraint, and the
// other plans of its rig join its visit as long as that makes none of them late. What is placed is not moved again.
import { addDays, addPeriod } from '../values/calendar.ts';
import { inSeason, seasonEnd } from '../values/season.ts';
import { latenessOf, moveCost } from './aim.ts';
import { attempt, attemptJobs, type Board, emptyWork, hold, isReady, type RigWork, refuse, release } from './board.ts';
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
  /** Visits that keep a day: they take in only what needs no other one. */
  readonly firm: Set<Held>;
  /** Whether there is an earlier schedule: then a pinned plan takes in others only when all that is kept has its day. */
  readonly again: boolean;
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
  const course: Course = {
    board,
    workOf,
    waiting: new Set(list),
    waitingOf,
    keptOf,
    firm: new Set(),
    again: kept.length > 0,
    refused: new Map(),
  };
  if (course.again) keepsWeek(list, kept, course);
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

/** What has a day of its own, then what this week keeps, before anything else has a choice. */
function keepsWeek(list: readonly Cluster[], kept: readonly Kept[], course: Course): void {
  const isOpen = (cluster: Cluster) =>
    course.waiting.has(cluster) && isReady(cluster, [], course.workOf.get(cluster.rig) as RigWork);
  for (const cluster of list) if (cluster.pinned && isOpen(cluster)) placeNext(cluster, course);
  // What can stay as it was has the first choice, before what has to do without a part.
  for (const whole of [true, false]) {
    for (const one of kept) {
      const seed = one.frozen ? one.clusters.find(isOpen) : undefined;
      if (seed && course.keptOf.has(seed)) keepsDay(one, seed, course, whole);
    }
  }
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
  const first = attempt([seed], work, board);
  const patience = 'refused' in first ? undefined : patienceOf(seed, first);
  if (course.again && patience !== undefined) {
    keepsNear(seed, patience, course);
    if (joinsFirm(seed, patience, work, course)) return;
  }
  // What is kept may have its day now where it was free before.
  const alone = course.again ? attempt([seed], work, board) : first;
  if ('refused' in alone) {
    decided(seed, course);
    refuse(seed, alone.refused, work, board);
    return;
  }
  const fixed = seed.pinned && course.again;
  const { visit, group } = fixed
    ? { visit: alone, group: [seed] }
    : grown([seed], alone, patienceOf(seed, alone), work, course);
  for (const one of group) decided(one, course);
  hold(visit, work, board);
  if (fixed) course.firm.add(visit);
}

/**
 * Lets a visit of the earlier schedule keep its day, if it must with what of it can be done on that day; false if it cannot, or
 * if that would make it late for nothing.
 */
function keepsDay(kept: Kept, seed: Cluster, course: Course, whole = false): boolean {
  const { board, keptOf } = course;
  const work = course.workOf.get(seed.rig) as RigWork;
  const waiting = kept.clusters.filter((cluster) => course.waiting.has(cluster));
  const company = waiting.flatMap(({ jobs }) => jobs);
  let group = waiting.filter((cluster) => cluster === seed || isReady(cluster, company, work));
  const letGo = (these: readonly Cluster[]) => {
    for (const cluster of these) keptOf.delete(cluster);
  };
  let stays = attempt(group, work, board, kept.wish);
  if ('refused' in stays) {
    if (whole) return false;
    course.refused.set(kept, stays.refused);
    // What could still be done on that day stays, without what could not.
    const able = group.filter((cluster) => !('refused' in attempt([cluster], work, board, kept.wish)));
    letGo(group.filter((cluster) => !able.includes(cluster)));
    if (able.length < group.length && able.length > 0) stays = attempt(able, work, board, kept.wish);
    group = able;
  }
  if ('refused' in stays) {
    letGo(kept.clusters);
    return false;
  }
  const late = kept.frozen ? 0 : lateness(stays);
  if (late > 0) {
    const free = attempt(group, work, board);
    if (!('refused' in free) && late - lateness(free) > moveCost(kept)) {
      letGo(kept.clusters);
      return false;
    }
  }
  for (const one of group) decided(one, course);
  hold(stays, work, board);
  course.firm.add(stays);
  return group.includes(seed);
}

/** Before a new plan of a rig is placed, what is kept of that rig until then gets its day. */
function keepsNear(seed: Cluster, patience: string, course: Course): void {
  const work = course.workOf.get(seed.rig) as RigWork;
  for (const other of [...(course.waitingOf.get(seed.rig) ?? [])]) {
    const kept = course.keptOf.get(other);
    if (kept && course.waiting.has(other) && kept.wish.day <= patience && isReady(other, [], work))
      keepsDay(kept, other, course);
  }
}

/** A plan that is new goes with a visit that keeps its day anyway, if that is near enough and its days stay as they are. */
function joinsFirm(seed: Cluster, patience: string, work: RigWork, course: Course): boolean {
  const { board, firm } = course;
  for (const visit of [...work.held]) {
    const end = endOf(visit);
    // Today's work is as it was told.
    if (visit.packed.days[0] === board.asOf) continue;
    if (!firm.has(visit) || end > patience || !goTogether(visit.jobs, seed)) continue;
    release(visit, work, board);
    const ready = isReady(seed, visit.jobs, work);
    const both = ready ? attemptJobs([...visit.jobs, ...seed.jobs], work, board, wishOf(visit)) : undefined;
    if (both === undefined || 'refused' in both || endOf(both) !== end) {
      hold(visit, work, board);
      continue;
    }
    const joined = { ...both, order: visit.order };
    hold(joined, work, board);
    firm.delete(visit);
    firm.add(joined);
    decided(seed, course);
    return true;
  }
  return false;
}

const lateness = (visit: Held) => latenessOf(visit.jobs, endOf(visit));

/** A visit with whatever can join it and keeps no other day. */
function grown(
  begun: readonly Cluster[],
  alone: Held,
  begunPatience: string,
  work: RigWork,
  { board, waitingOf, keptOf }: Course,
): { readonly visit: Held; readonly group: readonly Cluster[] } {
  const group = [...begun];
  let [visit, patience, more] = [alone, begunPatience, true];
  while (more) {
    more = false;
    for (const other of waitingOf.get(work.of) ?? []) {
      const mates = group.flatMap(({ jobs }) => jobs);
      if (group.includes(other) || keptOf.has(other) || !goTogether(mates, other)) continue;
      if (!isReady(other, mates, work)) continue;
      const single = attempt([other], work, board);
      if ('refused' in single) continue;
      const both = attempt([...group, other], work, board);
      const limit = [patience, patienceOf(other, single)].sort()[0] as string;
      if ('refused' in both || endOf(both) > limit) continue;
      [visit, patience, more] = [both, limit, true];
      group.push(other);
    }
  }
  return { visit, group };
}

function wishOf({ packed, team, bay, because: [because] }: Held) {
  return {
    ...(because === undefined ? {} : { because }),
    day: packed.days[0] as string,
    people: team.people,
    ...(team.of.name === undefined ? {} : { crew: team.of.name }),
    ...(bay === undefined ? {} : { bay }),
  };
}

/** A temporary cover bridges the time until the repair: both in one visit would be for nothing. */
function goTogether(company: readonly Job[], other: Cluster): boolean {
  const jobs = [...company, ...other.jobs];
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
