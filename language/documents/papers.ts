// The two papers as data: what Markdown, CSV, iCalendar and JSON are written from, and the form of the JSON documents.
import * as z from 'zod';
import { adviceOf, SeamAdvice } from '../advice/index.ts';
import type { LinearPrograms } from '../cutting/index.ts';
import { Estimate, estimateWithNeeds, Pooled, pooledPurchases, type RigNeeds } from '../estimate/index.ts';
import { libraryVersion } from '../library/index.ts';
import { comparisonOf } from '../lifecost/comparison.ts';
import { CompareResult } from '../lifecost/schema.ts';
import { folderOf } from '../resolve/paths.ts';
import type { Dates, Fleet, RigView } from '../resolve/types.ts';
import { Schedule, ScheduledDue, scheduleOfFleet, scheduleOfRig } from '../schedule/index.ts';
import { cautionsFor, type Dangers, deferral } from './cautions.ts';
import { allDangers, dangersOf } from './dangers.ts';
import { Sum, sumsOf, unsummed } from './fleet-sums.ts';
import { portable } from './portable.ts';
import { ScheduleFigures, scheduleFigures } from './schedule-figures.ts';

const Caution = z.strictObject({ text: z.string(), source: z.string() }).readonly();

const common = {
  name: z.string(),
  kind: z.enum(['rig', 'fleet']),
  asOf: z.iso.date(),
  /** The version of the built-in library that the default figures come from. */
  library: z.string(),
  cautions: z.array(Caution).readonly(),
  note: z.string(),
};

export const EstimatePaper = z
  .strictObject({
    /** The `$id` of its schema. */
    document: z.literal('rigseam/estimate/1'),
    ...common,
    /** One for a rig, one for each rig of a fleet. */
    estimates: z.array(Estimate).readonly(),
    /** For each of these rigs what to do, seam by seam, the most pressing first. */
    advice: z.array(z.strictObject({ rig: z.string(), seams: z.array(SeamAdvice).readonly() }).readonly()).readonly(),
    /** For each of these rigs the ways to keep its seams tight over the years. */
    comparisons: z.array(z.strictObject({ rig: z.string(), comparison: CompareResult }).readonly()).readonly(),
    /** Sums over the rigs of a fleet, one for each currency. */
    sums: z.array(Sum).readonly(),
    /** Why a fleet has not one sum over all its rigs. */
    unsummed: z.array(z.string()).readonly(),
    /** What is to be bought for all rigs of a fleet together. */
    together: z.array(Pooled).readonly(),
    /** Work that is due or soon due and that no plan settles. */
    unplanned: z.array(ScheduledDue).readonly(),
  })
  .readonly();
export type EstimatePaper = z.infer<typeof EstimatePaper>;

export const SchedulePaper = z
  .strictObject({
    /** The `$id` of its schema. */
    document: z.literal('rigseam/schedule/1'),
    ...common,
    schedule: Schedule,
    figures: ScheduleFigures,
    /** Fleets that are known to have the rig: their schedules count. */
    fleets: z.array(z.string()).readonly().optional(),
  })
  .readonly();
export type SchedulePaper = z.infer<typeof SchedulePaper>;

/** What papers are written for. */
export type Subject =
  | { readonly kind: 'rig'; readonly view: RigView }
  | { readonly kind: 'fleet'; readonly fleet: Fleet; readonly views: readonly RigView[] };

export interface Papers {
  readonly estimate: EstimatePaper;
  readonly schedule: SchedulePaper;
}

/** What papers are made with beside the records. */
export interface Beside {
  /** Proves more of a fleet's purchase; without it the bound is told. */
  readonly lp?: LinearPrograms;
  /** The schedule that was written before: this week stays as it says, and what moves is told. */
  readonly previous?: Schedule;
  /** The fleets that are known to have a rig: its own schedule names theirs. Nothing else of them counts. */
  readonly fleets?: readonly string[];
}

