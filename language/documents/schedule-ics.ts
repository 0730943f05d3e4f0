// The schedule as iCalendar (RFC 5545): an all-day event for each visit with its tasks in the body, a to-do for each date that
// falls due and for the day from which a rig may be driven or covered.
import ICAL from 'ical.js';
import type { ScheduledDue, Visit } from '../schedule/index.ts';
import { addDays } from '../values/calendar.ts';
import type { SchedulePaper } from './papers.ts';
import type { PartOfFleet } from './rig-of-fleet.ts';
import { clockText, placeOf, shortTitle } from './titles.ts';

// The blank that begins a folded line counts among its 75 octets; the library counts without it.
ICAL.foldLength = 74;

type Component = InstanceType<typeof ICAL.Component>;

/** All dates are days without a zone. The stamp is the as-of date, so that the file changes only with its content. */
export function scheduleIcs(paper: SchedulePaper | PartOfFleet): string {
  const { schedule, name, asOf } = paper;
  const fleet = 'partOf' in paper ? paper.partOf : paper.kind === 'fleet' ? name : undefined;
  const calendar = calendarOf(`Rigseam: ${fleet === undefined || fleet === name ? name : `${name} (${fleet})`}`);
  const others = (paper.fleets ?? []).map((one) => `${one}.schedule.ics`);
  if (others.length > 0) {
    const text = `The schedule that counts is that of the fleet: ${others.join(', ')}. Take that one into your calendar, not both.`;
    calendar.addPropertyWithValue('description', text);
    calendar.addPropertyWithValue('x-wr-caldesc', text);
  }
  for (const visit of schedule.visits) {
    calendar.addSubcomponent(eventOf(visit, paper));
    for (const clock of clocksOf(visit, asOf)) calendar.addSubcomponent(clock);
  }
  for (const due of schedule.dues) calendar.addSubcomponent(dueOf(due, asOf));
  if (fleet !== undefined) ofFleet(calendar, fleet);
  return `${calendar.toString()}\r\n`;
}

/**
 * The visits of one crew or one bay of a fleet, under the names that they have in the calendar of the fleet. `staysUntil` gives
 * the last day on which a rig stands in the bay: where that is after its visit, the days between are an event of their own.
 */
export function placeIcs(
  paper: SchedulePaper,
  place: string,
  visits: readonly Visit[],
  staysUntil: (visit: Visit) => string = (visit) => visit.days.at(-1) as string,
): string {
  const calendar = calendarOf(`Rigseam: ${paper.name}, ${place}`);
  for (const visit of visits) {
    const last = visit.days.at(-1) as string;
    const until = staysUntil(visit);
    calendar.addSubcomponent(eventOf(visit, paper));
    if (until > last) calendar.addSubcomponent(stayOf(visit, place, addDays(last, 1), until, paper.asOf));
    for (const clock of clocksOf(visit, paper.asOf)) calendar.addSubcomponent(clock);
  }
  ofFleet(calendar, paper.name);
  return `${calendar.toString()}\r\n`;
}

function stayOf(visit: Visit, place: string, first: string, last: string, asOf: string): Component {
  const event = component('vevent', `stay/${visit.id}`, asOf);
  addDate(event, 'dtstart', first);
  addDate(event, 'dtend', addDays(last, 1)); // exclusive
  event.addPropertyWithValue('summary', `${visit.rig}: stays in ${place}`);
  event.addPropertyWithValue('description', `No work: it stands there until rain does its new work no harm.`);
  event.addPropertyWithValue('related-to', uid(`visit/${visit.id}`));
  event.addPropertyWithValue('transp', 'OPAQUE');
  return event;
}

function calendarOf(title: string): Component {
  const calendar = new ICAL.Component('vcalendar');
  calendar.addPropertyWithValue('version', '2.0');
  calendar.addPropertyWithValue('prodid', '-//Rigseam//Rigseam schedule//EN');
  calendar.addPropertyWithValue('calscale', 'GREGORIAN');
  // The name that most calendars show; RFC 7986 has the same as NAME.
  calendar.addPropertyWithValue('name', title);
  calendar.addPropertyWithValue('x-wr-calname', title);
  return calendar;
}

/**
 * A fleet's schedule of a rig is another one than the rig's own: in one calendar the two must not take each other's place. A
 * rig's part of it has the names that the whole has, so that a calendar that takes both shows each visit once.
 */
function ofFleet(calendar: Component, name: string): void {
  for (const part of calendar.getAllSubcomponents()) {
    for (const property of ['uid', 'related-to']) {
      const value = part.getFirstPropertyValue(property);
      if (value) part.updatePropertyWithValue(property, `${uid(name).replace(/@.*/, '')}/${value}`);
    }
  }
}

