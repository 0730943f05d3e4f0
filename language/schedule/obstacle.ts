// What keeps a rig from being worked on: days on which it is away or laid up, on which nobody works, or out of season.
import type { Fleet, Material, Origin, RigView } from '../resolve/types.ts';
import { addDays, weekday } from '../values/calendar.ts';
import { inSeason, nextInSeason } from '../values/season.ts';
import { type Shift, shiftsOf, whyNobody, worksOn } from './shift.ts';
import { keptFree, slackOn, tooColdOrHot, type Weather, weatherOf } from './weather.ts';

/** Why a day will not do, and the first day on which this reason no longer holds. */
export interface Obstacle {
  readonly because: string;
  readonly next: string;
  /** The day itself would do. */
  readonly nearly?: true;
  /** It is a day of the week on which nobody works. */
  readonly weekly?: true;
}

export interface Span {
  readonly first: string;
  readonly last: string;
  readonly origin: Origin;
  readonly because: string;
}

/** The calendar of one rig, in order of time. */
export interface RigDays {
  /** Trips and bookings: the rig is not there. */
  readonly away: readonly Span[];
  readonly stored: readonly Span[];
  readonly closed: readonly Span[];
  /** The crews of the place where it is worked on, whatever they can do. */
  readonly shifts: readonly Shift[];
  /** The yard that serves it. */
  readonly yard?: string;
  readonly view: RigView;
  readonly weather: Weather;
  /** Days on which the rig comes back and leaves again. */
  readonly turns: ReadonlySet<string>;
  /** Working days that are kept free in a month (`2027-04`). */
  readonly free: (month: string) => ReadonlySet<string>;
}

/** The calendar of a rig, alone or in its fleet. An owner may work on every day of the week. */
export function rigDays(view: RigView, fleet?: Fleet): RigDays {
  const { rig } = view;
  const booked = view.booked ?? fleet?.booked.filter((each) => each.rig === rig.name) ?? [];
  const say = (spans: RigSpans, what: string): readonly Span[] =>
    spans
      .map(({ first, last, origin }) => ({ first, last, origin, because: `${what} from ${first} to ${last}` }))
      .sort((a, b) => compare(a.first, b.first) || compare(a.last, b.last));
  const away = [...say(rig.trips, `${rig.name} is on a trip`), ...say(booked, `${rig.name} is booked`)];
  const closed = say(fleet?.closed ?? [], 'nobody works');
  const shifts = shiftsOf(fleet);
  const weather = weatherOf(rig, fleet);
  const free = new Map<string, ReadonlySet<string>>();
  return {
    away: away.sort((a, b) => compare(a.first, b.first) || compare(a.last, b.last)),
    stored: say(rig.stored, `${rig.name} is laid up`),
    closed,
    shifts,
    ...(fleet?.yard ? { yard: fleet.yard.name } : {}),
    view,
    weather,
    turns: turnsOf(away),
    free: (month) => {
      const known = free.get(month);
      if (known) return known;
      const isWorkday = (day: string) =>
        shifts.some((shift) => worksOn(day, shift)) && within(closed, day) === undefined;
      const days = keptFree(month, slackOn(`${month}-01`, weather)?.percent ?? 0, isWorkday);
      free.set(month, days);
      return days;
    },
  };
}

/** Days on which one trip or booking ends and another begins, with no third one over them. */
function turnsOf(away: readonly Span[]): ReadonlySet<string> {
  const ends = new Set(away.map(({ last }) => last));
  const over = (day: string) => away.some(({ first, last }) => first < day && day < last);
  return new Set(away.flatMap(({ first, last }) => (first < last && ends.has(first) && !over(first) ? [first] : [])));
}

type RigSpans = readonly { readonly first: string; readonly last: string; readonly origin: Origin }[];

/** Needs of a visit: seasonal work waits for the season, a temporary cover goes on even in storage. */
export interface Needs {
  readonly season: boolean;
  readonly outOfStorage: boolean;
  /** Outdoors and on no day of its own: the days kept free for lost ones are left out. */
  readonly slack: boolean;
  /** What is laid outdoors: the normals of the month have to let it. */
  readonly laid: readonly Material[];
  /** The crews that can do it: somebody of them has to work on the day. */
  readonly shifts: readonly Shift[];
}

/** Why the rig cannot stand there to be worked on, on a day of a visit, worked on or not. */
export function absence(day: string, needs: Pick<Needs, 'outOfStorage'>, days: RigDays): Obstacle | undefined {
  const gone = within(days.away, day);
  if (gone && days.turns.size > 0 && days.view.rig.policy.turnRound) {
    if (days.turns.has(day)) return undefined;
    // A turn day may lie at the end of a booking.
    const turn = [...days.turns].find((each) => day < each && each < gone.next);
    if (turn !== undefined) return { ...gone, next: turn };
  }
  return gone ?? (needs.outOfStorage ? within(days.stored, day) : undefined);
}

/** Why nobody works on the rig on a day. */
export function obstacleOn(day: string, needs: Needs, days: RigDays): Obstacle | undefined {
  const gone = absence(day, needs, days) ?? within(days.closed, day);
  if (gone) return gone;
  const { season } = days.view.rig.policy;
  if (needs.season && !inSeason(day, season.value)) {
    const next = nextInSeason(day, season.value);
    return { because: `the season (${season.value.text}) begins on ${next}`, next };
  }
  const month = needs.laid.length > 0 ? tooColdOrHot(day, needs.laid, days.weather) : undefined;
  if (month) return month;
  const nobody = whyNobody(day, needs.shifts);
  if (nobody) return nobody;
  if (!isKeptFree(day, needs, days)) return undefined;
  const share = slackOn(day, days.weather)?.text;
  return { because: `${day} is kept free for days that weather takes (${share} of the month)`, next: addDays(day, 1) };
}

function isKeptFree(day: string, { slack }: Needs, { free }: RigDays): boolean {
  return slack && free(day.slice(0, 7)).has(day);
}

/** True if nobody works outdoors on that day, and nothing else is against it: a visit may go on after it. */
export function isDayOff(day: string, needs: Needs, days: RigDays): boolean {
  if (within(days.closed, day) !== undefined) return false;
  return !needs.shifts.some((shift) => shift.days.has(weekday(day))) || isKeptFree(day, needs, days);
}

function within(spans: readonly Span[], day: string): Obstacle | undefined {
  const span = spans.find(({ first, last }) => first <= day && day <= last);
  return span && { because: span.because, next: addDays(span.last, 1) };
}

/** The next time that the rig leaves after a day. */
export function departureAfter(day: string, { away }: RigDays): Span | undefined {
  return away.find(({ first }) => first > day);
}

export function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
