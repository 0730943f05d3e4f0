// The papers of a rig or a fleet. The same records and as-of date give the same bytes.

import type { DocumentFile, TextFile } from '../protocol/index.ts';
import type { Dates, Fleet } from '../resolve/types.ts';
import { addPeriod } from '../values/calendar.ts';
import { bookOf } from './book/index.ts';
import { toBase64 } from './bytes.ts';
import { comparisonChart } from './charts/index.ts';
import { estimateCsv } from './estimate-csv.ts';
import { estimateMarkdown } from './estimate-markdown.ts';
import { morningOf } from './morning/index.ts';
import { type Beside, type Papers, papersOf, type Subject } from './papers.ts';
import { scheduleCsv } from './schedule-csv.ts';
import { scheduleIcs } from './schedule-ics.ts';
import { scheduleMarkdown } from './schedule-markdown.ts';
import { sheetsOf } from './sheets/index.ts';
import { estimateWorkbook } from './workbook/index.ts';

export { type Beside, type Subject, scheduleIn } from './papers.ts';

/**
 * `NAME.estimate.{md,csv,json}` and `NAME.schedule.{md,csv,ics,json}`; of a rig also work sheet, inspection sheet, roof plan,
 * the chart of the ways over the years, service book and a file for each leak; of a fleet the sheets of the rigs whose next
 * visit comes soon, and the page of the morning.
 */
export function textDocumentsOf(subject: Subject, dates: Dates, beside: Beside = {}): TextFile[] {
  return textsOf(subject, papersOf(subject, dates, beside), dates);
}

/** All papers: the texts of {@link textDocumentsOf} and `NAME.estimate.xlsx`, whose library works asynchronously. */
export async function documentsOf(subject: Subject, dates: Dates, beside: Beside = {}): Promise<DocumentFile[]> {
  const papers = papersOf(subject, dates, beside);
  const workbook = await estimateWorkbook(papers.estimate);
  return [
    ...textsOf(subject, papers, dates),
    { name: `${papers.estimate.name}.estimate.xlsx`, base64: toBase64(workbook) },
  ];
}

function textsOf(subject: Subject, papers: Papers, dates: Dates): TextFile[] {
  const { estimate, schedule } = papers;
  const json = (data: unknown) => `${JSON.stringify(data, undefined, 2)}\n`;
  const file = (end: string, text: string): TextFile => ({ name: `${estimate.name}.${end}`, text });
  return [
    file('estimate.md', estimateMarkdown(estimate)),
    file('estimate.csv', estimateCsv(estimate)),
    file('estimate.json', json(estimate)),
    file('schedule.md', scheduleMarkdown(schedule)),
    file('schedule.csv', scheduleCsv(schedule)),
    file('schedule.ics', scheduleIcs(schedule)),
    file('schedule.json', json(schedule)),
    ...sheetsOf(subject, subject.kind === 'fleet' ? comingVisits(papers, subject.fleet, dates) : papers, dates),
    ...waysChart(papers),
    ...bookOf(subject, papers, dates),
    ...morningOf(subject, papers),
  ];
}

/** `NAME.ways.svg` of a rig: what each way over the years costs by the end of each of them. */
function waysChart({ estimate }: Papers): TextFile[] {
  const [only] = estimate.comparisons;
  if (estimate.kind === 'fleet' || only === undefined || 'reason' in only.comparison) return [];
  return [{ name: `${estimate.name}.ways.svg`, text: comparisonChart(only.comparison) }];
}

/** Without the visits that begin later than `due-soon`: nobody prints the sheets of a whole yard for a year. */
function comingVisits(papers: Papers, { policy }: Fleet, { asOf }: Dates): Papers {
  const until = addPeriod(asOf, policy.dueSoon.value);
  const { schedule } = papers.schedule;
  const visits = schedule.visits.filter(({ days }) => (days[0] as string) <= until);
  return { ...papers, schedule: { ...papers.schedule, schedule: { ...schedule, visits } } };
}
