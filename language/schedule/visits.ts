// The visits of all rigs: lists of clusters go through the core, which looks for a better one.

import type { Fleet } from '../resolve/types.ts';
import { conditions } from '../statements/words.ts';
import { daysBetween } from '../values/calendar.ts';
import { costOf, latenessOf, latenessOfAll, moveCost, weightOf } from './aim.ts';
import { attempt, type Board, emptyWork, type RigWork } from './board.ts';
import { byPriority, type Cluster, clustersOf, type RigPlans, rigPlans } from './clusters.ts';
import { type Cost, compareCost, type Decoder, type List, search } from './core/index.ts';
import { type Decoded, decode } from './decode.ts';
import { type Kept, keptOf } from './earlier.ts';
import { type Floor, floorOf } from './floor.ts';
import type { Ground } from './job.ts';
import { endOf } from './place.ts';
import type { Schedule } from './types.ts';

/** How many clusters are placed in all while better lists are looked for; what is best at once needs none of it. */
const placements = 20_000;
const fewest = 9;
const most = 240;
/** With an earlier schedule there is little to be found. */
const mostAgain = 24;
const seed = 1;

export interface Visits {
  readonly work: readonly RigWork[];
  readonly lateness: { readonly days: number; readonly bound: number };
  readonly kept: readonly Kept[];
  readonly refused: Decoded['refused'];
  /** How many schedules were made. */
  readonly schedules: number;
}

/**
 * The visits of all rigs. The first list has the most pressing plans first: pinned days, then the earliest last day, then the
 * worst finding, then the name of the rig, then the line. If that makes anything later than it would be on an empty board,
 * other lists are tried, for the least lateness weighted by severity, then the fewest visits, then the earliest.
 * With an earlier schedule its visits keep their days where they can: those of this week in any case, those of next week
 * unless a move saves much lateness, later ones unless it saves some; among equals the day as it was wins.
 */
export function visitsOf(grounds: readonly Ground[], board: () => Board, fleet?: Fleet, earlier?: Schedule): Visits {
  const rigs = grounds.map((ground) => rigPlans(ground, fleet));
  const clusters = rigs.flatMap(clustersOf).sort(byPriority);
  const kept = inTurn(keptOf(earlier, clusters, board().asOf));
  const floor = floorOf(clusters, kept, board);

  const frozen = new Set(kept.flatMap((one) => (one.frozen ? one.clusters : [])));
  const pinned = clusters.filter((cluster) => cluster.pinned);
  const head = [...pinned, ...[...frozen].filter((cluster) => !cluster.pinned)];
  const rest = clusters.filter((cluster) => !cluster.pinned && !frozen.has(cluster));
  const enough = earlier ? enoughAfter(earlier, floor, kept, board) : floor;
  const decoder = decoderOf(rigs, head, rest, kept, board, enough);
  const budget = Math.max(
    fewest,
    Math.min(earlier ? mostAgain : most, Math.floor(placements / Math.max(1, clusters.length))),
  );
  const found = search(decoder, startsOf(rest, kept, board().asOf), budget, seed);
  const { work, refused } = found.schedule;
  return {
    work,
    lateness: { days: latenessOfAll(work), bound: floor.lateness },
    kept,
    refused,
    schedules: found.schedules,
  };
}

/** In the order in which they were decided, but what is not what it was has its turn behind all that is as it was. */
function inTurn(kept: readonly Kept[]): readonly Kept[] {
  return [...kept].sort((a, b) => Number(a.altered) - Number(b.altered));
}

/**
 * A new schedule looks no further when it is as good as the earlier one, but for what the change itself costs: more lateness
 * of a plan alone, moves that its own rig forces. So what did not change stays.
 */
function enoughAfter({ unplaced, lateness }: Schedule, floor: Floor, kept: readonly Kept[], board: () => Board): Floor {
  const forced = kept.filter(({ clusters: [first, ...more], wish }) => {
    return first && 'refused' in attempt([first, ...more], emptyWork(first.rig), board(), wish);
  });
  const before = lateness ?? { days: 0, bound: 0 };
  const open = conditions.length * unplaced.length;
  return {
    unplaced: floor.unplaced + open,
    lateness:
      Math.max(floor.lateness, before.days + Math.max(0, floor.lateness - before.bound)) +
      forced.reduce((sum, one) => sum + moveCost(one), 0),
  };
}

function decoderOf(
  rigs: readonly RigPlans[],
  head: readonly Cluster[],
  rest: readonly Cluster[],
  kept: readonly Kept[],
  board: () => Board,
  enough: Floor,
): Decoder<Decoded> {
  const { asOf } = board();
  const index = new Map(rest.map((cluster, i) => [cluster, i]));
  return {
    // What has to come first is put first when a list is decoded.
    before: rest.map(() => []),
    decode: (list) => decode(rigs, [...head, ...list.map((i) => rest[i] as Cluster)], kept, board()),
    cost: ({ work }) => costOf(work, kept, asOf),
    isBest: (cost: Cost) =>
      compareCost(cost.slice(0, 1), [enough.unplaced]) <= 0 && compareCost(cost.slice(1, 2), [enough.lateness]) <= 0,
    pressed: ({ work }) =>
      work.flatMap(({ held, unplaced, of }) => {
        const late = held.flatMap((visit) => (latenessOf(visit.jobs, endOf(visit)) > 0 ? visit.jobs : []));
        const jobs = new Set([...late, ...unplaced.map(({ job }) => job)]);
        if (jobs.size === 0) return [];
        return rest.flatMap((cluster) =>
          cluster.rig === of && cluster.jobs.some((job) => jobs.has(job)) ? [index.get(cluster) as number] : [],
        );
      }),
  };
}

/** How many days of deadline an hour of work for each unit of weight is worth; the higher, the more the short and grave ones go first. */
const trades = [1, 4, 16, 64];

/**
 * First as it was decided before, then by priority, then by priority rules that trade the deadline against the work for what a
 * day of lateness costs: with no trade the earliest deadline comes first, with a great one the least work for the weight,
 * which is best where everything is late anyway (Smith 1956).
 */
function* startsOf(rest: readonly Cluster[], kept: readonly Kept[], asOf: string): Iterable<List> {
  const all = rest.map((_, i) => i);
  const by = (rank: (i: number) => number) => [...all].sort((a, b) => rank(a) - rank(b) || a - b);
  if (kept.length > 0) {
    const place = new Map(kept.flatMap(({ clusters }, i) => clusters.map((cluster) => [cluster, i] as const)));
    yield by((i) => place.get(rest[i] as Cluster) ?? kept.length);
  }
  yield all;
  // Other rules would move what need not move.
  if (kept.length > 0) return;
  const figures = rest.map(({ rig, jobs, deadline }) => {
    const weight = jobs.reduce((sum, job) => sum + (job.due || job.limit ? weightOf(job) : 0), 0);
    return {
      days: Math.min(farthest, daysBetween(asOf, deadline)),
      hours: weight === 0 ? farthest : rig.stepsOf(jobs).load.minutes / 60 / weight,
    };
  });
  for (const trade of trades) {
    yield by((i) => {
      const { days, hours } = figures[i] as (typeof figures)[number];
      return days + trade * hours;
    });
  }
  yield by((i) => figures[i]?.hours ?? 0);
}

/** Days: deadlines beyond that press equally little. */
const farthest = 400;
