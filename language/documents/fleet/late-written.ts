// What is late, as Markdown and as CSV.
import { csvOf } from '../csv.ts';
import { bullets, type Column, left, paragraphs, plain, right, section, table } from '../markdown.ts';
import { type LateLine, type LateSum, lateBy, lateSum } from './late.ts';
import type { FleetScene } from './scene.ts';

export function lateMarkdown({ name, asOf, papers }: FleetScene, lines: readonly LateLine[]): string {
  const { cautions, note, library } = papers.schedule;
  return paragraphs(
    `# What is late: ${plain(name)}`,
    `As of ${asOf}, computed from what was recorded and planned. Built-in figures: library ${library}.`,
    lines.length === 0
      ? 'Nothing that was recorded or planned is late, or will be by the day on which it is planned.'
      : undefined,
    sumTable('', [lateSum('the fleet', lines)]),
    section('By yard', sumTable('yard', lateBy('yard', lines))),
    section('By group', sumTable('group', lateBy('group', lines))),
    section('Open and lifting first', lateTable(lines.filter(({ severity }) => severity >= 4))),
    section('The rest, the gravest first', lateTable(lines.filter(({ severity }) => severity < 4))),
    lines.length === 0
      ? undefined
      : 'Days late are counted to the as-of date, and after the arrow to the last day of the visit that is planned. What was found is what the last records say; what nobody looked at is not known.',
    section('Cautions', bullets(cautions.map(({ text }) => text))),
    note,
  );
}

function sumTable(of: string, sums: readonly LateSum[]): string {
  const head: readonly Column[] = [
    left(of),
    right('late'),
    right('over today'),
    right('cracked or worse'),
    right('without a plan'),
    right('without a day'),
    right('days late in all'),
  ];
  return table(
    head,
    sums.map((sum) => [
      plain(sum.of),
      ...[sum.lines, sum.over, sum.grave, sum.withoutPlan, sum.withoutDay, sum.days].map(String),
    ]),
  );
}

function lateTable(lines: readonly LateLine[]): string {
  return table(
    [
      left('rig'),
      left('what'),
      left('found'),
      left('due'),
      right('days late'),
      left('planned'),
      left('why'),
      left('waits for'),
    ],
    lines.map((line) => [
      plain([line.rig, ...[line.yard ?? []].flat()].join(', ')),
      plain(line.what),
      line.condition,
      line.due ?? '',
      daysText(line),
      plannedText(line),
      line.because.map(plain).join(' '),
      plain(waitsText(line)),
    ]),
  );
}

function daysText({ daysLate, planned }: LateLine): string {
  if (daysLate === undefined) return '';
  return planned && planned.daysLate !== daysLate ? `${daysLate} → ${planned.daysLate}` : `${daysLate}`;
}

export function plannedText({ standing, planned, firstDay }: LateLine): string {
  if (planned) return planned.first === planned.last ? planned.first : `${planned.first} to ${planned.last}`;
  if (standing === 'no plan') return 'no plan';
  return firstDay === undefined ? 'no day' : `no day; the first that would do is ${firstDay}`;
}

export const waitsText = ({ waitsFor }: LateLine): string =>
  waitsFor.map(({ material, until }) => `${material} from ${until}`).join(', ');

const columns = [
  'rig',
  'yard',
  'group',
  'what',
  'found',
  'severity',
  'due',
  'days late',
  'standing',
  'planned from',
  'planned to',
  'days late then',
  'first day',
  'waits for',
  'because',
  'id',
] as const;

/** Dates are ISO dates; severity from 0 for sound or unknown to 5 for open. */
export function lateCsv(lines: readonly LateLine[]): string {
  return csvOf(
    columns,
    lines.map((line) => ({
      rig: line.rig,
      yard: line.yard ?? '',
      group: line.group ?? '',
      what: line.what,
      found: line.condition,
      severity: line.severity,
      due: line.due ?? '',
      'days late': line.daysLate ?? '',
      standing: line.standing,
      'planned from': line.planned?.first ?? '',
      'planned to': line.planned?.last ?? '',
      'days late then': line.planned?.daysLate ?? '',
      'first day': line.firstDay ?? '',
      'waits for': waitsText(line),
      because: line.because.join(' '),
      id: line.id ?? '',
    })),
  );
}
