// A project from end to end: priority rules make the first lists, the search improves them, the bound stands beside.
import { type Bounds, beforeOf, boundsOf } from './bounds.ts';
import { type Cost, compareCost } from './cost.ts';
import { drawnBy, type List, listBy } from './list.ts';
import { latenessOf, makespanOf, type Project, type Starts } from './project.ts';
import { streamOf } from './random.ts';
import { type Decoder, search } from './search.ts';
import { justified, serial } from './serial.ts';

export interface Solution {
  readonly starts: Starts;
  readonly makespan: number;
  readonly lateness: number;
  /** How many activities have no place. */
  readonly unplaced: number;
  readonly bounds: Bounds;
  readonly schedules: number;
}

/** Least lateness, then the shortest, then everything as early as can be; or the shortest alone. */
export type Aim = 'lateness' | 'makespan';

/** The best schedule found with a number of schedules made; see `search`. */
export function solve(project: Project, aim: Aim, budget: number, seed = 1): Solution {
  const bounds = boundsOf(project);
  const impossible = bounds.ends.filter((end) => end === undefined).length;
  const before = beforeOf(project);
  const unplaced = (starts: Starts) => starts.filter((start) => start === undefined).length;
  const alone = bounds.ends.reduce<number>(
    (sum, end, i) => sum + (end ?? 0) - (project.activities[i]?.duration ?? 0),
    0,
  );
  const least: Cost =
    aim === 'makespan' ? [impossible, bounds.makespan] : [impossible, bounds.lateness, bounds.makespan, alone];
  const decoder: Decoder<Starts> = {
    before,
    decode: (list) => serial(project, list),
    cost: (starts): Cost =>
      aim === 'makespan'
        ? [unplaced(starts), makespanOf(project, starts)]
        : [
            unplaced(starts),
            latenessOf(project, starts),
            makespanOf(project, starts),
            starts.reduce<number>((sum, start) => sum + (start ?? 0), 0),
          ],
    isBest: (cost) => compareCost(cost, least) <= 0,
    pressed: (starts) =>
      project.activities.flatMap(({ due, duration }, i) => {
        const start = starts[i];
        return due !== undefined && start !== undefined && start + duration > due ? [i] : [];
      }),
    justified: (starts) => justified(project, starts),
  };
  const { schedule, schedules } = search(decoder, startsOf(project, budget, seed), budget, seed);
  return {
    starts: schedule,
    makespan: makespanOf(project, schedule),
    lateness: latenessOf(project, schedule),
    unplaced: unplaced(schedule),
    bounds,
    schedules,
  };
}

/** Of the budget, what goes into lists drawn by priority rules before the search begins. */
const drawn = 1 / 10;

/** Lists by the latest end, the latest start, the due date and the number of followers; then lists drawn in favour of each. */
function* startsOf(project: Project, budget: number, seed: number): Iterable<List> {
  const before = beforeOf(project);
  const rules = rulesOf(project);
  for (const rule of rules) yield listBy(before, rule);
  const next = streamOf(seed + 1);
  for (let i = 0; i < (budget * drawn) / 3; i++) {
    yield drawnBy(before, rules[i % rules.length] as (typeof rules)[number], next);
  }
}

function rulesOf(project: Project): readonly ((activity: number) => number)[] {
  const { activities } = project;
  const before = beforeOf(project);
  const lastFirst = [...listBy(before, () => 0)].reverse();
  const tail = activities.map(() => 0);
  const followers = activities.map(() => new Set<number>());
  for (const index of lastFirst) {
    for (const { activity: first, lag } of activities[index]?.after ?? []) {
      const behind = (tail[index] ?? 0) + (activities[index]?.duration ?? 0) + lag;
      tail[first] = Math.max(tail[first] ?? 0, behind);
      for (const one of [index, ...(followers[index] ?? [])]) followers[first]?.add(one);
    }
  }
  // Without followers an end is as late as its due date.
  const due = activities.map(({ due: own }) => own ?? Number.POSITIVE_INFINITY);
  for (const index of lastFirst)
    for (const { activity: first, lag } of activities[index]?.after ?? [])
      due[first] = Math.min(due[first] ?? 0, (due[index] ?? 0) - (activities[index]?.duration ?? 0) - lag);
  const latestEnd = (i: number) => -(tail[i] ?? 0);
  const finite = (i: number) => Math.min(due[i] ?? 0, project.horizon);
  const urgent = activities.some((one) => one.due !== undefined);
  return [
    latestEnd,
    (i) => latestEnd(i) - (activities[i]?.duration ?? 0),
    (i) => -(followers[i]?.size ?? 0),
    ...(urgent ? [finite, (i: number) => finite(i) / (activities[i]?.weight ?? 1)] : []),
  ];
}
