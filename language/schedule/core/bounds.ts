// What no schedule can be better than.
import { listBy } from './list.ts';
import type { Activity, Project } from './project.ts';
import { endOf } from './project.ts';
import { firstStart } from './serial.ts';

export interface Bounds {
  /** The earliest end of each activity if it had all resources for itself; undefined if it has no place even so. */
  readonly ends: readonly (number | undefined)[];
  /** The longest chain of activities, each alone on an empty board. */
  readonly criticalPath: number;
  /** How long the busiest resource takes for all that is asked of it. */
  readonly resource: number;
  /** Of both, the higher one. */
  readonly makespan: number;
  /** Each activity alone on an empty board, behind what it waits for: periods late, times weight. */
  readonly lateness: number;
}

export function boundsOf(project: Project): Bounds {
  const { activities, resources } = project;
  const empty = resources.map(() => new Float64Array(project.horizon));
  const ends: (number | undefined)[] = activities.map(() => undefined);
  for (const index of listBy(beforeOf(project), () => 0)) {
    const activity = activities[index] as Activity;
    let from: number | undefined = activity.release ?? 0;
    for (const { activity: first, lag } of activity.after) {
      const end = ends[first];
      from = end === undefined || from === undefined ? undefined : Math.max(from, end + lag);
    }
    const start = from === undefined ? undefined : firstStart(project, activity, from, empty);
    ends[index] = start === undefined ? undefined : endOf(activity, start);
  }
  const criticalPath = Math.max(0, ...ends.map((end) => end ?? 0));
  const resource = Math.max(0, ...resources.map((_, i) => workThrough(project, i, ends)));
  const lateness = activities.reduce((sum, { due, weight }, i) => {
    const end = ends[i];
    return end === undefined || due === undefined ? sum : sum + (weight ?? 1) * Math.max(0, end - due);
  }, 0);
  return { ends, criticalPath, resource, makespan: Math.max(criticalPath, resource), lateness };
}

/** The number of periods in which a resource can give what is asked of it in all. */
function workThrough({ activities, resources, horizon }: Project, index: number, ends: Bounds['ends']): number {
  let left = activities.reduce(
    (sum, { duration, uses }, i) => sum + (ends[i] === undefined ? 0 : duration * (uses[index] ?? 0)),
    0,
  );
  let period = 0;
  while (left > 0 && period < horizon) left -= Math.max(0, resources[index]?.(period++) ?? 0);
  return period;
}

export function beforeOf({ activities }: Project): readonly (readonly number[])[] {
  return activities.map(({ after }) => [...new Set(after.map(({ activity }) => activity))]);
}