/** Both papers of a rig or a fleet on the as-of date. The same subject, dates and what is beside give the same papers. */
export function papersOf(subject: Subject, dates: Dates, { lp, previous, fleets = [] }: Beside = {}): Papers {
  const views = subject.kind === 'rig' ? [subject.view] : subject.views;
  const worked = views.map((view) => ({ view, ...estimateWithNeeds(view, dates) }));
  const estimates = worked.map(({ estimate }) => estimate);
  const schedule = withMoves(
    subject.kind === 'rig'
      ? scheduleOfRig(subject.view, dates, previous)
      : scheduleOfFleet(subject.fleet, views, dates, previous),
    previous,
  );
  const sums = subject.kind === 'fleet' ? sumsOf(estimates) : [];
  const dangers = allDangers(views.map((view) => dangersOf(view, dates.asOf)));
  const head = (told: Dangers) => ({
    name: subject.kind === 'rig' ? subject.view.rig.name : subject.fleet.name,
    kind: subject.kind,
    asOf: dates.asOf,
    library: libraryVersion,
    cautions: cautionsFor(told),
    note: deferral,
  });
  const folder = folderOf(subject.kind === 'rig' ? subject.view.rig.file : subject.fleet.file);
  return portable(
    {
      estimate: {
        document: 'rigseam/estimate/1',
        ...head(dangers),
        estimates,
        advice: views.map((view) => ({ rig: view.rig.name, seams: adviceOf(view, dates) })),
        comparisons: views.map((view) => ({ rig: view.rig.name, comparison: comparisonOf(view, dates.asOf) })),
        sums,
        unsummed: subject.kind === 'fleet' ? unsummed(estimates, sums) : [],
        together: subject.kind === 'fleet' ? together(subject.fleet, worked, dates, lp) : [],
        unplanned: schedule.dues.filter(isUnplanned),
      },
      schedule: {
        document: 'rigseam/schedule/1',
        ...head(lookedAtToo(dangers, schedule.dues)),
        schedule,
        figures: scheduleFigures(schedule, views),
        ...(fleets.length > 0 ? { fleets } : {}),
      },
    },
    folder,
  );
}

/** Written twice on a day, it goes on telling what moved on that day: a second run changes nothing. */
function withMoves(schedule: Schedule, previous: Schedule | undefined): Schedule {
  if (previous?.asOf !== schedule.asOf || !previous.moved?.length) return schedule;
  const again = schedule.moved ?? [];
  const told = previous.moved.filter(({ rig, title }) => !again.some((one) => one.rig === rig && one.title === title));
  return { ...schedule, moved: [...told, ...again] };
}

/**
 * The schedule in the text of a `NAME.schedule.json` that was written before; undefined where it is none, is damaged or of
 * another version, or speaks of a later day than the as-of date.
 */
export function scheduleIn(text: string | undefined, { asOf }: Dates): Schedule | undefined {
  if (text === undefined) return undefined;
  try {
    const { schedule } = SchedulePaper.parse(JSON.parse(text));
    return schedule.asOf <= asOf ? schedule : undefined;
  } catch {
    return undefined;
  }
}

/** In the currency of most rigs: the fleet's, else that of the first rig that has one. */
function together(fleet: Fleet, rigs: readonly RigNeeds[], { asOf }: Dates, lp?: LinearPrograms): readonly Pooled[] {
  const currency =
    fleet.policy.currency?.value ?? rigs.find(({ estimate }) => estimate.totals.currency)?.estimate.totals.currency;
  return pooledPurchases(fleet, rigs, asOf, currency, lp);
}

/** Dates that only say until or from when something holds ask for no work. */
const noWork: ReadonlySet<string> = new Set(['cover', 'tape-second-half', 'best-before', 'quote']);
const isWork = ({ kind }: ScheduledDue) => !noWork.has(kind);

/** Whoever follows a schedule goes up for a look even where no work is planned. */
export function lookedAtToo(dangers: Dangers, dues: readonly ScheduledDue[]): Dangers {
  return { ...dangers, roofWork: dangers.roofWork || dues.some(isWork) };
}

const isUnplanned = (due: ScheduledDue) => isWork(due) && due.status !== 'not-due' && due.settledBy === undefined;
