// What falls due: one thing to do or to know by a date, with its reason.
import type { Input } from '../explain.ts';
import type { Dates, Event, Origin, RigView, Stated } from '../resolve/types.ts';
import type { RigState } from '../seams/state.ts';
import { addDays, addPeriod, daysBetween } from '../values/calendar.ts';
import { OPEN_BEGINNING } from '../values/day.ts';
import type { Period } from '../values/period.ts';
import { type Calendar, movedOutOfStorage } from './calendar.ts';

export type DueKind =
  | 'inspect'
  | 'event-look'
  | 'storage-look'
  | 'look-hard'
  | 'follow-up'
  | 'not-seen'
  | 're-read'
  | 'leak-look'
  | 'strip'
  | 'cover'
  | 'temporary-cover'
  | 'tape-second-half'
  | 'tape-end'
  | 'best-before'
  | 'quote'
  | 'plan';

/** From the least to the most pressing. */
export const statuses = ['not-due', 'soon', 'due', 'overdue'] as const;
export type Status = (typeof statuses)[number];

/**
 * How a date is meant. `deadline`: to be done by that day, moved out of storage. `expiry`: holds to that day, storage or
 * not. `from`: from that day on something holds or may be done, so that it is never overdue.
 */
export type Nature = 'deadline' | 'expiry' | 'from';

/** How a date came about. */
export interface DueReason {
  readonly rule: string;
  /** The date from the names of the inputs, such as `last_look + every`. */
  readonly formula: string;
  readonly inputs: readonly Input[];
  /** A published source, where there is one. */
  readonly source?: string;
}

/** One thing that falls due, or that holds to or from a day. */
export interface Due {
  readonly kind: DueKind;
  readonly nature: Nature;
  /** The seam or item; missing for what is about the whole rig. */
  readonly item?: string;
  /** Every item that it is about, where there are several. */
  readonly items?: readonly string[];
  /** What was found: a condition, `wet`, `leak`; of a reading what it asks for. */
  readonly word?: string;
  readonly date: string;
  readonly status: Status;
  /** Days from the as-of date: negative once it is over. */
  readonly days: number;
  /** Where it fell inside storage: its own date, and to which end it was moved. */
  readonly moved?: { readonly from: string; readonly to: 'before storage' | 'after storage' };
  readonly because: string;
  readonly explained: DueReason;
  /** The record from which it follows. */
  readonly sourceEvent?: { readonly file: string; readonly at: Event['record']['at'] };
  /** Of what recurs: the k-th time is on `start + k x every`, which does not drift. */
  readonly recurs?: { readonly start: string; readonly every: Period };
  /** The days on which something about it changes, in order. */
  readonly changes: readonly string[];
}

/** What all dues of a rig are made from. */
export interface Ground {
  readonly view: RigView;
  readonly dates: Dates;
  readonly state: RigState;
  readonly calendar: Calendar;
}

/** A due before its status is known. */
export interface Plain extends Omit<Due, 'status' | 'days' | 'moved' | 'changes' | 'nature' | 'sourceEvent'> {
  readonly nature?: Nature;
  readonly source?: Event;
  /** Not to be moved to this day or before: what it follows from happened then. */
  readonly notBefore?: string;
  /** Days on which it changes, where they are not those of its status. */
  readonly changesOn?: readonly string[];
}

/** A due with its status on the as-of date. */
export function dueOn(plain: Plain, { view, dates, calendar }: Ground): Due {
  const { source, notBefore, changesOn, nature = 'deadline', ...rest } = plain;
  const moved = nature === 'deadline' ? movedOutOfStorage(plain.date, notBefore, dates.asOf, calendar) : undefined;
  const date = moved?.date ?? plain.date;
  const soonFrom = addPeriod(date, view.rig.policy.dueSoon.value, -1);
  const over = nature === 'from' ? date : addDays(date, 1);
  return {
    ...rest,
    nature,
    date,
    status: statusOn(dates.asOf, soonFrom, date, nature),
    days: daysBetween(dates.asOf, date),
    ...(moved ? { moved: { from: plain.date, to: moved.to } } : {}),
    ...(source ? { sourceEvent: { file: source.file, at: source.record.at } } : {}),
    changes: changesOn ?? [...new Set([soonFrom, date, over])],
  };
}

function statusOn(asOf: string, soonFrom: string, date: string, nature: Nature): Status {
  if (asOf > date) return nature === 'from' ? 'due' : 'overdue';
  if (asOf === date) return 'due';
  return asOf >= soonFrom ? 'soon' : 'not-due';
}

/** The day from which an age or a deadline counts: the earliest on which it can have been, as far as one is known. */
export function ageStart({ first, last }: { readonly first: string; readonly last: string }): string {
  return first === OPEN_BEGINNING ? last : first;
}

/** Where a record stands, as the origin of a figure. */
export function originOf({ file, record }: Event): Origin {
  return { file, at: record.at, kind: 'record' };
}

/** A date as an input of a due. */
export function dateInput(name: string, date: string, origin?: Origin): Input {
  return { name, value: date, text: date, ...(origin ? { origin } : {}) };
}

/** A period as an input of a due. */
export function periodInput(name: string, { value, origin }: Stated<Period>): Input {
  return { name, value: value.text, text: value.text, origin };
}
