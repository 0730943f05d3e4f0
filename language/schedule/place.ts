// The first days on which a visit can be held.
import { addDays, addPeriod, daysBetween } from '../values/calendar.ts';
import { type BayPlan, bayFor, fitsAny } from './bay.ts';
import type { Clock, Laid } from './clocks.ts';
import { type Crew, speedOf, type Team } from './crew.ts';
import { type Bound, earliestOf, type Job } from './job.ts';
import { compare, departureAfter, type Needs, type Obstacle, obstacleOn, type RigDays } from './obstacle.ts';
import { type Load, type Packed, pack } from './pack.ts';
import { canDo, whyNobody, whyUnskilled } from './shift.ts';
import type { Step } from './steps.ts';
import { openers, type PlanWord } from './words.ts';

/** Beyond this nobody plans. */
const AHEAD = { months: 36, days: 0 };

/** A visit that is held, of the same rig as the one that is to be placed. */
export interface Held {
  readonly jobs: readonly Job[];
  readonly steps: readonly Step[];
  readonly packed: Packed;
  readonly clocks: readonly Clock[];
  readonly team: Team;
  readonly bay?: string;
  readonly because: readonly string[];
  /** How many visits of all rigs were decided before it. */
  readonly order: number;
}

export interface Setting {
  readonly asOf: string;
  readonly crew: Crew;
  readonly days: RigDays;
  readonly bays: BayPlan;
  readonly clocksAfter: (laid: readonly Laid[]) => readonly Clock[];
  /** How many visits are decided already. */
  readonly decided: number;
  /** The other visits of the rig. */
  readonly held: readonly Held[];
}

/** Why no day will do: what forbids it, on the days on which it would have had to be. */
export interface Refusal {
  readonly refused: string;
}

/** A visit as it was in an earlier schedule: on this very day, if possible by these people and in this bay. */
export interface Wish {
  readonly day: string;
  readonly people?: readonly number[];
  /** The name of the crew that they are of. */
  readonly crew?: string;
  readonly bay?: string;
  /** Why it was put there. */
  readonly because?: string;
}

export interface Ask {
  readonly jobs: readonly Job[];
  readonly steps: readonly Step[];
  readonly load: Load;
  readonly from: readonly Bound[];
  /** The visit is over by then. */
  readonly end: string;
  /** Out of season, in an indoor bay. */
  readonly sheltered?: boolean;
  readonly wish?: Wish;
}

/** The last day that is looked at. */
export function horizonOf(asOf: string): string {
  return addPeriod(asOf, AHEAD);
}

/** The earliest days for a visit that keep every constraint, or what forbids it. */
export function place(ask: Ask, setting: Setting): Held | Refusal {
  const { jobs } = ask;
  const never = jobs.find((job) => job.never !== undefined);
  if (never?.never !== undefined) return { refused: never.never };
  const unskilled = whyUnskilled(wordsOf(jobs), setting.days.shifts, setting.days.yard);
  if (unskilled !== undefined) return { refused: unskilled };
  const earliest = earliestOf([...beginsOf(ask, setting), ...ask.from]);
  const begin = jobs.filter(({ pinned }) => pinned).map(({ limit }) => (limit as Bound).date);
  const lastStart = [...begin, ...(ask.wish ? [ask.wish.day] : []), ask.end].sort()[0] as string;
  const { load, wish } = ask;
  if (earliest.date > lastStart) {
    // Of two reasons against its day the one that holds longer has decided.
    const shut = wish ? tryDay(wish.day, load, ask, setting) : undefined;
    return { refused: shut && 'next' in shut && shut.next > earliest.date ? shut.because : earliest.because };
  }
  let last: Obstacle | undefined;
  let first: Obstacle | undefined;
  const lasts = daysBetween(wish?.day ?? earliest.date, lastStart) / 2;
  for (let day = wish?.day ?? earliest.date; day <= lastStart; ) {
    const found = tryDay(day, load, ask, setting);
    if (!('next' in found))
      return {
        ...found,
        because: whyThen(last?.because ?? wish?.because ?? earliest.because, ask),
        order: setting.decided,
      };
    // A day that would do but for a clock, or but for its end, tells more than a day on which nobody could come; of these one
    // reason that takes most of the days, as a booking for years, tells more than the first.
    const taken = Math.min(daysBetween(day, found.next), daysBetween(day, lastStart));
    const takesMost = !first?.nearly && taken > lasts;
    if (!first || takesMost || (found.nearly && !first.nearly)) first = found;
    // A weekend behind something that lasted has not decided.
    if (!last || !found.weekly) last = found;
    day = found.next;
  }
  return { refused: first?.because ?? earliest.because };
}

