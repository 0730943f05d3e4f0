// Bookings from an iCalendar file (RFC 5545): each event is one, and a repeated event as many as it has dates.
import ICAL from 'ical.js';
import type { Span } from '../grammar/problem.ts';
import { isValidDate } from '../values/calendar.ts';
import type { BookingRow, BookingsFile } from './bookings.ts';
import type { TableProblem } from './columns.ts';

/** An event without an end is followed for so many years from its first date, and at least to this one: further than any schedule looks. */
const mostYears = 30;
const leastYear = 2060;
/** A calendar with more dates is no list of bookings, or repeats without need. */
export const mostDates = 100_000;

/** A day without `VALUE=DATE`, as some programs write it; it can be nothing else. */
const bareDay = /^((?:DTSTART|DTEND|EXDATE|RECURRENCE-ID)(?:;(?!VALUE=)[^:;\r\n]*)*):(\d{8})(?=\r?$)/gim;

interface Part {
  readonly event: ICAL.Event;
  readonly place: Place;
}

/** An event as it is written. `line` counts from 1. */
interface Place {
  readonly at: Span;
  readonly line: number;
  readonly text: string;
}

/** Reads the events of a calendar. Days are those that an event touches in the zone in which its times are written. */
export function readCalendar(text: string): BookingsFile {
  const problems: TableProblem[] = [];
  const rows: BookingRow[] = [];
  const places = blocksIn(text, 'VEVENT');
  const unread = places.length === 0 && !/^BEGIN:VCALENDAR/im.test(text);
  if (unread) problems.push({ at: [0, 0], line: 1, message: 'This is no calendar: it has no line `BEGIN:VCALENDAR`.' });

  const root = new ICAL.Component(['vcalendar', [], []]);
  const attempt = (place: Place, work: () => void) => {
    try {
      work();
    } catch (error) {
      // What the library cannot make sense of is a mistake in the file.
      const [at, message] =
        error instanceof Refused
          ? [error.at, error.message]
          : [place.at, `This event cannot be read: ${(error as Error).message}.`];
      problems.push({ at, line: place.line, message });
    }
  };
  const known = (place: Place): ICAL.Component => {
    const component = new ICAL.Component(ICAL.parse(place.text.replace(bareDay, '$1;VALUE=DATE:$2')) as unknown[]);
    root.addSubcomponent(component);
    return component;
  };
  for (const zone of blocksIn(text, 'VTIMEZONE')) attempt(zone, () => void known(zone));

  const components: { readonly component: ICAL.Component; readonly place: Place }[] = [];
  for (const place of places) attempt(place, () => void components.push({ component: known(place), place }));
  /** Dates of a repeated event that were moved or called off, by its UID. */
  const moved = new Map<string, ICAL.Component[]>();
  const masters = new Set<string>();
  for (const { component } of components) {
    const uid = String(component.getFirstPropertyValue('uid') ?? '');
    if (!component.hasProperty('recurrence-id')) masters.add(uid);
    else moved.set(uid, [...(moved.get(uid) ?? []), component]);
  }
  for (const { component, place } of components) {
    const uid = String(component.getFirstPropertyValue('uid') ?? '');
    const isMoved = component.hasProperty('recurrence-id');
    if (isMoved && masters.has(uid)) continue;
    attempt(place, () => {
      const exceptions = isMoved ? [] : (moved.get(uid) ?? []);
      const event = new ICAL.Event(component, { exceptions, strictExceptions: false });
      for (const row of bookingsOf({ event, place }, mostDates - rows.length)) rows.push(row);
    });
  }
  return {
    rows,
    problems: problems.sort((a, b) => a.at[0] - b.at[0]),
    count: places.length,
    ...(unread ? { unread } : {}),
  };
}

/** Something that a person can mend in the file. */
class Refused extends Error {
  readonly at: Span;
  constructor(at: Span, message: string) {
    super(message);
    this.at = at;
  }
}

