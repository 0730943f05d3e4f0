// What no order of work can be better than.
import { addDays } from '../values/calendar.ts';
import { latenessOf, weightOf } from './aim.ts';
import { fitsAny } from './bay.ts';
import { attempt, type Board, emptyWork } from './board.ts';
import type { Cluster } from './clusters.ts';
import { leastAssignment } from './core/index.ts';
import type { Kept } from './earlier.ts';
import { isDayOff } from './obstacle.ts';
import { endOf, type Wish } from './place.ts';
import { openers } from './words.ts';

export interface Floor {
  /** Weight of what has no place even on an empty board. */
  readonly unplaced: number;
  readonly lateness: number;
}

interface Alone {
  readonly cluster: Cluster;
  readonly end: string;
  readonly lateness: number;
}

/**
 * Each cluster alone on an empty board, today where it stood there before; and of those that leave a roof open, one of each rig ends on a day of its own in each
 * bay, which is an assignment of clusters to days for the least lateness. Both hold for every schedule, so their sum does.
 */
export function floorOf(clusters: readonly Cluster[], kept: readonly Kept[], board: () => Board): Floor {
  const { asOf } = board();
  const wishes = new Map(
    kept.flatMap((one) => (one.wish.day === asOf ? one.clusters.map((cluster) => [cluster, one.wish] as const) : [])),
  );
  let unplaced = 0;
  const alone: Alone[] = [];
  for (const cluster of clusters) {
    const held = (wish?: Wish) => attempt([cluster], emptyWork(cluster.rig), board(), wish);
    const today = wishes.has(cluster) ? held(wishes.get(cluster)) : undefined;
    const found = today && !('refused' in today) ? today : held();
    if ('refused' in found) {
      unplaced += cluster.jobs.reduce((sum, job) => sum + weightOf(job), 0);
      continue;
    }
    const end = endOf(found);
    alone.push({ cluster, end, lateness: latenessOf(cluster.jobs, end) });
  }
  const shared = ofEachRig(alone, board());
  const rest = alone.reduce((sum, one) => sum + (shared.includes(one) ? 0 : one.lateness), 0);
  return { unplaced, lateness: rest + inBays(shared, board()) };
}

/** Of each rig that goes into a bay the cluster that leaves its roof open and is late the most. */
function ofEachRig(alone: readonly Alone[], { bays }: Board): readonly Alone[] {
  const worst = new Map<Cluster['rig'], Alone>();
  for (const one of alone) {
    const { rig, jobs } = one.cluster;
    if (!jobs.some(({ word }) => openers.has(word)) || !fitsAny(rig.ground.view.rig, bays)) continue;
    const before = worst.get(rig);
    if (!before || weight(one) > weight(before)) worst.set(rig, one);
  }
  return [...worst.values()];
}

/** What a day more would cost. */
function weight({ cluster: { jobs }, end }: Alone): number {
  return latenessOf(jobs, addDays(end, 1)) - latenessOf(jobs, end);
}

/** Days beyond the last one that any cluster needs alone: enough for all of them in turn, with days off and closures between. */
const spare = 200;

/** The least lateness of clusters of which each ends on a day of its own in one of the bays. */
function inBays(shared: readonly Alone[], { bays: { bays } }: Board): number {
  const sum = shared.reduce((all, { lateness }) => all + lateness, 0);
  const [first] = shared;
  if (!first || shared.length < 2) return sum;
  const ends = shared.map(({ end }) => end).sort();
  const until = addDays(ends.at(-1) as string, spare + 2 * Math.ceil(shared.length / bays.length));
  const { shifts } = first.cluster.rig.days;
  const needs = { season: false, outOfStorage: false, slack: false, laid: [], shifts };
  const days: string[] = [];
  for (let day = ends[0] as string; day <= until; day = addDays(day, 1))
    if (!isDayOff(day, needs, first.cluster.rig.days)) days.push(day);
  const costs = shared.map(({ cluster, end }) =>
    days.map((day) => (day < end ? Number.POSITIVE_INFINITY : latenessOf(cluster.jobs, day))),
  );
  const cost = (job: number, place: number) => costs[job]?.[Math.floor(place / bays.length)] as number;
  return leastAssignment(shared.length, days.length * bays.length, cost) ?? sum;
}