/** From when each plan may be done; what stood on the as-of date before is work of that day, and not begun on the next one. */
function beginsOf({ jobs, wish }: Ask, { asOf }: Setting): readonly Bound[] {
  const bounds = jobs.flatMap(({ from }) => from);
  return wish?.day === asOf ? bounds.map((bound) => (bound.begins ? { ...bound, date: asOf } : bound)) : bounds;
}

function whyThen(first: string, { jobs }: Ask): readonly string[] {
  const out = [first];
  for (const { limit } of jobs) if (limit && !out.includes(limit.because)) out.push(limit.because);
  const dues = jobs.flatMap(({ due }) => due ?? []).sort((a, b) => compare(a.date, b.date));
  const [due] = dues;
  if (due && !out.includes(due.because)) out.push(due.because);
  return out;
}

type Unexplained = Omit<Held, 'because' | 'order'>;

function goesInBay(jobs: readonly Job[], sheltered = false): boolean {
  return sheltered || jobs.some(({ word }) => openers.has(word));
}

function wordsOf(jobs: readonly Job[]): ReadonlySet<PlanWord> {
  return new Set(jobs.map(({ word }) => word));
}

/** What some jobs in one visit need of each of its days. */
export function needsOf(jobs: readonly Job[], days: RigDays, bays: BayPlan, sheltered = false): Needs {
  const roofed = goesInBay(jobs, sheltered) && fitsAny(days.view.rig, bays);
  const season = !sheltered && jobs.some((job) => job.season);
  const words = wordsOf(jobs);
  return {
    season,
    outOfStorage: jobs.some(({ word }) => word !== 'cover' && word !== 'dry'),
    slack: season && !roofed && jobs.every(({ pinned }) => !pinned),
    laid: season && !roofed ? jobs.flatMap(({ materials }) => materials) : [],
    shifts: days.shifts.filter((shift) => canDo(words, shift)),
  };
}

function tryDay(day: string, load: Load, ask: Ask, setting: Setting): Unexplained | Obstacle {
  const { jobs, steps } = ask;
  const { crew, days, bays } = setting;
  const inBay = goesInBay(jobs, ask.sheltered);
  const needs = needsOf(jobs, days, bays, ask.sheltered);
  const shut = obstacleOn(day, needs, days);
  if (shut) return shut;
  const full = inBay ? bayFor(days.view.rig, day, day, [], bays) : undefined;
  if (full && 'next' in full) return full;
  let refused: Obstacle | undefined;
  for (const team of preferred(crew.teams(wordsOf(jobs)), ask.wish)) {
    const off = whyNobody(day, [team.of]);
    const packed = off ?? pack(load, day, team, crew, { ...needs, shifts: [team.of] }, days);
    if (!('days' in packed)) {
      refused = sooner(refused, packed);
      continue;
    }
    const clocks = setting.clocksAfter(laidIn(steps, packed, jobs));
    const found: Unexplained = { jobs, steps, packed, clocks, team };
    const against = conflict(found, ask, setting);
    if (against) {
      refused = sooner(refused, { ...against, nearly: true });
      continue;
    }
    if (!inBay) return found;
    const bay = bayFor(days.view.rig, day, packed.days.at(-1) as string, clocks, bays, ask.wish?.bay);
    if (bay === undefined) return found;
    if ('name' in bay) return { ...found, bay: bay.name };
    refused = sooner(refused, bay);
  }
  return refused ?? { because: `the crew has no time left on ${day}`, next: addDays(day, 1) };
}

