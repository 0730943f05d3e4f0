// Work that takes more days than follow each other free: how much it is, and how it could be split.
import { addDays, daysBetween } from '../values/calendar.ts';
import { attemptJobs, type Board, emptyWork, type RigWork, unlimited } from './board.ts';
import type { RigPlans } from './clusters.ts';
import { speedOf, type Team } from './crew.ts';
import { earliestOf, type Job } from './job.ts';
import { absence, isDayOff, type Needs, obstacleOn } from './obstacle.ts';
import { withLoad } from './pack.ts';
import { endOf, horizonOf, needsOf } from './place.ts';
import { stepsOf } from './steps.ts';

export interface TooLong {
  /** Half a sentence: hours and days that it takes, against what there is. */
  readonly because: string;
  /** Half a sentence: the lines of each part, or what else can be done. */
  readonly wayOut: string;
}

interface Run {
  readonly first: string;
  readonly last: string;
  readonly days: number;
}

/**
 * Why plans that are done in one visit do not fit into any days that follow each other between the first and the last day on
 * which they may be done, as far as their own rig decides; undefined where they fit, or where no day is free at all.
 * `board` is an empty one. Parts are filled in the order of work, so that what is laid under comes before what laps over it.
 */
export function tooLong(jobs: readonly Job[], rig: RigPlans, board: Board): TooLong | undefined {
  if (jobs.some(({ never }) => never !== undefined)) return undefined;
  // One team of each crew that can do it: it fits if it fits one of them.
  const teams = new Map<unknown, Team>();
  for (const team of board.crew.teams(new Set(jobs.map(({ word }) => word))))
    if (team.minutes > 0 && !teams.has(team.of)) teams.set(team.of, team);
  let found: TooLong | undefined;
  for (const team of teams.values()) {
    const long = tooLongFor(team, jobs, rig, board);
    if (!long) return undefined;
    found ??= long;
  }
  return found;
}

function tooLongFor(team: Team, jobs: readonly Job[], rig: RigPlans, board: Board): TooLong | undefined {
  const { view } = rig.ground;
  const { asOf } = board;
  const needs = { ...needsOf(jobs, rig.days, board.bays), shifts: [team.of] };
  const from = earliestOf(jobs.flatMap((job) => job.from)).date;
  const limits = jobs.flatMap(({ limit, pinned }) => (limit && !pinned ? [limit.date] : []));
  const { load, steps } = rig.stepsOf(jobs);
  const day = team.minutes * speedOf(team);
  // Two days that follow each other hold more than one day's work, whatever is not parted by a night.
  const enough = 2 * Math.ceil((load.minutes + load.waits) / day) + 1;
  const run = longestRun(from, [...limits, horizonOf(asOf)].sort()[0] as string, needs, rig, enough);
  if (!run || run.days >= enough) return undefined;
  const free = attemptJobs(jobs.map(unlimited), emptyWork(rig), board);
  const days = 'refused' in free ? Math.ceil(load.minutes / day - 1e-9) : free.packed.days.length;
  if (days <= run.days) return undefined;
  const parts: RigWork = { ...emptyWork(rig), stepsOf: (some) => withLoad(stepsOf(some, view.rig, rig.roofed)) };
  const alone = (items: readonly string[]): Alone => {
    const found = attemptJobs(partOf(jobs, items).map(unlimited), parts, board);
    if ('refused' in found) return { whyNot: found.refused };
    if (found.packed.days.length > run.days) return { whyNot: 'it takes longer as well' };
    const wash = found.clocks.find(({ clock }) => clock === 'wash');
    return wash
      ? { washed: `${counted(daysBetween(endOf(found), wash.safeFrom))} (${wash.materials.join(', ')})` }
      : {};
  };
  const span = run.first === run.last ? run.first : `${run.first} to ${run.last}`;
  const work = `it takes ${hours(load.minutes)} of work, ${counted(days)} of ${hours(day)}`;
  return {
    because: `${work}, and no more than ${counted(run.days)} (${span}) follow each other free`,
    wayOut: wayOut(jobs, [...new Set(steps.flatMap(({ items }) => items))], alone),
  };
}

/** No longer than what is enough. As a visit goes on: over days off, but not over a closure, a trip, a booking or the end of the season. */
function longestRun(from: string, end: string, needs: Needs, { days }: RigPlans, enough: number): Run | undefined {
  let best: Run | undefined;
  let current: Run | undefined;
  for (let day = from; day <= end; day = addDays(day, 1)) {
    if (!obstacleOn(day, needs, days)) {
      current = { first: current?.first ?? day, last: day, days: (current?.days ?? 0) + 1 };
      if (!best || current.days > best.days) best = current;
      if (best.days >= enough) return best;
    } else if (!isDayOff(day, needs, days) || absence(day, needs, days)) current = undefined;
  }
  return best;
}

function partOf(jobs: readonly Job[], items: readonly string[]): readonly Job[] {
  return jobs.flatMap((job) => {
    const mine = job.items.filter((name) => items.includes(name));
    return mine.length === 0 ? [] : [{ ...job, items: mine }];
  });
}

/** Some items in a visit of their own, on any days: why there are none, else how long they may not be washed then. */
interface Alone {
  readonly whyNot?: string;
  readonly washed?: string;
}

function wayOut(jobs: readonly Job[], order: readonly string[], alone: (items: readonly string[]) => Alone): string {
  const more = 'give it more days, or the day more hours';
  const wholeRoof = jobs.some(({ items }) => items.length === 0);
  const stretches = jobs.some(({ plan }) => plan.places.some(({ from, to }) => from !== undefined || to !== undefined));
  const items = order.filter((name) => jobs.some((job) => job.items.includes(name)));
  if (wholeRoof || stretches) return more;
  for (const name of items) {
    const why = alone([name]).whyNot;
    if (why !== undefined) return `${more}, since ${name} alone does not fit either: ${why}`;
  }
  const parts: string[][] = [];
  for (const name of items) {
    const last = parts.at(-1);
    if (last && alone([...last, name]).whyNot === undefined) last.push(name);
    else parts.push([name]);
  }
  if (parts.length < 2) return more;
  const lines = parts.map((part) => partOf(jobs, part).map(lineOf).join(' and '));
  const washed = [...new Set(parts.slice(0, -1).flatMap((part) => alone(part).washed ?? []))];
  // Each visit that lays something begins with a wash of the whole roof.
  const clocks = washed.length === 0 ? '' : `, the roof not washed again for ${washed.join('; ')}`;
  return `split it, each part with days of its own${clocks}: ${lines.join('; then ')}`;
}

/** The plan as it is typed, without its days. */
function lineOf({ word, items, plan }: Job): string {
  const materials = (plan.statement.materials ?? []).map(({ name }) => name);
  return `\`${word} ${items.join(', ')}${materials.length > 0 ? ` with ${materials.join(', ')}` : ''}\``;
}

const counted = (days: number) => (days === 1 ? '1 day' : `${days} days`);
/** To a tenth of an hour. */
const hours = (minutes: number) => `${Math.round(minutes / 6) / 10} h`;
