// A schedule as plain data: dated visits with their tasks in the order of work, what falls due, what could not be placed.
import * as z from 'zod';

const date = z.iso.date();

/** One task of a visit: what is done at which places, with which material, in which order. */
export const ScheduledTask = z
  .strictObject({
    /** Stable: made of the rig, the task and its places. */
    id: z.string(),
    /** A task word of the rates: `wash`, `wipe`, `lay`, `gun` …, or `dry`, `set-up`. */
    task: z.string(),
    /** In trade words: `lay tape on the rear cap`. */
    label: z.string(),
    items: z.array(z.string()).readonly(),
    materials: z.array(z.string()).readonly(),
    date,
    /** Working time of one person, in minutes; waiting is not work. */
    minutes: z.number().nonnegative(),
    /** Waiting that holds no crew, in minutes (drying, flash-off). */
    waits: z.number().nonnegative(),
    /** Ids of tasks that come before it, by lay order or by the way of working. */
    after: z.array(z.string()).readonly(),
    /** Why it stands where it stands, a sentence each. */
    because: z.array(z.string()).readonly(),
  })
  .readonly();
export type ScheduledTask = z.infer<typeof ScheduledTask>;

/** Work on one rig in one go: one or more days that follow each other. */
export const Visit = z
  .strictObject({
    /** Stable: made of the rig and what is done. */
    id: z.string(),
    rig: z.string(),
    title: z.string(),
    /** The plans that it does, by names that stay the same: a later schedule finds its work by them. */
    plans: z.array(z.string()).readonly().optional(),
    /** The yard that the rig stands in, of a fleet that has several. */
    yard: z.string().optional(),
    /** The crew that does it, where crews have names. */
    crewName: z.string().optional(),
    /** The indoor bay that it takes. */
    bay: z.string().optional(),
    days: z.array(date).min(1).readonly(),
    tasks: z.array(ScheduledTask).readonly(),
    minutes: z.number().nonnegative(),
    people: z.int().positive(),
    /** Which of the crew do it, by their numbers in it from 0. */
    crew: z.array(z.int().nonnegative()).readonly().optional(),
    /** Which visit was decided first: it had the first choice of days. A later schedule decides in the same order. */
    order: z.int().nonnegative().optional(),
    /** The last day on which it would still be in time, where there is one. */
    deadline: date.optional(),
    because: z.array(z.string()).readonly(),
    /** When the rig may be driven, be rained on, be washed, be covered with tape, after this visit. */
    clocks: z
      .array(
        z
          .strictObject({
            clock: z.enum(['rain', 'drive', 'wash', 'cover']),
            materials: z.array(z.string()).readonly(),
            notBefore: date,
            safeFrom: date,
          })
          .readonly(),
      )
      .readonly(),
  })
  .readonly();
export type Visit = z.infer<typeof Visit>;

/** A plan that no day could hold, the constraint that forbids it, and the first day that would do. */
export const Unplaced = z
  .strictObject({
    rig: z.string(),
    title: z.string(),
    items: z.array(z.string()).readonly(),
    because: z.string(),
    firstDay: date.optional(),
    file: z.string(),
    at: z.tuple([z.int(), z.int()]).readonly(),
  })
  .readonly();
export type Unplaced = z.infer<typeof Unplaced>;

/** Something that falls due. */
export const ScheduledDue = z
  .strictObject({
    id: z.string(),
    rig: z.string(),
    kind: z.string(),
    item: z.string().optional(),
    title: z.string(),
    date,
    status: z.enum(['not-due', 'soon', 'due', 'overdue']),
    /** Days from the as-of date; negative when it is past. */
    days: z.int(),
    because: z.string(),
    /** The visit that settles it, where one does. */
    settledBy: z.string().optional(),
  })
  .readonly();
export type ScheduledDue = z.infer<typeof ScheduledDue>;

/** A plan that moved since an earlier schedule. */
export const Moved = z
  .strictObject({
    rig: z.string(),
    title: z.string(),
    /** Its first day before and now; missing before for new work, missing now for what is done, gone or has no day. */
    from: date.optional(),
    to: date.optional(),
    because: z.string(),
  })
  .readonly();
export type Moved = z.infer<typeof Moved>;

/** A plan that waits for what has to be ordered. */
export const Waiting = z
  .strictObject({
    rig: z.string(),
    title: z.string(),
    material: z.string(),
    /** The day from which its time to come is counted: of the first schedule that named it. */
    since: date,
    /** The day from which it can be there. */
    until: date,
    because: z.string(),
  })
  .readonly();
export type Waiting = z.infer<typeof Waiting>;

const Lateness = z.strictObject({ days: z.number().nonnegative(), bound: z.number().nonnegative() }).readonly();

export const Schedule = z
  .strictObject({
    name: z.string(),
    kind: z.enum(['rig', 'fleet']),
    asOf: date,
    visits: z.array(Visit).readonly(),
    dues: z.array(ScheduledDue).readonly(),
    unplaced: z.array(Unplaced).readonly(),
    waiting: z.array(Waiting).readonly().optional(),
    /** What moved since an earlier schedule that was handed in, and why. */
    moved: z.array(Moved).readonly().optional(),
    /**
     * Days late, times severity (1 for sound or unknown to 6 for open), summed over plans; beside it the least that any
     * order of work could reach: each plan alone on an empty board, open roofs one a day in each bay.
     */
    lateness: Lateness.optional(),
    /** The same of each yard of a fleet that has several, the place without a name last. */
    yards: z
      .array(z.strictObject({ name: z.string().optional(), lateness: Lateness }).readonly())
      .readonly()
      .optional(),
    /** Figures that the schedule rests on, with their kind: rates, season, hours of a day. */
    assumptions: z
      .array(
        z
          .strictObject({ what: z.string(), value: z.string(), kind: z.string(), source: z.string().optional() })
          .readonly(),
      )
      .readonly(),
  })
  .readonly();
export type Schedule = z.infer<typeof Schedule>;