/** The people of an earlier schedule first. */
function preferred(teams: readonly Team[], wish: Wish | undefined): readonly Team[] {
  if (!wish?.people) return teams;
  const { crew } = wish;
  const same = ({ people, of }: Team) =>
    people.join() === wish.people?.join() && (crew === undefined || of.name === crew);
  return [...teams.filter(same), ...teams.filter((team) => !same(team))];
}

/** Of what stands against each team, what ends first. */
function sooner(a: Obstacle | undefined, b: Obstacle): Obstacle {
  return a && a.next <= b.next ? a : b;
}

function laidIn(steps: readonly Step[], { dayOf }: Packed, jobs: readonly Job[]): readonly Laid[] {
  const materials = new Map(jobs.flatMap((job) => job.materials.map((material) => [material.name, material])));
  return steps.flatMap(({ key, materials: names }) =>
    names.flatMap((name) => {
      const material = materials.get(name);
      const day = dayOf.get(key);
      const lies = material && material.kind !== 'cleaner' && material.kind !== 'primer';
      return lies && day !== undefined ? [{ material, day }] : [];
    }),
  );
}

/** Clocks hold the rig until they end, and other visits of it stand where they stand. */
function conflict(found: Unexplained, { end }: Ask, { days, held }: Setting): Obstacle | undefined {
  const first = found.packed.days[0] as string;
  const last = found.packed.days.at(-1) as string;
  const next = addDays(first, 1);
  const late = found.jobs.find((job) => job.pinned && job.limit && beginsOn(found, job) > job.limit.date);
  if (late) return { because: 'other work of the visit would push it beyond its day', next };
  if (last > end) return { because: `it takes until ${last}`, next };
  const turning = turnedTooLong(found, days);
  if (turning !== undefined) return { because: turning, next };
  const drive = found.clocks.find(({ clock }) => clock === 'drive');
  const departure = departureAfter(last, days);
  if (drive && departure && departure.first < drive.safeFrom) {
    const because = `${drive.materials.join(', ')} may not be driven before ${drive.safeFrom}, and ${departure.because}`;
    return { because, next };
  }
  for (const other of held) {
    const [from, to] = [other.packed.days[0] as string, other.packed.days.at(-1) as string];
    if (first <= to && from <= last) return { because: `another visit is held until ${to}`, next: addDays(to, 1) };
    const [early, later] = first < from ? [found, other] : [other, found];
    const wash = early.clocks.find(({ clock }) => clock === 'wash');
    const washed = later.steps.find(({ task }) => task === 'wash');
    const washDay = washed && later.packed.dayOf.get(washed.key);
    if (wash && washDay !== undefined && washDay < wash.safeFrom) {
      return { because: `${wash.materials.join(', ')} may not be washed before ${wash.safeFrom}`, next };
    }
  }
  return undefined;
}

/** Why a visit does not fit between two bookings of one day: it takes longer, or what it lays may not be driven then. */
function turnedTooLong({ packed, steps, team, clocks }: Unexplained, days: RigDays): string | undefined {
  const turn = packed.days.find((day) => days.turns.has(day));
  const { turnRound } = days.view.rig.policy;
  if (turn === undefined || !turnRound) return undefined;
  const { rig } = days.view;
  const leaves = `${rig.name} comes back on ${turn} and leaves again`;
  const drive = clocks.find(({ clock }) => clock === 'drive');
  if (drive) return `${leaves}, and ${drive.materials.join(', ')} may not be driven before ${drive.safeFrom}`;
  const sum = steps.reduce((all, { minutes, waits }) => all + minutes / speedOf(team) + waits, 0);
  if (packed.days.length === 1 && sum <= turnRound.value.minutes) return undefined;
  return `${leaves}: its roof is free for ${turnRound.value.text}`;
}

/** The first day of a visit on which something of a job is done; the first day of all where it has no step of its own. */
function beginsOn({ steps, packed }: Pick<Held, 'steps' | 'packed'>, job: Job): string {
  const own = steps.find(({ jobs }) => jobs.includes(job));
  return (own && packed.dayOf.get(own.key)) ?? (packed.days[0] as string);
}

/** The last day of a visit. */
export function endOf({ packed }: Pick<Held, 'packed'>): string {
  return packed.days.at(-1) as string;
}
