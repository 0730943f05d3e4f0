// The schedule as CSV: one line a task of a visit, a date that falls due, a plan that no day could hold.
import type { ScheduledTask, Visit } from '../schedule/index.ts';
import { csvOf } from './csv.ts';
import type { SchedulePaper } from './papers.ts';
import { clockText } from './titles.ts';

const columns = [
  'rig',
  'section',
  'from',
  'to',
  'what',
  'items',
  'materials',
  'people',
  'minutes',
  'waits',
  'deadline',
  'status',
  'because',
  'id',
] as const;
/** Beside them, in a fleet of several yards or of crews with names. */
const placeColumns = ['yard', 'crew', 'bay'] as const;

type Row = Partial<Readonly<Record<(typeof columns)[number] | (typeof placeColumns)[number], string | number>>>;

/** Dates are ISO dates, times whole minutes of one person; waiting holds nobody. */
export function scheduleCsv({ schedule }: SchedulePaper): string {
  const rows: Row[] = [
    ...schedule.visits.flatMap(visitRows),
    ...schedule.dues.map(({ rig, title, item, date, status, because, id }) => ({
      rig,
      section: 'due',
      from: date,
      to: date,
      what: title,
      ...(item === undefined ? {} : { items: item }),
      status,
      because,
      id,
    })),
    ...schedule.unplaced.map(({ rig, title, items, because, firstDay }) => ({
      rig,
      section: 'not placed',
      ...(firstDay === undefined ? {} : { from: firstDay }),
      what: title,
      items: items.join(', '),
      because,
    })),
    ...(schedule.waiting ?? []).map(({ rig, title, material, until, because }) => ({
      rig,
      section: 'waiting',
      from: until,
      what: title,
      materials: material,
      because,
    })),
    ...(schedule.moved ?? []).map(({ rig, title, from, to, because }) => ({
      rig,
      section: 'moved',
      ...(from === undefined ? {} : { from }),
      ...(to === undefined ? {} : { to }),
      what: title,
      because,
    })),
  ];
  const several = schedule.visits.some(({ yard, crewName }) => (yard ?? crewName) !== undefined);
  return csvOf(several ? [...columns, ...placeColumns] : columns, rows);
}

function visitRows(visit: Visit): readonly Row[] {
  const { rig, id, days, title, people, minutes, deadline, because, tasks, clocks, yard, crewName, bay } = visit;
  const [from, to] = [days[0] as string, days.at(-1) as string];
  return [
    {
      rig,
      section: 'visit',
      from,
      to,
      what: title,
      people,
      minutes: Math.round(minutes),
      ...(deadline === undefined ? {} : { deadline }),
      because: because.join(' '),
      id,
      ...(yard === undefined ? {} : { yard }),
      ...(crewName === undefined ? {} : { crew: crewName }),
      ...(bay === undefined ? {} : { bay }),
    },
    ...tasks.map((task) => taskRow(rig, task)),
    ...clocks.map((clock) => ({
      rig,
      section: 'clock',
      from: clock.notBefore,
      to: clock.safeFrom,
      what: clockText[clock.clock],
      materials: clock.materials.join(', '),
      id,
    })),
  ];
}

function taskRow(rig: string, { id, label, items, materials, date, minutes, waits, because }: ScheduledTask): Row {
  return {
    rig,
    section: 'task',
    from: date,
    to: date,
    what: label,
    items: items.join(', '),
    materials: materials.join(', '),
    minutes: Math.round(minutes),
    waits: Math.round(waits),
    because: because.join(' '),
    id,
  };
}
