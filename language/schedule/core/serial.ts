// The serial schedule-generation scheme: activity after activity along a list, each as early as everything lets it be
// (Kolisch and Hartmann 1999). And the same from the other end, which pushes a schedule together.
import type { List } from './list.ts';
import { type Activity, endOf, makespanOf, type Project, type Starts } from './project.ts';

/** What is taken of each resource in each period. */
type Taken = readonly Float64Array[];

function nothingTaken({ resources, horizon }: Project): Taken {
  return resources.map(() => new Float64Array(horizon));
}

/** The earliest schedule of a list on which everything stands behind what it waits for. */
export function serial(project: Project, list: List): Starts {
  const starts: (number | undefined)[] = project.activities.map(() => undefined);
  const taken = nothingTaken(project);
  for (const index of list) {
    const activity = project.activities[index] as Activity;
    let from = activity.release ?? 0;
    let known = true;
    for (const { activity: first, lag } of activity.after) {
      const start = starts[first];
      if (start === undefined) known = false;
      else from = Math.max(from, endOf(project.activities[first] as Activity, start) + lag);
    }
    const start = known ? firstStart(project, activity, from, taken) : undefined;
    if (start === undefined) continue;
    starts[index] = start;
    take(activity, start, taken);
  }
  return starts;
}

/** The first period from one on in which an activity can begin, beside what is taken. */
export function firstStart(project: Project, activity: Activity, from: number, taken: Taken): number | undefined {
  const limit = Math.min(activity.deadline ?? project.horizon, project.horizon) - activity.duration;
  let start = from;
  while (start <= limit) {
    const against = conflictIn(project, activity, start, taken);
    if (against === undefined) return start;
    start = against + 1;
  }
  return undefined;
}

/** The last period in which an activity cannot be worked on, if it began then. */
function conflictIn({ resources }: Project, { duration, uses, forbidden }: Activity, start: number, taken: Taken) {
  for (let period = start + duration - 1; period >= start; period--) {
    if (forbidden?.(period)) return period;
    for (const [i, use] of uses.entries()) {
      if (use > 0 && use + (taken[i]?.[period] ?? 0) > (resources[i]?.(period) ?? 0)) return period;
    }
  }
  return undefined;
}

function take({ duration, uses }: Activity, start: number, taken: Taken, sign = 1): void {
  for (const [i, use] of uses.entries()) {
    const mine = taken[i];
    if (mine && use > 0)
      for (let period = start; period < start + duration; period++) mine[period] = (mine[period] ?? 0) + sign * use;
  }
}

/**
 * Double justification (Valls, Ballestín and Quintanilla 2005): everything as late as the makespan lets it be, the last first,
 * and then along those starts as early as possible again. Gives the list to the schedule; nothing gets longer by it.
 */
export function justified(project: Project, starts: Starts): { readonly list: List; readonly schedule: Starts } {
  const late = pushedBack(project, starts);
  const order = (of: Starts) => (a: number, b: number) => (of[a] ?? Infinity) - (of[b] ?? Infinity) || a - b;
  const list = inPrecedence(project, project.activities.map((_, i) => i).sort(order(late)));
  return { list, schedule: serial(project, list) };
}

function pushedBack(project: Project, starts: Starts): Starts {
  const { activities } = project;
  const makespan = makespanOf(project, starts);
  const out = [...starts];
  const taken = nothingTaken(project);
  for (const [i, activity] of activities.entries()) {
    const start = starts[i];
    if (start !== undefined) take(activity, start, taken);
  }
  const after: { readonly activity: number; readonly lag: number }[][] = activities.map(() => []);
  for (const [i, { after: these }] of activities.entries())
    for (const { activity, lag } of these) after[activity]?.push({ activity: i, lag });
  const end = (i: number) => endOf(activities[i] as Activity, starts[i] ?? -1);
  const lastFirst = activities.map((_, i) => i).sort((a, b) => end(b) - end(a) || b - a);
  for (const index of lastFirst) {
    const activity = activities[index] as Activity;
    const start = starts[index];
    if (start === undefined) continue;
    take(activity, start, taken, -1);
    let latest = Math.min(makespan, activity.deadline ?? makespan);
    for (const { activity: then, lag } of after[index] ?? []) {
      const begins = out[then];
      if (begins !== undefined) latest = Math.min(latest, begins - lag);
    }
    let late = latest - activity.duration;
    while (late > start && conflictIn(project, activity, late, taken) !== undefined) late--;
    out[index] = Math.max(late, start);
    take(activity, out[index] as number, taken);
  }
  return out;
}

/** Events of no length may begin with what they wait for: those that are waited for go first. */
function inPrecedence({ activities }: Project, list: List): List {
  const out: number[] = [];
  const seen = new Set<number>();
  const visit = (index: number): void => {
    if (seen.has(index)) return;
    seen.add(index);
    for (const { activity } of activities[index]?.after ?? []) visit(activity);
    out.push(index);
  };
  for (const index of list) visit(index);
  return out;
}
