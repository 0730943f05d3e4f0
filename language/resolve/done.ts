// What the records say is done of the plans, and what is left: asked by dues, rules, estimate and schedule alike.
import { seamLength } from '../measure/length.ts';
import { lengthText, type System } from '../values/display.ts';
import type { Event, Place, Plan, Rig } from './types.ts';

/** The verb of the record that does what a plan says. */
export const pastOf: Readonly<Record<Plan['statement']['word'], Event['record']['word']>> = {
  inspect: 'inspected',
  wash: 'washed',
  dry: 'dried',
  cover: 'covered',
  strip: 'stripped',
  seal: 'sealed',
  tape: 'taped',
  replace: 'replaced',
  rebed: 'rebedded',
  coat: 'coated',
  patch: 'patched',
  tighten: 'tightened',
};

/** A plan with something left to do: `places` are what is left of it. */
export interface OpenPlan extends Plan {
  /** Where some of it is done: the plan as it is written, and the record that did the last of what is done. */
  readonly partly?: { readonly whole: Plan; readonly by: Event };
}

/** What of a plan's places is left, with the last record that did some of it; a plan of no places is about the whole roof. */
interface Progress {
  readonly left: readonly Place[];
  readonly by?: Event;
  readonly over: boolean;
}

/**
 * A record does what it names, from the plan's `on` or `after` to the as-of date. A plan without a first day is open for as
 * long as it is written, since nothing says which record would be its own; `otherwise` gives it one.
 */
function progressOf({ statement, places }: Plan, rig: Rig, asOf: string, otherwise?: string): Progress {
  const since = (statement.on ?? statement.after)?.first ?? otherwise;
  let left = places;
  let by: Event | undefined;
  if (since !== undefined) {
    for (const event of rig.events) {
      if (event.record.word !== pastOf[statement.word] || event.first < since || event.last > asOf) continue;
      const now = places.length === 0 ? [] : without(left, event, rig);
      if (now === left) continue;
      left = now;
      by = event;
      if (left.length === 0) return { left, by, over: true };
    }
  }
  return { left, ...(by ? { by } : {}), over: false };
}

/** The record with which all that a plan names has been done; undefined while something is open. */
export function doneBy(plan: Plan, rig: Rig, asOf: string, otherwise?: string): Event | undefined {
  const { over, by } = progressOf(plan, rig, asOf, otherwise);
  return over ? by : undefined;
}

/** What is left of a plan; the plan itself where nothing is done, undefined where all is. */
export function openPart(plan: Plan, rig: Rig, asOf: string, otherwise?: string): OpenPlan | undefined {
  const { left, by, over } = progressOf(plan, rig, asOf, otherwise);
  if (over) return undefined;
  return by ? { ...plan, places: left, partly: { whole: plan, by } } : plan;
}

/** The plans of a rig with something left to do, in the order in which they are written. */
export const openPlans = (rig: Rig, asOf: string): readonly OpenPlan[] =>
  rig.plans.flatMap((plan) => openPart(plan, rig, asOf) ?? []);

/** A plan as it is written, whatever of it is done. */
export const asWritten = (plan: OpenPlan): Plan => plan.partly?.whole ?? plan;

/** The items of a plan, each once, in the order in which they are named; empty for the whole roof. */
export const itemsOf = ({ places }: Plan): readonly string[] => [...new Set(places.map(({ item }) => item))];

/** What is left to do, as it would be typed: the names as written, or what is left of them. `end`: an end that nobody knows. */
export function targetsLeft(plan: OpenPlan, system: System, end: string): readonly string[] {
  if (!plan.partly)
    return (plan.statement.targets ?? []).map(({ name, stretch }) =>
      stretch ? `${name} from ${stretch.low.text} to ${stretch.high.text}` : name,
    );
  return plan.places.map(({ item, from, to }) => {
    if (from === undefined && to === undefined) return item;
    return `${item} from ${lengthText(from ?? 0, system)} to ${to === undefined ? end : lengthText(to, system)}`;
  });
}

/**
 * Places without what a record did; the same list where it did nothing of them. A finding about a part of an item is a look
 * at the whole of it, as everywhere; what was not seen is not looked at.
 */
function without(places: readonly Place[], { places: named, findings }: Event, rig: Rig): readonly Place[] {
  const seen = findings.filter(({ line }) => !line.seen.notSeen).flatMap((finding) => finding.places);
  const unseen = findings.filter(({ line }) => line.seen.notSeen).flatMap((finding) => finding.places);
  const roof = named.length === 0 && findings.length === 0;
  let changed = false;
  const left = places.flatMap((place) => {
    const mine = ({ item }: Place) => item === place.item;
    const done = roof || seen.some(mine) ? [{}] : named.filter(mine);
    if (done.length === 0) return [place];
    const whole = spanOf(place, lengthOf(place, rig));
    // What was not seen stays, though the record names the item.
    const kept = unseen.filter(mine).flatMap((hidden) => shared(whole, spanOf(hidden, whole[1])));
    const open = done.reduce<readonly Span[]>((spans, each) => cut(spans, spanOf(each, whole[1])), [whole]);
    const spans = merged([...open, ...kept]);
    if (spans.length === 1 && spans[0]?.[0] === whole[0] && spans[0][1] === whole[1]) return [place];
    changed = true;
    return spans.map((span) => placed(place, span, whole));
  });
  return changed ? left : places;
}

type Span = readonly [from: number, to: number];

/** Infinite where the length is not known: then the end stays open. */
function lengthOf({ item: name, to }: Place, rig: Rig): number {
  const item = rig.items.find((one) => one.name === name);
  const seam = item && seamLength(item, rig.roof, rig.policy.units.value);
  return seam?.ok ? seam.value.each.nm : (to ?? Number.POSITIVE_INFINITY);
}

const spanOf = ({ from = 0, to = Number.POSITIVE_INFINITY }: Omit<Place, 'item' | 'at'>, end: number): Span => [
  from,
  Math.max(from, Math.min(to, end)),
];

const shared = ([a, b]: Span, [c, d]: Span): readonly Span[] =>
  Math.max(a, c) < Math.min(b, d) ? [[Math.max(a, c), Math.min(b, d)]] : [];

function cut(spans: readonly Span[], [low, high]: Span): readonly Span[] {
  return spans.flatMap(([from, to]): readonly Span[] => {
    const pieces: readonly Span[] = [
      [from, Math.min(to, low)],
      [Math.max(from, high), to],
    ];
    return pieces.filter(([a, b]) => a < b);
  });
}

function merged(spans: readonly Span[]): readonly Span[] {
  const out: Span[] = [];
  for (const span of [...spans].sort((a, b) => a[0] - b[0])) {
    const last = out.at(-1);
    if (last && span[0] <= last[1]) out[out.length - 1] = [last[0], Math.max(last[1], span[1])];
    else out.push(span);
  }
  return out;
}

/** An end that the place did not give, and that nothing was done at, stays that of the seam. */
function placed({ item, at, from: first, to: last }: Place, [from, to]: Span, whole: Span): Place {
  const begins = from === whole[0] ? first : from;
  const ends = to === whole[1] && last === undefined && begins === undefined ? last : to;
  return {
    item,
    at,
    ...(begins === undefined ? {} : { from: begins }),
    ...(ends === undefined || ends === Number.POSITIVE_INFINITY ? {} : { to: ends }),
  };
}
