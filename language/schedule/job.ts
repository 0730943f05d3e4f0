// A plan with everything that decides when it can be done: its own dates, what is to come first, how pressing it is.
import { type Due, duesOf } from '../due/index.ts';
import { type Takeoff, takeOff } from '../estimate/takeoff.ts';
import { whyNoSealant, whyNoTape } from '../measure/treatable.ts';
import { asWritten, itemsOf, type OpenPlan, openPlans } from '../resolve/done.ts';
import type { Dates, Fleet, Material, RigView } from '../resolve/types.ts';
import { coverAllowed, isThere, type RigState, rank, rigState } from '../seams/index.ts';
import { addDays, addPeriod } from '../values/calendar.ts';
import { settles } from './settle.ts';
import type { Waiting } from './types.ts';
import { namesOf, nouns, openers, type PlanWord, seasonal } from './words.ts';

/** A day from which something holds, with its reason. */
export interface Bound {
  readonly date: string;
  readonly because: string;
  /** Where planning begins: what stood on the as-of date before stays there all the same. */
  readonly begins?: true;
}

export interface Job {
  readonly view: RigView;
  readonly plan: OpenPlan;
  readonly word: PlanWord;
  /** Where it stands among the plans of its rig. */
  readonly row: number;
  /** The items it is about, each once, as written; empty for the whole roof. */
  readonly items: readonly string[];
  /** The same with what is done already: names that outlive a day of work are made of these. */
  readonly named: readonly string[];
  readonly materials: readonly Material[];
  readonly takeoff: Takeoff;
  /** What has to be ordered for it, with the day from which it can be there; also among `from`. */
  readonly waits: readonly (Bound & { readonly material: string; readonly since: string })[];
  /** It is not done before any of these. */
  readonly from: readonly Bound[];
  /** It must be done by then; of a pinned plan, it must begin by then. */
  readonly limit?: Bound;
  readonly pinned: boolean;
  /** Its last day is left out of account, to find a day that would do. */
  readonly free?: boolean;
  /** What it settles is due by then. */
  readonly due?: Bound;
  /** No day at all will do. */
  readonly never?: string;
  readonly season: boolean;
  /** 0 for sound or unknown to 5 for open. */
  readonly severity: number;
}

/** One rig with what its jobs are made from. */
export interface Ground {
  readonly view: RigView;
  readonly state: RigState;
  readonly dues: readonly Due[];
  readonly asOf: string;
  /** What the fleet has on its shelves. */
  readonly stock: Fleet['stock'];
  /** What an earlier schedule named as waited for. */
  readonly waiting: readonly Waiting[];
}

export function groundOf(
  view: RigView,
  dates: Dates,
  stock: Fleet['stock'] = [],
  waiting: readonly Waiting[] = [],
): Ground {
  const state = rigState(view, dates.asOf);
  return groundWith({ state, dues: duesOf(view, dates, state) }, view, dates, stock, waiting);
}

/** The same, of a rig whose state on the as-of date is worked out already. */
export function groundWith(
  { state, dues }: Pick<Ground, 'state' | 'dues'>,
  view: RigView,
  { asOf }: Dates,
  stock: Fleet['stock'] = [],
  waiting: readonly Waiting[] = [],
): Ground {
  return { view, state, dues, asOf, stock, waiting };
}

/** The open plans of a rig, as they are written. */
export function jobsOf(ground: Ground): readonly Job[] {
  const { view, asOf } = ground;
  const open = openPlans(view.rig, asOf);
  const stripped = new Set(
    open.flatMap(({ statement, places }) => (openers.has(statement.word) ? places.map(({ item }) => item) : [])),
  );
  const jobs = open.map((plan, row) => jobOf(plan, row, stripped, ground));
  const looks = jobs.filter(({ word }) => word === 'inspect');
  return jobs.map((job) => {
    const due = dueOf(job, looks, ground);
    return due ? { ...job, due } : job;
  });
}

function jobOf(plan: OpenPlan, row: number, stripped: ReadonlySet<string>, ground: Ground): Omit<Job, 'due'> {
  const { view, asOf } = ground;
  const { statement } = plan;
  const { word } = statement;
  const materials = (statement.materials ?? []).flatMap(({ name }) => view.material(name) ?? []);
  const left = itemsOf(plan);
  const items = left.filter((name) => {
    const seam = ground.state.seams.get(name);
    return seam === undefined || isThere(seam, asOf);
  });
  const gone = items.length === 0 && left.length > 0 ? `${namesOf(left)} is not there on ${asOf}` : undefined;
  const limit = limitOf(plan, asOf);
  const untreatable = word === 'tape' || word === 'seal' ? whyNone(items, word, view) : undefined;
  const cover = word === 'tape' ? coverBounds(plan, stripped, limit, ground) : { from: [] };
  const never = gone ?? untreatable ?? cover.never;
  const waits = leadBounds(materials, ground);
  return {
    view,
    plan,
    word,
    row,
    items,
    named: itemsOf(asWritten(plan)),
    materials,
    takeoff: takeOff(plan, { view, states: ground.state.seams, system: view.rig.policy.units.value, asOf }, new Set()),
    waits,
    from: [...ownBounds(plan, asOf), ...waits, ...cover.from],
    ...(limit ? { limit } : {}),
    pinned: statement.on !== undefined,
    ...(never === undefined ? {} : { never }),
    season: seasonal.has(word),
    severity: severityOf(items, ground),
  };
}

