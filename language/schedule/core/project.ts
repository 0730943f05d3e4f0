// Activities that share resources, as the literature on project scheduling has them: whole periods, counted from 0.

export interface Activity {
  /** Periods; 0 for a mere event. It is not broken off. */
  readonly duration: number;
  /** It begins so many periods after the end of these. */
  readonly after: readonly { readonly activity: number; readonly lag: number }[];
  /** How much of each resource it takes in every period. */
  readonly uses: readonly number[];
  /** The first period in which it may begin. */
  readonly release?: number;
  /** It must be over by the end of the period before this one, else it is left out. */
  readonly deadline?: number;
  /** It should be over by then; each period more counts `weight` (1). */
  readonly due?: number;
  readonly weight?: number;
  /** Periods in which it cannot be worked on. */
  readonly forbidden?: (period: number) => boolean;
}

/** How much there is of a resource in a period. */
export type Capacity = (period: number) => number;

export interface Project {
  readonly activities: readonly Activity[];
  readonly resources: readonly Capacity[];
  /** Nothing is planned beyond this many periods. */
  readonly horizon: number;
}

/** When each activity begins; undefined for one that has no place. */
export type Starts = readonly (number | undefined)[];

export function endOf(activity: Activity, start: number): number {
  return start + activity.duration;
}

/** The first period after everything; 0 if nothing is placed. */
export function makespanOf({ activities }: Project, starts: Starts): number {
  return Math.max(0, ...activities.map((one, i) => endOf(one, starts[i] ?? -one.duration)));
}

/** Periods late, times weight, over all that is placed. */
export function latenessOf({ activities }: Project, starts: Starts): number {
  return activities.reduce((sum, one, i) => {
    const start = starts[i];
    if (start === undefined || one.due === undefined) return sum;
    return sum + (one.weight ?? 1) * Math.max(0, endOf(one, start) - one.due);
  }, 0);
}
