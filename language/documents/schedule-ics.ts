// The schedule as iCalendar (RFC 5545): an all-day event for each visit with its tasks in the body, a to-do for each date that
// falls due and for the day from which a rig may be driven or covered.
import ICAL from 'ical.js';
import type { Visit } from '../schedule/index.ts';
import { addDays } from '../values/calendar.ts';
import { hoursText } from '../values/display.ts';
import type { SchedulePaper } from './papers.ts';
import { shortTitle } from './titles.ts';

// The blank that begins a folded line counts among its 75 octets; the library counts without it.
ICAL.foldLength = 74;

type Component = InstanceType<typeof ICAL.Component>;

export function scheduleIcs({ schedule, name, asOf }: SchedulePaper): string {
  const calendar = new ICAL.Component('vcalendar');
  calendar.addPropertyWithValue('version', '2.0');
  calendar.addPropertyWithValue('prodid', '-//Rigseam//Rigseam schedule//EN');
  calendar.addPropertyWithValue('calscale', 'GREGORIAN');
  // The name that most calendars show; RFC 7986 has the same as NAME.
  calendar.addPropertyWithValue('name', `Rigseam: ${name}`);
  calendar.addPropertyWithValue('x-wr-calname', `Rigseam: ${name}`);
  for (const visit of schedule.visits) {
    calendar.addSubcomponent(eventOf(visit, asOf));
    for (const clock of visit.clocks) {
      if (clock.clock !== 'drive' && clock.clock !== 'cover') continue;
      const what = clock.clock === 'drive' ? 'may be driven' : 'may be covered with tape';
      calendar.addSubcomponent(
        todo(`${clock.clock}/${visit.id}`, asOf, {
          summary: `${visit.rig}: ${what}`,
          description: `${clock.materials.join(', ')}: at the earliest ${clock.notBefore}, without doubt from ${clock.safeFrom}.`,
          start: clock.safeFrom,
        }),
      );
    }
  }
  for (const due of schedule.dues) {
    calendar.addSubcomponent(
      todo(`due/${due.id}`, asOf, {
        summary: `${due.rig}: ${due.title}`,
        description: due.because,
        last: due.date,
        ...(due.settledBy ? { related: uid(`visit/${due.settledBy}`) } : {}),
      }),
    );
  }
  return `${calendar.toString()}\r\n`;
}

/** Without the marks that iCalendar escapes: some readers take them as they stand. */
const uid = (id: string) => `${id.replace(/[,;\\\s]+/g, '_')}@rigseam.invalid`;

/** A component with the properties that RFC 5545 asks of each; the stamp is the as-of date, so that the file changes only with its content. */
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

function eventOf(visit: Visit, asOf: string): Component {
  const event = component('vevent', `visit/${visit.id}`, asOf);
  addDate(event, 'dtstart', visit.days[0] as string);
  addDate(event, 'dtend', addDays(visit.days.at(-1) as string, 1)); // exclusive
  event.addPropertyWithValue('summary', `${visit.rig}: ${shortTitle(visit.title)}`);
  const tasks = visit.tasks.map(
    (task) =>
      `${task.date}  ${task.label}${task.materials.length > 0 ? ` with ${task.materials.join(', ')}` : ''}${task.minutes > 0 ? ` (${hoursText(task.minutes)})` : ''}`,
  );
  const clocks = visit.clocks.map(
    (c) =>
      `${c.clock}: from ${c.notBefore} at the earliest, without doubt from ${c.safeFrom} (${c.materials.join(', ')})`,
  );
  event.addPropertyWithValue('description', [visit.title, ...visit.because, ...tasks, ...clocks].join('\n'));
  event.addPropertyWithValue('transp', 'OPAQUE');
  return event;
}

/**
 * A to-do. A DUE that is a date ends before that day begins (RFC 5545, 3.8.2.3), so one that may be done on its last day is due
 * on the day after.
 */
function todo(
  id: string,
  asOf: string,
  what: { summary: string; description: string; last?: string; start?: string; related?: string },
): Component {
  const out = component('vtodo', id, asOf);
  if (what.start) addDate(out, 'dtstart', what.start);
  if (what.last) addDate(out, 'due', addDays(what.last, 1));
  out.addPropertyWithValue('summary', what.summary);
  out.addPropertyWithValue(
    'description',
    what.last ? `To be done by ${what.last}. ${what.description}` : what.description,
  );
  if (what.related) out.addPropertyWithValue('related-to', what.related);
  out.addPropertyWithValue('status', 'NEEDS-ACTION');
  return out;
}