/** Without the marks that iCalendar escapes: some readers take them as they stand. */
const uid = (id: string) => `${id.replace(/[,;\\\s]+/g, '_')}@rigseam.invalid`;

/** A component with what RFC 5545 asks of each. */
function component(kind: 'vevent' | 'vtodo', id: string, asOf: string): Component {
  const out = new ICAL.Component(kind);
  out.addPropertyWithValue('uid', uid(id));
  out.addPropertyWithValue('dtstamp', ICAL.Time.fromDateTimeString(`${asOf}T00:00:00Z`));
  return out;
}

function addDate(to: Component, property: string, date: string): void {
  const value = new ICAL.Property(property);
  value.resetType('date');
  value.setValue(ICAL.Time.fromDateString(date));
  to.addProperty(value);
}

function eventOf(visit: Visit, { figures, asOf }: SchedulePaper): Component {
  const [first, last] = [visit.days[0] as string, visit.days.at(-1) as string];
  const event = component('vevent', `visit/${visit.id}`, asOf);
  addDate(event, 'dtstart', first);
  addDate(event, 'dtend', addDays(last, 1)); // exclusive
  event.addPropertyWithValue('summary', `${visit.rig}: ${shortTitle(visit.title)}`);
  const tasks = visit.tasks.map((task) => {
    const day = first === last ? '' : `${task.date} `;
    const materials = task.materials.length > 0 ? ` with ${task.materials.join(', ')}` : '';
    const time = task.minutes > 0 ? ` (${figures.tasks[task.id]?.text})` : '';
    return `- ${day}${task.label}${materials}${time}`;
  });
  const clocks = visit.clocks.map(
    (c) =>
      `${clockText[c.clock]}: from ${c.notBefore} at the earliest, without doubt from ${c.safeFrom} (${c.materials.join(', ')})`,
  );
  if (visit.yard !== undefined) event.addPropertyWithValue('location', placeOf(visit));
  const crew = visit.crewName === undefined ? [] : [`By crew ${visit.crewName}.`];
  event.addPropertyWithValue('description', [visit.title, ...crew, ...visit.because, ...tasks, ...clocks].join('\n'));
  event.addPropertyWithValue('transp', 'OPAQUE');
  return event;
}

/** To-dos that begin on the day from which the rig may be driven, and its new beads covered with tape. */
function clocksOf(visit: Visit, asOf: string): Component[] {
  return visit.clocks
    .filter(({ clock }) => clock === 'drive' || clock === 'cover')
    .map(({ clock, materials, notBefore, safeFrom }) =>
      reminder(`${clock}/${visit.id}`, asOf, {
        summary: `${visit.rig}: ${clockText[clock]}`,
        description: `${materials.join(', ')}: at the earliest ${notBefore}, without doubt from ${safeFrom}.`,
        start: safeFrom,
        related: `visit/${visit.id}`,
      }),
    );
}

/** What begins on its day, and what only holds until it; everything else is to be done by then. */
const begins: ReadonlySet<string> = new Set(['cover', 'tape-second-half']);
const ends: ReadonlySet<string> = new Set(['quote', 'best-before', 'temporary-cover', 'tape-end']);

function dueOf(due: ScheduledDue, asOf: string): Component {
  const words = begins.has(due.kind)
    ? `From ${due.date} on.`
    : ends.has(due.kind)
      ? `Its last day is ${due.date}.`
      : `To be done by ${due.date} at the latest.`;
  return reminder(`due/${due.id}`, asOf, {
    summary: `${due.rig}: ${due.title}`,
    description: `${words} ${due.because}`,
    ...(begins.has(due.kind) ? { start: due.date } : { last: due.date }),
    ...(due.settledBy === undefined ? {} : { related: `visit/${due.settledBy}` }),
  });
}

/**
 * A to-do. A DUE that is a date ends before that day begins (RFC 5545, 3.8.2.3), so one that may be done on its last day is due
 * on the day after.
 */
function reminder(
  id: string,
  asOf: string,
  what: { summary: string; description: string; last?: string; start?: string; related?: string },
): Component {
  const out = component('vtodo', id, asOf);
  if (what.start) addDate(out, 'dtstart', what.start);
  if (what.last) addDate(out, 'due', addDays(what.last, 1));
  out.addPropertyWithValue('summary', what.summary);
  out.addPropertyWithValue('description', what.description);
  if (what.related) out.addPropertyWithValue('related-to', uid(what.related));
  out.addPropertyWithValue('status', 'NEEDS-ACTION');
  return out;
}