function bookingsOf(part: Part, most: number): readonly BookingRow[] {
  const { event, place } = part;
  if (isCancelled(event)) return [];
  const { labels, at: labelAt } = labelsOf(part);
  if (!event.component.hasProperty('dtstart'))
    throw new Refused(place.at, 'This event has no first day: `DTSTART` is missing.');
  // The library would turn the thirtieth of February into a day of March.
  for (const name of ['DTSTART', 'DTEND']) {
    const [, year, month, day] = /[:](\d{4})(\d\d)(\d\d)(?:T\S*)?\s*$/.exec(lineOf(place, name)?.[0] ?? '') ?? [];
    const written = `${year}-${month}-${day}`;
    if (year && !isValidDate(written))
      throw new Refused(lineAt(place, name), `\`${written}\` is no day of the calendar.`);
  }
  const row = (start: ICAL.Time, end: ICAL.Time): BookingRow => {
    const [first, last] = [dayOf(start), lastDay(start, end)];
    if (last < first) throw new Refused(lineAt(place, 'DTEND'), `This event ends before it begins, on ${first}.`);
    return { labels, labelAt, first, last, at: place.at, line: place.line };
  };
  if (!event.isRecurring()) return [row(event.startDate, event.endDate)];

  const out: BookingRow[] = [];
  for (const rule of event.component.getAllProperties('rrule')) {
    const { freq } = rule.getFirstValue() as ICAL.Recur;
    if (!['DAILY', 'WEEKLY', 'MONTHLY', 'YEARLY'].includes(freq))
      throw new Refused(lineAt(place, 'RRULE'), 'A booking repeats by day, week, month or year, not more often.');
  }
  // The library would end the whole series there.
  if (
    event.component.getAllProperties('rdate').some((one) => one.getValues().some((day) => day instanceof ICAL.Period))
  )
    throw new Refused(lineAt(place, 'RDATE'), 'A date of its own is written as a day or a time, not as a period.');
  const limit = Math.max(event.startDate.year + mostYears, leastYear);
  const dates = event.iterator();
  for (let next = dates.next(); next && next.year <= limit; next = dates.next()) {
    if (out.length >= most)
      throw new Refused(
        lineAt(place, 'RRULE'),
        `With this event the calendar has more than ${mostDates} dates: give it an end with \`UNTIL\`.`,
      );
    const { item, startDate, endDate } = event.getOccurrenceDetails(next);
    if (isCancelled(item)) continue;
    // A date that was changed by itself may have gone to another rig.
    const named = item === event ? undefined : labelsIn(item);
    out.push({ ...row(startDate, endDate), ...(named && named.length > 0 ? { labels: named } : {}) });
  }
  return out;
}

const isCancelled = ({ component }: ICAL.Event): boolean =>
  String(component.getFirstPropertyValue('status') ?? '').toUpperCase() === 'CANCELLED';

/** Where the rig may be named: the place, else the title, else a category. */
function labelsOf({ event, place }: Part): { readonly labels: readonly string[]; readonly at: Span } {
  const labels = labelsIn(event);
  const at = ['LOCATION', 'SUMMARY', 'CATEGORIES'].find((name) => lineOf(place, name)) ?? 'UID';
  if (labels.length === 0)
    throw new Refused(
      place.at,
      'This event names no rig: its name or unit number is the LOCATION, the SUMMARY or one of the CATEGORIES.',
    );
  return { labels, at: lineAt(place, at) };
}

function labelsIn({ component }: ICAL.Event): readonly string[] {
  const texts = (name: string) => component.getAllProperties(name).flatMap((one) => one.getValues().map(String));
  return ['location', 'summary', 'categories'].flatMap(texts).flatMap((one) => one.trim() || []);
}

const dayOf = ({ year, month, day }: ICAL.Time): string =>
  `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;

/** An end is not part of the event any more; one that is no later than the beginning still has its first day. */
function lastDay(start: ICAL.Time, end: ICAL.Time): string {
  if (end.compare(start) === 0) return dayOf(start);
  const before = end.clone();
  if (end.isDate) before.adjust(-1, 0, 0, 0);
  else before.adjust(0, 0, 0, -1);
  return dayOf(before);
}

const lineOf = ({ text }: Place, name: string) => new RegExp(`^${name}[;:].*$`, 'im').exec(text);

/** The line of a property, or the whole event where it has none. */
function lineAt(place: Place, name: string): Span {
  const found = lineOf(place, name);
  if (!found) return place.at;
  const from = place.at[0] + found.index;
  return [from, from + found[0].trimEnd().length];
}

/** The blocks of a kind, each by itself, so that a damaged one takes no other with it. */
function blocksIn(text: string, kind: string): readonly Place[] {
  const out: Place[] = [];
  let [line, counted] = [1, 0];
  for (const { index, 0: begin } of text.matchAll(new RegExp(`^BEGIN:${kind}[ \\t]*$`, 'gim'))) {
    const close = new RegExp(`^(?:END|BEGIN):${kind}[ \\t]*$`, 'gim');
    close.lastIndex = index + begin.length;
    const end = close.exec(text);
    const to = !end ? text.length : /^end/i.test(end[0]) ? end.index + end[0].length : end.index;
    for (; counted < index; counted++) if (text[counted] === '\n') line++;
    out.push({ at: [index, to], line, text: text.slice(index, to) });
  }
  return out;
}
