// The schedule as Markdown: dated visits with tick boxes, what falls due, what no day could hold.
import type { ScheduledDue, ScheduledTask, Visit } from '../schedule/index.ts';
import { bullets, left, paragraphs, plain, section, table } from './markdown.ts';
import type { SchedulePaper } from './papers.ts';
import type { PartOfFleet } from './rig-of-fleet.ts';
import { clockText, shortTitle, whoseOf } from './titles.ts';

/** Days: what falls due within a year stands first, the rest at the end. */
const near = 366;

export function scheduleMarkdown(paper: SchedulePaper | PartOfFleet): string {
  const { schedule, cautions, note, name, asOf, library } = paper;
  // They come in order of their dates.
  const dues = [...schedule.dues].sort((a, b) => order[a.status] - order[b.status]);
  return paragraphs(
    `# Schedule: ${plain(name)}`,
    `As of ${asOf}, computed from what was recorded and planned. Built-in figures: library ${library}.`,
    whichCounts(paper),
    lateness(paper),
    section('Moved since it was written last', bullets(movedOf(paper))),
    section(
      'Falls due',
      dueTable(
        dues.filter((due) => due.days <= near),
        'below',
        paper,
      ) || 'Nothing that the records speak of falls due within a year.',
    ),
    ...(schedule.visits.length === 0
      ? [section('Visits', 'No work is planned.')]
      : schedule.visits.map((visit) => visitText(visit, paper))),
    section('Could not be placed', bullets(unplaced(paper))),
    section('Waiting for what is ordered', bullets(waitingOf(paper))),
    section(
      'Falls due later',
      dueTable(
        dues.filter((due) => due.days > near),
        'above',
        paper,
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

/** Which schedule a rig is to follow: that of its fleet, which alone knows of bookings, bays and crew. */
function whichCounts(paper: SchedulePaper | PartOfFleet): string | undefined {
  const { name, kind, fleets = [], schedule } = paper;
  if (kind === 'fleet') return undefined;
  if ('partOf' in paper)
    return `This is its part of \`${paper.partOf}.schedule.md\`, with the bookings, bays and crew of ${plain(paper.partOf)}: it counts, not \`${name}.schedule.md\`.`;
  if (fleets.length > 0) {
    const theirs = fleets.map(
      (fleet) => `\`${fleet}.schedule.md\` (this rig's part, once a visit is near: \`${name}.${fleet}.schedule.md\`)`,
    );
    return `Not this schedule counts, but that of the fleet, which knows the bookings, bays and crew: ${theirs.join('; ')}.`;
  }
  if (schedule.visits.length === 0) return undefined;
  return 'It speaks of this rig alone: where a fleet has it, the bookings, bays and crew are in the schedule of the fleet, and that one counts.';
}

const order: Readonly<Record<ScheduledDue['status'], number>> = { overdue: 0, due: 1, soon: 2, 'not-due': 3 };

/** `visits`: where these stand, seen from the table. */
function dueTable(dues: readonly ScheduledDue[], visits: 'above' | 'below', { kind, figures }: SchedulePaper): string {
  const fleet = kind === 'fleet';
  return table(
    [left('when'), left('status'), ...(fleet ? [left('rig')] : []), left('what'), left('why')],
    dues.map((due) => [
      due.date,
      figures.dues[due.id]?.text ?? '',
      ...(fleet ? [plain(due.rig)] : []),
      `${plain(due.title)}${due.settledBy ? ` (in a visit ${visits})` : ''}`,
      plain(due.because),
    ]),
  );
}

function visitText(visit: Visit, paper: SchedulePaper): string {
  const fleet = paper.kind === 'fleet';
  const [first, last] = [visit.days[0] as string, visit.days.at(-1) as string];
  const when = first === last ? first : `${first} to ${last}`;
  const who = plain(`${visit.people} ${visit.people === 1 ? 'person' : 'people'}${whoseOf(visit)}`);
  const clocks = visit.clocks.map(
    (c) =>
      `${clockText[c.clock]} from ${c.notBefore} at the earliest, without doubt from ${c.safeFrom} (${c.materials.map(plain).join(', ')})`,
  );
  return section(
    `${when}: ${fleet ? `${plain(visit.rig)}, ` : ''}${plain(shortTitle(visit.title))}`,
    paragraphs(
      `${paper.figures.visits[visit.id]?.text} of work, ${who}.${inTime(visit.deadline, last)}`,
      bullets(visit.because.map(plain)),
      visit.tasks.map((task) => taskText(task, first !== last, paper)).join('\n'),
      bullets(clocks),
    ).trimEnd(),
  );
}

function inTime(deadline: string | undefined, last: string): string {
  if (deadline === undefined) return '';
  return deadline < last ? ` Late: due by ${deadline}.` : ` In time until ${deadline}.`;
}

function taskText(task: ScheduledTask, dated: boolean, { figures }: SchedulePaper): string {
  const wait = figures.waits[task.id];
  const time = [
    ...(task.minutes > 0 ? [`${figures.tasks[task.id]?.text}`] : []),
    ...(wait ? [`wait ${wait.text}`] : []),
  ].join(', ');
  const materials = task.materials.length > 0 ? ` with ${task.materials.map(plain).join(', ')}` : '';
  const why = task.because.length > 0 ? ` – ${task.because.map(plain).join(' ')}` : '';
  return `- [ ] ${dated ? `${task.date} ` : ''}${plain(task.label)}${materials}${time ? ` (${time})` : ''}${why}`;
}

/** Only where something is late: how much, and how much of it no order of work could avoid. */
function lateness({ schedule: { lateness } }: SchedulePaper): string {
  if (!lateness || lateness.days === 0) return '';
  const { days, bound } = lateness;
  return `Late in all: ${days} days times severity (1 for sound or unknown to 6 for open). No order of work comes below ${bound}.`;
}

function movedOf({ schedule: { moved = [] }, kind }: SchedulePaper): string[] {
  return moved.map(({ rig, title, from, to, because }) => {
    const days =
      from === undefined
        ? `new, on ${to}`
        : to === undefined
          ? `was on ${from}`
          : from === to
            ? from
            : `${from} to ${to}`;
    return `${kind === 'fleet' ? `${plain(rig)}: ` : ''}${plain(title)} (${days}) – ${plain(because)}`;
  });
}

function waitingOf({ schedule: { waiting = [] }, kind }: SchedulePaper): string[] {
  return waiting.map(
    ({ rig, title, material, until, because }) =>
      `${kind === 'fleet' ? `${plain(rig)}: ` : ''}${plain(title)} – ${plain(material)} from ${until}: ${plain(because)}`,
  );
}

function unplaced({ schedule, kind }: SchedulePaper): string[] {
  return schedule.unplaced.map(({ rig, title, because, firstDay }) => {
    const day = firstDay === undefined ? '' : `. The first day that would do is ${firstDay}.`;
    return `${kind === 'fleet' ? `${plain(rig)}: ` : ''}${plain(title)} – ${plain(because)}${day}`;
  });
}
