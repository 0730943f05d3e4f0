// The clocks that run from each sealing, taping and coating: skin, rain, drive, wash, cover.
import type { ClockName, Event, Material, MaterialsOf, Stated } from '../resolve/types.ts';
import type { Range } from '../statements/slots/lists.ts';
import { addDays, addMinutes, addPeriod } from '../values/calendar.ts';
import type { Duration } from '../values/period.ts';
import { fahrenheit } from '../values/temperature.ts';
import type { Layer, Stretch } from './state.ts';

/** A day, or a time on it. Without a time it is the beginning of the day. */
export interface Moment {
  readonly date: string;
  readonly time?: string;
}

/** Where the low and the high figure of a clock end. Before `earliest`: no. From `safe` on: yes. Between: not yet. */
export interface ClockEnds {
  readonly earliest: Moment;
  readonly safe: Moment;
}

export type Allowed = 'no' | 'not yet' | 'yes';

/**
 * The ends of a clock that starts with work. Days and months count by the calendar from the last day on which the work
 * can have been (start + 30 days is the first day that the figure allows). Hours count from the time of day of the work;
 * without one, from the end of its day, so that the clock is never shown to end too early.
 */
export function clockEnds(start: { readonly last: string; readonly time?: string }, clock: Range<Duration>): ClockEnds {
  return { earliest: endOf(start, clock.low), safe: endOf(start, clock.high) };
}

function endOf({ last, time }: { readonly last: string; readonly time?: string }, figure: Duration): Moment {
  if (figure.kind === 'period') return { date: addPeriod(last, figure) };
  if (figure.minutes === 0) return time === undefined ? { date: last } : { date: last, time };
  const end = addMinutes(time === undefined ? addDays(last, 1) : last, time ?? '00:00', figure.minutes);
  return end.time === '00:00' ? { date: end.date } : end;
}

/**
 * What a clock says of a moment. A day without a time is all of that day: `no` while the low figure ends on a later day,
 * `yes` once the high figure ended before the day began (part days are rounded up), else `not yet`.
 */
export function allowedAt(ends: ClockEnds, moment: Moment): Allowed {
  if (moment.time !== undefined) {
    if (isBefore(moment, ends.earliest)) return 'no';
    return isBefore(moment, ends.safe) ? 'not yet' : 'yes';
  }
  if (moment.date < ends.earliest.date) return 'no';
  return moment.date >= firstDay(ends.safe) ? 'yes' : 'not yet';
}

/** The first whole day from a moment on. */
export function firstDay({ date, time }: Moment): string {
  return time === undefined || time === '00:00' ? date : addDays(date, 1);
}

const isBefore = (a: Moment, b: Moment) =>
  a.date < b.date || (a.date === b.date && (a.time ?? '00:00') < (b.time ?? '00:00'));

/** A clock that runs from a record: its figure with its origin, and its ends. */
export interface Clock {
  readonly name: ClockName | 'cover';
  readonly material: string;
  readonly figure: Stated<Range<Duration>>;
  readonly ends: ClockEnds;
}

/** The clocks that a material starts when it is laid. `cover: never` starts none; `coverAllowed` speaks of it. */
export function clocksOf(start: Pick<Event, 'last' | 'time'>, material: Material): readonly Clock[] {
  const out: Clock[] = [];
  for (const [name, figure] of Object.entries(material.clocks) as [ClockName, Stated<Range<Duration>>][]) {
    out.push({ name, material: material.name, figure, ends: clockEnds(start, figure.value) });
  }
  const { cover } = material;
  if (cover && cover.value !== 'never') {
    const figure = { value: cover.value, origin: cover.origin };
    out.push({ name: 'cover', material: material.name, figure, ends: clockEnds(start, figure.value) });
  }
  return out;
}

/** Whether tape may go over a stretch, as far as what lies there is ready to be covered. */
export interface CoverAnswer {
  /** `never`: it takes no tape at all; `unknown`: what lies there, its age or its figure is not known. */
  readonly level: Allowed | 'never' | 'unknown';
  /** The layer that decides. */
  readonly layer?: Layer;
  readonly figure?: Stated<Range<Duration> | 'never'>;
  /** The first days that the low and the high figure allow; where several layers cure, those of the latest. */
  readonly from?: { readonly notYet: string; readonly yes: string };
}

/**
 * Whether tape may go over a stretch on a date, with the first allowed day of each level. Every sealant and coating above
 * the last tape or patch counts, since a fast coat does not cure the slow one under it; the gravest answer holds, then
 * the latest. A bare or taped stretch has nothing to wait for.
 */
export function coverAllowed(stretch: Stretch, moment: Moment, material: MaterialsOf): CoverAnswer {
  const sealedIn = stretch.layers.findLastIndex((layer) => layer.kind === 'tape' || layer.kind === 'patch');
  let worst: CoverAnswer = { level: 'yes' };
  for (const layer of stretch.layers.slice(sealedIn + 1)) {
    if (layer.kind === 'primer') continue;
    const answer = coverOfLayer(layer, moment, material);
    const graver = gravity[answer.level] - gravity[worst.level];
    const later = (answer.from?.yes ?? '') >= (worst.from?.yes ?? '');
    if (graver > 0 || (graver === 0 && later)) worst = answer;
  }
  return worst;
}

const gravity: Readonly<Record<CoverAnswer['level'], number>> = { yes: 0, 'not yet': 1, unknown: 2, no: 3, never: 4 };

function coverOfLayer(layer: Layer, moment: Moment, material: MaterialsOf): CoverAnswer {
  const figure = layer.material === undefined ? undefined : material(layer.material)?.cover;
  if (!figure) return { level: 'unknown', layer };
  if (figure.value === 'never') return { level: 'never', layer, figure };
  if (layer.last === undefined) return { level: 'unknown', layer, figure };
  const time = layer.event?.time;
  const start = layer.by === 'work' && time !== undefined ? { last: layer.last, time } : { last: layer.last };
  const ends = clockEnds(start, figure.value);
  const from = { notYet: firstDay(ends.earliest), yes: firstDay(ends.safe) };
  return { level: allowedAt(ends, moment), layer, figure, from };
}

/** How much slower a clock may run in the cold. A note beside the plain figures, which stay the rule. */
export interface ColdNote {
  /** By what the times grow. */
  readonly factor: number;
  readonly text: string;
  readonly kind: 'from memory';
}

/** Times double for each 10 C (18 F) colder than the middle of the range in which a material is applied (from memory). */
const doublingCelsius = 10;

/** A note where the recorded air was colder than the middle of the material's range; else undefined. */
export function coldNote(event: Event, material: Material): ColdNote | undefined {
  const air = 'air' in event.record ? event.record.air : undefined;
  if (!air || !material.apply) return undefined;
  const { low, high } = material.apply.value;
  const below = (low.celsius + high.celsius) / 2 - air.celsius;
  if (below <= 0) return undefined;
  const factor = 2 ** (below / doublingCelsius);
  const degrees = Math.round(fahrenheit(below) - 32);
  return {
    factor,
    text: `It was ${air.text}, ${degrees} F below the middle of its range: its times may be about ${factor.toFixed(1)} times as long.`,
    kind: 'from memory',
  };
}
