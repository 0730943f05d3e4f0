// The schedule as Markdown: dated visits with tick boxes, what falls due, what no day could hold.
import type { ScheduledTask, Visit } from '../schedule/index.ts';
import { hoursText } from '../values/display.ts';
import { type Align, bullets, paragraphs, plain, section, table } from './markdown.ts';
import type { SchedulePaper } from './papers.ts';
import { shortTitle } from './titles.ts';

const left = (title: string): readonly [string, Align] => [title, 'left'];

export function scheduleMarkdown({ schedule, cautions, note, name, asOf, library }: SchedulePaper): string {
  const fleet = schedule.kind === 'fleet';
  const dues = [...schedule.dues].sort(
    (a, b) => order[a.status] - order[b.status] || (a.date < b.date ? -1 : a.date > b.date ? 1 : 0),
  );
  return paragraphs(
    `# Schedule: ${plain(name)}`,
    `As of ${asOf}. Built-in figures: library ${library}.`,
    section(
      'Falls due',
      dueTable(
        dues.filter((due) => due.days <= near),
        fleet,
      ) || 'Nothing that the records speak of falls due within a year.',
    ),
    ...(schedule.visits.length === 0
      ? [section('Visits', 'No work is planned.')]
      : schedule.visits.map((visit) => visitText(visit, fleet))),
    section(
      'Could not be placed',
      bullets(
        schedule.unplaced.map(
          (one) =>
            `${fleet ? `${plain(one.rig)}: ` : ''}${plain(one.title)} – ${plain(one.because)}${one.firstDay ? ` The first day that would do is ${one.firstDay}.` : ''}`,
        ),
      ),
    ),
    section(
      'Falls due later',
      dueTable(
        dues.filter((due) => due.days > near),
        fleet,
      ),
    ),
    section(
      'What is assumed',
      table(
        [left('figure'), left('value'), left('kind')],
        schedule.assumptions.map((one) => [plain(one.what), plain(one.value), plain(one.source ?? one.kind)]),
      ),
    ),
    section('Cautions', bullets(cautions.map(({ text }) => text))),
    note,
  );
}

/** Days: what falls due within a year stands first, the rest at the end. */
const near = 366;

function dueTable(dues: SchedulePaper['schedule']['dues'], fleet: boolean): string {
  return table(
    [left('when'), left('status'), ...(fleet ? [left('rig')] : []), left('what'), left('why')],
    dues.map((due) => [
      due.date,
      statusText(due.status, due.days),
      ...(fleet ? [plain(due.rig)] : []),
      `${plain(due.title)}${due.settledBy ? ' (in a visit below)' : ''}`,
      plain(due.because),
    ]),
  );
}

const order = { overdue: 0, due: 1, soon: 2, 'not-due': 3 } as const;

function statusText(status: keyof typeof order, days: number): string {
  const n = Math.abs(days);
  const span = `${n} ${n === 1 ? 'day' : 'days'}`;
  return status === 'overdue' ? `overdue ${span}` : status === 'due' ? 'due today' : `in ${span}`;
}

const daysText = (days: readonly string[]) => (days.length === 1 ? days[0] : `${days[0]} to ${days.at(-1)}`) as string;

function visitText(visit: Visit, fleet: boolean): string {
  const who = `${visit.people} ${visit.people === 1 ? 'person' : 'people'}`;
  const clocks = visit.clocks.map(
    (c) =>
      `${clockText[c.clock]} from ${c.notBefore} at the earliest, without doubt from ${c.safeFrom} (${c.materials.map(plain).join(', ')})`,
  );
  return section(
    `${daysText(visit.days)}: ${fleet ? `${plain(visit.rig)}, ` : ''}${plain(shortTitle(visit.title))}`,
    paragraphs(
      `${hoursText(visit.minutes)} of work, ${who}.${visit.deadline === undefined ? '' : visit.deadline < (visit.days[0] as string) ? ` Late: due by ${visit.deadline}.` : ` In time until ${visit.deadline}.`}`,
      bullets(visit.because.map(plain)),
      visit.tasks.map((task) => taskText(task, visit.days.length > 1)).join('\n'),
      clocks.length > 0 ? bullets(clocks) : '',
    ).trimEnd(),
  );
}

const clockText = {
  rain: 'may be rained on',
  drive: 'may be driven',
  wash: 'may be washed',
  cover: 'may be covered with tape',
} as const;

function taskText(task: ScheduledTask, dated: boolean): string {
  const time = [task.minutes > 0 ? hoursText(task.minutes) : '', task.waits > 0 ? `wait ${hoursText(task.waits)}` : '']
    .filter(Boolean)
    .join(', ');
  const materials = task.materials.length > 0 ? ` with ${task.materials.map(plain).join(', ')}` : '';
  const why = task.because.length > 0 ? ` – ${task.because.map(plain).join(' ')}` : '';
  return `- [ ] ${dated ? `${task.date} ` : ''}${plain(task.label)}${materials}${time ? ` (${time})` : ''}${why}`;
}
