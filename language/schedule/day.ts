// The page that a yard works by in the morning, made of its schedule.
import type { Estimate } from '../estimate/schema.ts';
import type { Fleet, Material, RigView } from '../resolve/types.ts';
import { seenFrom } from '../resolve/yards.ts';
import { addDays } from '../values/calendar.ts';
import type { Duration } from '../values/period.ts';
import { workdayIn } from './crew.ts';
import { heldBack } from './day-held.ts';
import { kitOf, wholeKit } from './day-kit.ts';
import type { DayPlan, DayRow } from './day-plan.ts';
import { blocksOn, clockTime, noon, type Share, type Timed, timed } from './day-time.ts';
import { wetDay } from './day-wet.ts';
import { departureAfter, type RigDays, rigDays } from './obstacle.ts';
import type { Moved, Schedule, Visit } from './types.ts';
import { isHeatSensitive, morningOnly } from './weather.ts';

/** What a day is made from, beside the schedule. */
export interface Yard {
  readonly views: readonly RigView[];
  readonly fleet?: Fleet;
  /** By the name of the rig: pieces by number and cartridges come from it. */
  readonly estimates?: ReadonlyMap<string, Estimate>;
}

/**
 * The day of a yard, or of an owner: rows in order of time, what must not leave, what waits, what is done if it is wet, what
 * changed. Times are planned ones, from 08:00 on (common practice), without breaks. The same schedule, records and date
 * give the same page.
 */
export function dayPlan(schedule: Schedule, date: string, { views, fleet, estimates }: Yard): DayPlan {
  const rigs = new Map(
    views.map((view) => {
      const site = fleet && seenFrom(fleet.yardOf(view.rig), fleet);
      return [view.rig.name, { view, days: rigDays(view, site), ...(site ? { site } : {}) }];
    }),
  );
  const shares = schedule.visits.flatMap((visit) => {
    const rig = rigs.get(visit.rig);
    return rig && visit.days.includes(date) ? [shareOf(date, visit, rig)] : [];
  });
  const rows = timed(shares).map((share) => {
    const rig = rigs.get(share.visit.rig) as Rig;
    return rowOf(date, share, rig, estimates?.get(share.visit.rig));
  });
  const unit = (name: string) => {
    const number = rigs.get(name)?.view.rig.identity.unit?.value;
    return number === undefined ? {} : { unit: number };
  };
  const changed = changedLines(schedule.moved ?? []);
  return {
    name: schedule.name,
    date,
    asOf: schedule.asOf,
    limits: limitsOf(shares, rigs),
    rows,
    kit: wholeKit(rows),
    doNotDispatch: [...rigs.values()].flatMap(({ view, days }) => heldBack(view, days, schedule, date)),
    waiting: {
      parts: (schedule.waiting ?? [])
        .filter(({ until }) => until > date)
        .map(({ rig, title, material, until }) => ({ rig, ...unit(rig), title, material, until })),
      gap: schedule.unplaced.map(({ rig, title, because, firstDay }) => ({
        rig,
        ...unit(rig),
        title,
        because,
        ...(firstDay === undefined ? {} : { firstDay }),
      })),
      dryOut: schedule.dues
        .filter(({ kind }) => kind === 're-read')
        .map(({ rig, title, date: nextReading }) => ({ rig, ...unit(rig), title, nextReading })),
    },
    wetDay: wetDay(schedule, date, rigs, estimates),
    changed: changed.slice(0, 5),
    changedMore: Math.max(0, changed.length - 5),
  };
}

interface Rig {
  readonly view: RigView;
  readonly days: RigDays;
  /** Its fleet, as the yard sees it that serves it. */
  readonly site?: Fleet;
}

/** Minutes of one person's day in the crew of a visit. */
function workdayOf({ crewName }: Visit, { view, site }: Rig): number {
  return workdayIn(site?.policy ?? view.rig.policy, site, crewName);
}

function shareOf(date: string, visit: Visit, rig: Rig): Share {
  const { view, days } = rig;
  const tasks = visit.tasks.filter((task) => task.date === date);
  const hot = tasks.filter(({ task }) => isHeatSensitive(task));
  const why = hot.length > 0 ? morningOnly(date, materialsOf(hot, view), days.weather) : undefined;
  return {
    visit,
    tasks,
    blocks: blocksOn(date, visit, workdayOf(visit, rig)),
    number: visit.days.indexOf(date) + 1,
    ...(why === undefined ? {} : { morning: why }),
  };
}

function materialsOf(tasks: Visit['tasks'], view: RigView): readonly Material[] {
  return [...new Set(tasks.flatMap(({ materials }) => materials))].flatMap((name) => view.material(name) ?? []);
}

