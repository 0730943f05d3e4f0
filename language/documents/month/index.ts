// What stands on each day of the coming months: what falls due, planned visits, bookings and closed days.
import { duesOf } from '../../due/index.ts';
import type { Span } from '../../grammar/problem.ts';
import type { Dates } from '../../resolve/types.ts';
import { dueIds, type ScheduledDue, scheduleOfFleet, scheduleOfRig, type Visit } from '../../schedule/index.ts';
import { rigState } from '../../seams/index.ts';
import { addDays, addPeriod, daysInMonth, weekday } from '../../values/calendar.ts';
import type { Subject } from '../papers.ts';
import { whoseOf } from '../titles.ts';

export type EntryKind = 'overdue' | 'due' | 'visit' | 'booked' | 'closed';

/** Something that stands in a calendar. */
export interface Entry {
  readonly kind: EntryKind;
  /** The days of the calendar's months on which it stands; none for what was due before them. */
  readonly days: readonly string[];
  /** The first day that it is about, which may lie before the months. */
  readonly date: string;
  readonly rig?: string;
  /** In trade words: `inspect the roof`. */
  readonly says: string;
  readonly why?: string;
  /** The line that it follows from. */
  readonly file: string;
  readonly at: Span;
}

export interface Month {
  /** `2026-12`. */
  readonly id: string;
  readonly days: number;
  /** The weekday of its first day: 1 for Monday to 7 for Sunday. */
  readonly startsOn: number;
}

export interface Months {
  readonly name: string;
  readonly kind: Subject['kind'];
  readonly asOf: string;
  readonly months: readonly Month[];
  readonly rigs: readonly string[];
  readonly entries: readonly Entry[];
}

/** How many months are shown, the one before the as-of date's first. */
const shown = 14;

/** The calendar of a rig, or of a fleet and all its rigs, on the as-of date. */
export function monthsOf(subject: Subject, dates: Dates): Months {
  const views = subject.kind === 'rig' ? [subject.view] : subject.views;
  const schedule =
    subject.kind === 'rig' ? scheduleOfRig(subject.view, dates) : scheduleOfFleet(subject.fleet, views, dates);
  const first = `${addPeriod(dates.asOf, { months: -1, days: 0 }).slice(0, 7)}-01`;
  const months = Array.from({ length: shown }, (_, i): Month => {
    const id = addPeriod(first, { months: i, days: 0 }).slice(0, 7);
    return { id, days: daysInMonth(id), startsOn: weekday(`${id}-01`) };
  });
  const last = `${months.at(-1)?.id}-${months.at(-1)?.days}`;
  const within = (from: string, to: string): string[] => {
    const days: string[] = [];
    for (let day = from < first ? first : from; day <= to && day <= last; day = addDays(day, 1)) days.push(day);
    return days;
  };

  const headings = new Map(views.map(({ rig }) => [rig.name, { file: rig.file, at: rig.nameAt }]));
  const origins = new Map<string, { file: string; at: Span }>();
  for (const view of views) {
    const dues = duesOf(view, dates, rigState(view, dates.asOf));
    for (const [i, id] of dueIds(view.rig.name, dues).entries()) {
      const { file, at } = dues[i]?.sourceEvent ?? (headings.get(view.rig.name) as { file: string; at: Span });
      origins.set(id, { file, at });
    }
  }
  const placeOf = (rig: string) => headings.get(rig) as { file: string; at: Span };

  const ofDue = (due: ScheduledDue): Entry[] =>
    due.kind === 'cover'
      ? [] // from this day on something is allowed: nothing is to be done by then
      : [
          {
            kind: due.status === 'overdue' ? 'overdue' : 'due',
            days: within(due.date, due.date),
            date: due.date,
            rig: due.rig,
            says: due.title,
            why: due.because,
            ...(origins.get(due.id) ?? placeOf(due.rig)),
          },
        ];
  const ofVisit = ({ days, rig, title, because, ...at }: Visit): Entry => ({
    kind: 'visit',
    days: days.filter((day) => day >= first && day <= last),
    date: days[0] as string,
    rig,
    says: `${title}${at.bay === undefined ? '' : `, in ${at.bay}`}${whoseOf(at).replace(/^ of/, ', by')}`,
    ...(because.length > 0 ? { why: because.join(' ') } : {}),
    ...placeOf(rig),
  });
  const spans =
    subject.kind === 'rig'
      ? []
      : [
          ...subject.fleet.booked.map(({ rig, first: from, last: to, origin: { file, at } }) => ({
            kind: 'booked' as const,
            days: within(from, to),
            date: from,
            rig,
            says: `booked from ${from} to ${to}`,
            file,
            at,
          })),
          ...[{ closed: subject.fleet.closed, name: '' }, ...subject.fleet.yards]
            .flatMap(({ closed, name }) => closed.map((span) => ({ ...span, yard: name === '' ? '' : `${name} ` })))
            .map(({ first: from, last: to, yard, origin: { file, at } }) => ({
              kind: 'closed' as const,
              days: within(from, to),
              date: from,
              says: `${yard}closed from ${from} to ${to}`,
              file,
              at,
            })),
        ];
  const entries = [...schedule.dues.flatMap(ofDue), ...schedule.visits.map(ofVisit), ...spans].filter(
    ({ days, kind }) => days.length > 0 || kind === 'overdue',
  );
  return {
    name: subject.kind === 'rig' ? subject.view.rig.name : subject.fleet.name,
    kind: subject.kind,
    asOf: dates.asOf,
    months,
    rigs: views.map(({ rig }) => rig.name),
    entries,
  };
}
