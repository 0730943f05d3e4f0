// Work that was done or is planned, in one form: what is laid, where, on which stretches as they were before it.
import type { Fix, Span } from '../grammar/problem.ts';
import { itemsOf, openPlans } from '../resolve/done.ts';
import type { Material, Place, RigView } from '../resolve/types.ts';
import type { SeamState, Stretch } from '../seams/index.ts';
import { changed } from '../seams/stretches.ts';
import type { PlanStatement } from '../statements/plans.ts';
import type { Used } from '../statements/slots/amounts.ts';
import { once, type RigContext } from './rule.ts';
import { workedOut } from './worked-out.ts';

/** One place of a record or plan of work. */
export interface Job {
  readonly verb: 'seal' | 'tape' | 'coat' | 'prime' | 'patch';
  readonly planned: boolean;
  /** The plan as it is written, where it is one. */
  readonly plan?: PlanStatement;
  readonly file: string;
  /** Whether a plan dries the seam. */
  readonly dried?: boolean;
  /** The record's line. */
  readonly at: Span;
  /** The name of the seam, or the set that it belongs to. */
  readonly place: Place;
  readonly seam: SeamState;
  /** The parts of the seam that the work lies on, as they were before it. */
  readonly stretches: readonly Stretch[];
  readonly materials: readonly { readonly used: Used; readonly material: Material | undefined }[];
  readonly record: {
    readonly air?: import('../values/temperature.ts').Temperature;
    readonly surfaceTemperature?: import('../values/temperature.ts').Temperature;
    readonly humidity?: import('../values/numbers.ts').Percent;
    readonly lot?: string;
  };
  /** The last day on which it can have been done; of a plan the first on which it may be. */
  readonly day: string;
  readonly time?: string;
}

const verbOf = {
  sealed: 'seal',
  taped: 'tape',
  coated: 'coat',
  primed: 'prime',
  patched: 'patch',
  seal: 'seal',
  tape: 'tape',
  coat: 'coat',
  patch: 'patch',
} as const;

/** What is named for the work, with what it is. */
function materialsOf(used: readonly Used[] | undefined, view: RigView): Job['materials'] {
  return (used ?? []).map((one) => ({ used: one, material: view.material(one.name) }));
}

/** The parts of a seam in a place. */
export function stretchesIn(seam: SeamState, place: Place): readonly Stretch[] {
  const inside: Stretch[] = [];
  changed(seam.stretches, place, (stretch) => {
    inside.push(stretch);
    return stretch;
  });
  return inside;
}

/** Every place of every record of work up to the as-of date, and of every plan of it that is not done, in that order. */
export const jobsOf = (context: RigContext): readonly Job[] => once(context, allJobs);

const allJobs = (context: RigContext): readonly Job[] => [...done(context), ...planned(context)];

function* done(context: RigContext): Iterable<Job> {
  const { view } = context;
  for (const { event, before } of workedOut(context).steps) {
    const { record } = event;
    const verb = verbOf[record.word as keyof typeof verbOf];
    if (verb === undefined) continue;
    const materials = materialsOf('materials' in record ? record.materials : undefined, view);
    for (const place of event.places) {
      const seam = before.get(place.item);
      if (!seam || seam.unread) continue;
      yield {
        verb,
        planned: false,
        file: event.file,
        at: record.at,
        place,
        seam,
        stretches: stretchesIn(seam, place),
        materials,
        record: record as Job['record'],
        day: event.last,
        ...(event.time === undefined ? {} : { time: event.time }),
      };
    }
  }
}

/** Plans lie on the seams as they are now; one that an earlier plan strips, replaces or beds anew is bare by then. */
function* planned(context: RigContext): Iterable<Job> {
  const { view, dates } = context;
  const { seams } = workedOut(context).state;
  const open = openPlans(view.rig, dates.asOf);
  const itemsOfPlans = (...words: readonly string[]) =>
    new Set(open.flatMap((plan) => (words.includes(plan.statement.word) ? itemsOf(plan) : [])));
  const emptied = itemsOfPlans('strip', 'replace', 'rebed');
  const dried = itemsOfPlans('dry');
  for (const { statement, file, places } of open) {
    const verb = verbOf[statement.word as keyof typeof verbOf];
    if (verb === undefined) continue;
    const day = [statement.on?.first, statement.after?.first, dates.asOf]
      .filter((d) => d !== undefined)
      .sort()
      .at(-1) as string;
    for (const place of places) {
      const seam = seams.get(place.item);
      if (!seam || seam.unread) continue;
      const stretches = stretchesIn(seam, place).map(
        (stretch): Stretch => (emptied.has(place.item) ? bare(stretch) : stretch),
      );
      yield {
        verb,
        planned: true,
        plan: statement,
        dried: dried.has(place.item),
        file,
        at: statement.at,
        place,
        seam,
        stretches,
        materials: materialsOf(statement.materials, view),
        record: {},
        day,
      };
    }
  }
}

function bare({ from, to, coating, readings, lastOf }: Stretch): Stretch {
  return {
    from,
    ...(to === undefined ? {} : { to }),
    ...(coating ? { coating } : {}),
    layers: [],
    defects: [],
    onset: {},
    readings,
    lastOf,
  };
}

/** The tapes, sealants and coatings of a job: what stays on the seam. */
export const laidBy = (job: Job) =>
  job.materials.flatMap(({ used, material }) =>
    material && (material.kind === 'tape' || material.kind === 'sealant' || material.kind === 'coating')
      ? [{ used, material }]
      : [],
  );

/** "taped" or "is to be taped": how a job reads in a sentence. */
export const said = (job: Job) =>
  job.planned
    ? `to ${job.verb}`
    : { seal: 'sealed', tape: 'taped', coat: 'coated', prime: 'primed', patch: 'patched' }[job.verb];

/** A plan of `word` on the job's seam before it; none for what is done. */
export function firstDo(word: 'strip' | 'dry', job: Job, unsure?: true): readonly Fix[] {
  if (!job.planned) return [];
  const { at, place } = job;
  const line = `${word} ${place.item}`;
  return [{ label: `Add \`${line}\` before it`, at: [at[0], at[0]], text: `${line}\n  `, ...(unsure && { unsure }) }];
}

/** Takes back a plan that names nothing but the job's seam; none for what is done. */
export function takeBack(job: Job): readonly Fix[] {
  const { plan, place } = job;
  const [only, ...others] = plan?.targets ?? [];
  if (!plan || others.length > 0 || only?.name !== place.item) return [];
  return [{ label: 'Remove this plan', at: plan.at, text: '', unsure: true }];
}
