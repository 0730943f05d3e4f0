// The papers of a rig or a fleet. The same records and as-of date give the same bytes.

import type { DocumentFile, TextFile } from '../protocol/index.ts';
import type { Dates } from '../resolve/types.ts';
import { bookOf } from './book/index.ts';
import { toBase64 } from './bytes.ts';
import { comparisonChart } from './charts/index.ts';
import { estimateCsv } from './estimate-csv.ts';
import { estimateMarkdown } from './estimate-markdown.ts';
import { fleetPapersOf } from './fleet/index.ts';
import { morningOf } from './morning/index.ts';
import { type Beside, type Papers, papersOf, type Subject } from './papers.ts';
import { comingVisits, partsOfFleet } from './rig-of-fleet.ts';
import { scheduleCsv } from './schedule-csv.ts';
import { scheduleIcs } from './schedule-ics.ts';
import { scheduleMarkdown } from './schedule-markdown.ts';
import { sheetsOf } from './sheets/index.ts';
import { estimateWorkbook } from './workbook/index.ts';

export { type Beside, type Subject, scheduleIn } from './papers.ts';

/**
 * `NAME.estimate.{md,csv,json}` and `NAME.schedule.{md,csv,ics,json}`; of a rig also work sheet, inspection sheet, roof plan,
 * the chart of the ways over the years, service book and a file for each leak; of a fleet the page of the morning, what is late,
 * the budget, its calendars and rows for other tools, and of the rigs whose next visit comes soon their part of the schedule, `RIG.FLEET.schedule.{md,ics}`, and their sheets.
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
    ...rigParts(subject, papers, dates),
    ...sheetsOf(subject, subject.kind === 'fleet' ? comingVisits(papers, subject.fleet, dates) : papers, dates),
    ...waysChart(papers),
    ...bookOf(subject, papers, dates),
    ...morningOf(subject, papers),
    ...fleetPapersOf(subject, papers, dates),
  ];
}

function rigParts(subject: Subject, papers: Papers, dates: Dates): TextFile[] {
  if (subject.kind === 'rig') return [];
  return partsOfFleet(papers, subject.fleet, subject.views, dates).flatMap((part) => {
    const name = `${part.name}.${part.partOf}.schedule`;
    return [
      { name: `${name}.md`, text: scheduleMarkdown(part) },
      { name: `${name}.ics`, text: scheduleIcs(part) },
    ];
  });
}

/** `NAME.ways.svg` of a rig: what each way over the years costs by the end of each of them. */
function waysChart({ estimate }: Papers): TextFile[] {
  const [only] = estimate.comparisons;
  if (estimate.kind === 'fleet' || only === undefined || 'reason' in only.comparison) return [];
  return [{ name: `${estimate.name}.ways.svg`, text: comparisonChart(only.comparison) }];
}