/** Why none of the items takes tape or sealant at all. */
function whyNone(items: readonly string[], word: 'tape' | 'seal', { rig }: RigView): string | undefined {
  const reasons = items.flatMap((name) => {
    const item = rig.items.find((each) => each.name === name);
    return item ? [{ name, why: word === 'tape' ? whyNoTape(item) : whyNoSealant(item) }] : [];
  });
  const [first] = reasons;
  if (first === undefined || reasons.some(({ why }) => why === undefined)) return undefined;
  return `${first.name} is not to be ${word === 'tape' ? 'taped' : 'sealed'}: ${first.why}`;
}

function ownBounds({ statement }: OpenPlan, asOf: string): readonly Bound[] {
  const { after, on } = statement;
  const today = on?.last === asOf;
  const begin = today ? asOf : addDays(asOf, 1);
  return [
    { date: begin, because: `it is planned as of ${asOf}, from the next day on`, begins: true },
    ...(after ? [{ date: after.first, because: `it is written \`after ${after.text}\`` }] : []),
    ...(on ? [{ date: on.first, because: `it is written \`on ${on.text}\`` }] : []),
  ];
}

/** A plan whose last day is past is late and done as soon as it can be; a day of its own that is past is past. */
function limitOf({ statement }: OpenPlan, asOf: string): Bound | undefined {
  const { on, before } = statement;
  if (on) return { date: on.last, because: `it is written \`on ${on.text}\`` };
  if (!before || before.last <= asOf) return undefined;
  return { date: before.last, because: `it is written \`before ${before.text}\`` };
}

/**
 * What has to be ordered comes so many days after it was first named as waited for, else after the as-of date; what is on hand is
 * there. If it should have come and did not, its time begins anew.
 */
function leadBounds(materials: readonly Material[], { view, asOf, stock, waiting }: Ground): Job['waits'] {
  const { rig } = view;
  const there = new Set(
    [...rig.stock, ...stock].flatMap((line) =>
      line.word === 'on-hand'
        ? line.stock.map(({ name }) => name)
        : line.date.first <= asOf
          ? [line.material.name]
          : [],
    ),
  );
  return materials.flatMap(({ name }) => {
    const lead = rig.policy.leads[name];
    if (!lead || there.has(name)) return [];
    const takes = `${name} takes ${lead.value.text} to come`;
    const named = waiting.find(({ material }) => material === name)?.since;
    const expected = named !== undefined && named < asOf ? addPeriod(named, lead.value) : undefined;
    if (named !== undefined && expected !== undefined && expected > asOf)
      return [{ date: expected, because: `${takes}, counted from ${named}`, material: name, since: named }];
    const late = expected === undefined ? takes : `${name} was to be there by ${expected} and is not on hand: ${takes}`;
    return [{ date: addPeriod(asOf, lead.value), because: late, material: name, since: asOf }];
  });
}

/** When tape may go over what lies there. Where the plan is to be done between low and high figure, the low one holds. */
function coverBounds(
  { places }: OpenPlan,
  stripped: ReadonlySet<string>,
  limit: Bound | undefined,
  { view, state, asOf }: Ground,
): { readonly from: readonly Bound[]; readonly never?: string } {
  const from: Bound[] = [];
  for (const place of places) {
    if (stripped.has(place.item)) continue;
    for (const stretch of state.seams.get(place.item)?.stretches ?? []) {
      const apart =
        (place.to !== undefined && place.to <= stretch.from) ||
        (place.from !== undefined && stretch.to !== undefined && stretch.to <= place.from);
      if (apart) continue;
      const { level, layer, from: ends } = coverAllowed(stretch, { date: asOf }, view.material);
      const material = layer?.material ?? 'what lies there';
      if (level === 'never') {
        return { from, never: `${material} on ${place.item} is never covered with tape: strip it first` };
      }
      if (!ends || (level !== 'no' && level !== 'not yet')) continue;
      const laid = `${material} laid on ${place.item} on ${layer?.last}`;
      if (limit && limit.date < ends.yes && limit.date >= ends.notYet) {
        const between = `${laid} may be covered at the earliest from ${ends.notYet}, safely from ${ends.yes}: its last day forces it between the two`;
        from.push({ date: ends.notYet, because: between });
      } else from.push({ date: ends.yes, because: `${laid} may be covered from ${ends.yes}` });
    }
  }
  return { from };
}

function severityOf(items: readonly string[], { state }: Ground): number {
  const levels = items.flatMap((name) =>
    (state.seams.get(name)?.stretches ?? []).map(({ condition, wet }) => {
      if (wet) return rank('open');
      return condition && condition.word !== 'renewed' ? Math.max(0, rank(condition.word)) : 0;
    }),
  );
  return Math.max(0, ...levels);
}

type Undated = Omit<Job, 'due'>;

/** By when what it settles is due; what a planned look settles does not press other work. */
function dueOf(job: Undated, looks: readonly Undated[], { dues }: Ground): Bound | undefined {
  const { before } = job.plan.statement;
  const written = before && !job.limit ? [{ date: before.last, because: `it was to be done by ${before.text}` }] : [];
  const mine = dues.filter((due) => {
    if (due.kind === 'plan' || due.nature === 'from' || !settles(job, due)) return false;
    return job.word === 'inspect' || (due.kind !== 'look-hard' && !looks.some((look) => settles(look, due)));
  });
  const all = [...written, ...mine.map(({ date, because }) => ({ date, because }))];
  return all.reduce<Bound | undefined>((a, b) => (a && a.date <= b.date ? a : b), undefined);
}

/** The latest of the days from which a job may be done. */
export function earliestOf(from: readonly Bound[]): Bound {
  return from.reduce((a, b) => (b.date > a.date ? b : a));
}

/** What is done, for a person: `taping of rear and curbside`. */
export function titleOf({ word, items }: Pick<Job, 'word' | 'items'>): string {
  return items.length === 0 ? nouns[word] : `${nouns[word]} of ${namesOf(items)}`;
}
