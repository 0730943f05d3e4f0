// The two papers as data: what Markdown, CSV, iCalendar and JSON are written from, and the form of the JSON documents.
import * as z from 'zod';
import { Estimate, estimateOf } from '../estimate/index.ts';
import { Figure } from '../estimate/schema.ts';
import { libraryVersion } from '../library/index.ts';
import { folderOf, relativeTo } from '../resolve/paths.ts';
import type { Dates, Fleet, RigView } from '../resolve/types.ts';
import { Schedule, type Schedule as ScheduleData, scheduleOfFleet, scheduleOfRig } from '../schedule/index.ts';
import { fromMinor, minorUnits } from '../values/money.ts';
import { cautionsFor, deferral } from './cautions.ts';
import { allDangers, dangersOf } from './dangers.ts';

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
    document: z.literal('rigseam/estimate/1'),
    ...common,
    /** One for a rig, one for each rig of a fleet. */
    estimates: z.array(Estimate).readonly(),
    /** Sums over the rigs of a fleet, one for each currency. */
    sums: z
      .array(
        z
          .strictObject({
            currency: z.string(),
            rigs: z.int(),
            incomplete: z.array(z.string()).readonly(),
            total: Figure,
          })
          .readonly(),
      )
      .readonly(),
  })
  .readonly();
export type EstimatePaper = z.infer<typeof EstimatePaper>;

export const SchedulePaper = z
  .strictObject({ document: z.literal('rigseam/schedule/1'), ...common, schedule: Schedule })
  .readonly();
export type SchedulePaper = z.infer<typeof SchedulePaper>;

/** What papers are written for. */
export type Subject =
  | { readonly kind: 'rig'; readonly view: RigView }
  | { readonly kind: 'fleet'; readonly fleet: Fleet; readonly views: readonly RigView[] };

export const nameOf = (subject: Subject): string =>
  subject.kind === 'rig' ? subject.view.rig.name : subject.fleet.name;
const viewsOf = (subject: Subject): readonly RigView[] => (subject.kind === 'rig' ? [subject.view] : subject.views);

function commonOf(subject: Subject, { asOf }: Dates) {
  const cautions = cautionsFor(allDangers(viewsOf(subject).map((view) => dangersOf(view, asOf))));
  return { name: nameOf(subject), kind: subject.kind, asOf, library: libraryVersion, cautions, note: deferral };
}

export function estimatePaper(subject: Subject, dates: Dates): EstimatePaper {
  const estimates = viewsOf(subject).map((view) => estimateOf(view, dates));
  return portable(
    {
      document: 'rigseam/estimate/1',
      ...commonOf(subject, dates),
      estimates,
      sums: subject.kind === 'fleet' ? sumsOf(estimates) : [],
    },
    subject,
  );
}

export function schedulePaper(subject: Subject, dates: Dates): SchedulePaper {
  const schedule: ScheduleData =
    subject.kind === 'rig' ? scheduleOfRig(subject.view, dates) : scheduleOfFleet(subject.fleet, subject.views, dates);
  return portable({ document: 'rigseam/schedule/1', ...commonOf(subject, dates), schedule }, subject);
}

/** Totals are added within a currency only. */
function sumsOf(estimates: readonly Estimate[]): EstimatePaper['sums'] {
  const currencies = [
    ...new Set(estimates.map((one) => one.totals.currency).filter((code) => code !== undefined)),
  ].sort();
  return currencies.flatMap((currency) => {
    const mine = estimates.filter((one) => one.totals.currency === currency && one.totals.total !== undefined);
    if (mine.length === 0) return [];
    const inputs = mine.map((one, i) => {
      const { money } = one.totals.total as NonNullable<Estimate['totals']['total']>;
      return {
        name: `rig_${i + 1}`,
        value: Number(money.amount),
        unit: currency,
        text: `${one.rig.name} ${money.text}`,
        minor: minorUnits(money),
      };
    });
    const sum = fromMinor(
      inputs.reduce((total, { minor }) => total + minor, 0),
      currency,
    );
    return [
      {
        currency,
        rigs: mine.length,
        incomplete: mine.filter((one) => !one.totals.complete).map((one) => one.rig.name),
        total: {
          value: Number(sum.amount),
          unit: currency,
          text: sum.text,
          rule: 'the totals of the rigs added up',
          formula: inputs.map(({ name }) => name).join(' + '),
          inputs: inputs.map(({ minor: _, ...input }) => input),
        },
      },
    ];
  });
}

/** Files are named as seen from the record's own folder, so that the papers are the same on every machine. */
function portable<T>(data: T, subject: Subject): T {
  const folder = folderOf(subject.kind === 'rig' ? subject.view.rig.file : subject.fleet.file);
  const walk = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(walk);
    if (typeof value !== 'object' || value === null) return value;
    const out: Record<string, unknown> = {};
    for (const [key, inner] of Object.entries(value)) {
      if (inner === undefined) continue;
      out[key] =
        key === 'file' && typeof inner === 'string' && !inner.startsWith('library/')
          ? relativeTo(folder, inner)
          : walk(inner);
    }
    return out;
  };
  return walk(data) as T;
}