function rowOf(date: string, share: Timed, of: Rig, estimate?: Estimate): DayRow {
  const { visit, tasks, morning } = share;
  const { view, days } = of;
  const { rig } = view;
  const returned = days.away.filter(({ last }) => last <= date).at(-1)?.last;
  const leaves = departureAfter(addDays(date, -1), days)?.first;
  const drive = driveOk(date, share, view);
  const slides = rig.items.filter(
    ({ kind, name }) => kind === 'slide' && tasks.some(({ items }) => items.includes(name)),
  );
  const past = morning !== undefined && lastHeat(share) > noon;
  const [begin, end] = [share.times[0]?.begin ?? 0, share.times.at(-1)?.end ?? 0];
  return {
    visit: visit.id,
    begin: clockTime(begin),
    end: clockTime(end),
    blocks: share.times.map((time, i) => ({
      begin: clockTime(time.begin),
      end: clockTime(time.end),
      tasks: share.blocks[i]?.tasks.map(({ label }) => label) ?? [],
    })),
    rig: rig.name,
    ...(rig.identity.unit ? { unit: rig.identity.unit.value } : {}),
    place: [visit.bay, visit.yard].filter((name) => name !== undefined).join(', ') || 'yard',
    ...(visit.crewName === undefined ? {} : { crew: visit.crewName }),
    ...(returned === undefined ? {} : { returned }),
    ...(leaves === undefined ? {} : { leaves }),
    job: jobWords(tasks),
    tasks: tasks.map(({ label }) => label),
    day: [share.number, visit.days.length],
    people: visit.people,
    kit: kitOf(tasks, view, estimate),
    finishBy: finishBy(date, morning, leaves, workdayOf(visit, of)),
    ...(drive ? { driveOk: drive } : {}),
    slidesOut: slides.map(({ name }) => name),
    notes: past ? ['Not all of it fits before noon: lay what can be laid, leave the rest for the next morning.'] : [],
  };
}

/** Minutes from the beginning of the day until the last block with something that the heat spoils is done. */
function lastHeat({ blocks, times }: Timed): number {
  const last = blocks.findLastIndex(({ tasks }) => tasks.some(({ task }) => isHeatSensitive(task)));
  return times[last]?.end ?? 0;
}

function finishBy(
  date: string,
  morning: string | undefined,
  leaves: string | undefined,
  workday: number,
): DayRow['finishBy'] {
  if (morning !== undefined) return { time: '12:00', because: morning };
  const time = clockTime(workday);
  return leaves === date ? { time, because: 'it leaves today' } : { time, because: 'the end of the working day' };
}

/** The drive clock of what is laid on the last day of a visit. */
function driveOk(date: string, { visit }: Share, view: RigView): DayRow['driveOk'] {
  const clock = visit.clocks.find((one) => one.clock === 'drive');
  if (!clock || visit.days.at(-1) !== date) return undefined;
  const runs = clock.materials.flatMap((name) => view.material(name)?.clocks.drive?.value.high ?? []);
  const [longest] = runs.sort((a, b) => lasts(b) - lasts(a));
  const after = longest ? `done __:__ + ${longest.text}` : 'done __:__';
  return { materials: clock.materials, after, notBefore: clock.notBefore, safeFrom: clock.safeFrom };
}

/** Minutes, a month as the longest one. */
function lasts(duration: Duration): number {
  return duration.kind === 'effort' ? duration.minutes : (31 * duration.months + duration.days) * 24 * 60;
}

const verbs: Readonly<Record<string, string>> = {
  lay: 'tape',
  frame: 'tape',
  gun: 'gun',
  'gun-around': 'gun',
  strip: 'strip',
  'strip-hard': 'strip',
  rebed: 'rebed',
  replace: 'replace',
  patch: 'patch',
  tighten: 'tighten',
  dry: 'dry out',
  'temporary-cover': 'cover',
  coat: 'coat',
  inspect: 'inspect',
};

/** `strip vent + skylight, gun vent + skylight`; `wash` only where nothing else is done. */
function jobWords(tasks: Visit['tasks']): string {
  const items = new Map<string, Set<string>>();
  for (const { task, items: names } of tasks) {
    const verb = verbs[task];
    if (verb === undefined) continue;
    const mine = items.get(verb) ?? new Set();
    for (const name of names) mine.add(name);
    items.set(verb, mine);
  }
  if (items.size === 0) return tasks.some(({ task }) => task === 'wash') ? 'wash' : 'go on';
  return [...items].map(([verb, names]) => `${verb} ${short([...names])}`.trimEnd()).join(', ');
}

function short(names: readonly string[]): string {
  return names.length <= 3 ? names.join(' + ') : `${names.slice(0, 2).join(' + ')} + ${names.length - 2} more`;
}

/** What the labels of the day's materials allow. */
function limitsOf(shares: readonly Share[], rigs: ReadonlyMap<string, Rig>): readonly string[] {
  const lines = shares.flatMap(({ visit, tasks }) => {
    const view = rigs.get(visit.rig)?.view;
    if (!view) return [];
    return materialsOf(tasks, view).flatMap(({ name, apply, surfaceUpTo }) => {
      const air = apply && `air ${apply.value.low.text} to ${apply.value.high.text}`;
      const surface = surfaceUpTo && `surface up to ${surfaceUpTo.value.text}`;
      const said = [air, surface].filter((text) => text !== undefined);
      return said.length === 0 ? [] : [`${name}: ${said.join(', ')}`];
    });
  });
  return [...new Set(lines)].sort();
}

/** `R014 inspection: 2027-04-19 to 2027-04-20. The crew has no time left.`, the nearest day first. */
function changedLines(moved: readonly Moved[]): readonly string[] {
  return [...moved]
    .sort((a, b) => (nearest(a) < nearest(b) ? -1 : 1))
    .map(({ rig, title, from, to, because }) => {
      const when = from === undefined ? `new on ${to}` : to === undefined ? `not on ${from}` : `${from} to ${to}`;
      return `${rig}, ${title}: ${when}. ${because}`;
    });
}

function nearest({ from, to }: Moved): string {
  return [from, to].filter((day) => day !== undefined).sort()[0] ?? '';
}
