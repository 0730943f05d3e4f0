// The page that a yard works by in the morning, as plain data: what is done when, what stays in the yard, what waits.
import * as z from 'zod';

const date = z.iso.date();
/** A time of day, `08:30`. */
const time = z.string().regex(/^\d\d:\d\d$/);

/** Something to carry to the rig. */
export const KitLine = z
  .strictObject({
    material: z.string(),
    /** In words: `3 cartridges of GreyLap`, `pieces 1, 2 and 4 of EdgeTape4`. */
    text: z.string(),
    /** Numbers of the pieces as the cutting list calls them; of tape only. */
    pieces: z.array(z.int().positive()).readonly().optional(),
    /** Whole cartridges, rounded up for this job alone; of sealant only. */
    cartridges: z.int().positive().optional(),
  })
  .readonly();
export type KitLine = z.infer<typeof KitLine>;

/** One visit on the day, or the part of it that falls on the day. */
export const DayRow = z
  .strictObject({
    /** Id of the visit. */
    visit: z.string(),
    /** When it begins and when its work is over, waiting included. */
    begin: time,
    end: time,
    /** The stretches of work in between, waiting left out: while a roof dries the crew is elsewhere. */
    blocks: z
      .array(z.strictObject({ begin: time, end: time, tasks: z.array(z.string()).readonly() }).readonly())
      .readonly()
      .optional(),
    rig: z.string(),
    /** The fleet's own number, where one is written. */
    unit: z.string().optional(),
    /** The bay, the yard of a fleet that has several, else `yard`. */
    place: z.string(),
    /** The crew that does it, where crews have names. */
    crew: z.string().optional(),
    /** The day on which the rig came back last, and on which it leaves next, where one is written. */
    returned: date.optional(),
    leaves: date.optional(),
    /** In a few words: `gun vent + skylight`. */
    job: z.string(),
    /** Labels of the tasks of the day, in the order of work. */
    tasks: z.array(z.string()).readonly(),
    /** Second day of three: [2, 3]. */
    day: z.tuple([z.int().positive(), z.int().positive()]).readonly(),
    people: z.int().positive(),
    kit: z.array(KitLine).readonly(),
    /** The time by which the work must be over, with its reason: the heat, the departure, the end of the day. */
    finishBy: z.strictObject({ time, because: z.string() }).readonly(),
    /** The drive clock as a blank to be filled in: `gunned __:__ + 24 h`; the day is what it comes to if work ends as planned. */
    driveOk: z
      .strictObject({ materials: z.array(z.string()).readonly(), after: z.string(), notBefore: date, safeFrom: date })
      .readonly()
      .optional(),
    /** Slides that must be out for the work. */
    slidesOut: z.array(z.string()).readonly(),
    /** Cautions of the day: work that would run past noon in the heat. */
    notes: z.array(z.string()).readonly(),
  })
  .readonly();
export type DayRow = z.infer<typeof DayRow>;

/** A rig that must not leave. */
export const HeldBack = z
  .strictObject({
    rig: z.string(),
    unit: z.string().optional(),
    item: z.string().optional(),
    /** `open`, `wet`, `leak`, or `drive clock`. */
    word: z.string(),
    reason: z.string(),
    since: date,
    /** Where the record stands. */
    file: z.string(),
    at: z.tuple([z.int(), z.int()]).readonly(),
    /** When the visit that mends it is planned, where one is. */
    planned: date.optional(),
    /** When the rig would leave next. */
    leaves: date.optional(),
  })
  .readonly();
export type HeldBack = z.infer<typeof HeldBack>;

const waiting = z.strictObject({ rig: z.string(), unit: z.string().optional(), title: z.string() });

export const DayPlan = z
  .strictObject({
    name: z.string(),
    date,
    asOf: date,
    /** Go/no-go limits in plain figures, a line each: `GreyLap: air 50 F to 95 F, surface up to 120 F`. */
    limits: z.array(z.string()).readonly(),
    rows: z.array(DayRow).readonly(),
    /** What the whole day takes, each material once. */
    kit: z.array(KitLine).readonly(),
    doNotDispatch: z.array(HeldBack).readonly(),
    waiting: z
      .strictObject({
        parts: z.array(waiting.extend({ material: z.string(), until: date }).readonly()).readonly(),
        /** No day could hold it: the reason, and the first day that would do. */
        gap: z.array(waiting.extend({ because: z.string(), firstDay: date.optional() }).readonly()).readonly(),
        dryOut: z.array(waiting.extend({ nextReading: date }).readonly()).readonly(),
      })
      .readonly(),
    /** What is done instead if it is wet: indoor work of the next days. */
    wetDay: z.array(z.strictObject({ rig: z.string().optional(), what: z.string() }).readonly()).readonly(),
    /** At most five lines, each with its reason; `changedMore` counts those beyond. */
    changed: z.array(z.string()).max(5).readonly(),
    changedMore: z.int().nonnegative(),
  })
  .readonly();
export type DayPlan = z.infer<typeof DayPlan>;
