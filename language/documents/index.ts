// The papers of a rig or a fleet. The same records and as-of date give the same bytes.
import type { Dates } from '../resolve/types.ts';
import { estimateCsv } from './estimate-csv.ts';
import { estimateMarkdown } from './estimate-markdown.ts';
import { type Beside, papersOf, type Subject } from './papers.ts';
import type { TextFile } from './protocol.ts';
import { scheduleIcs } from './schedule-ics.ts';
import { scheduleMarkdown } from './schedule-markdown.ts';

export { type Beside, type Subject, scheduleIn } from './papers.ts';

/** `NAME.estimate.{md,csv,json}` and `NAME.schedule.{md,ics,json}`. */
export function documentsOf(subject: Subject, dates: Dates, beside: Beside = {}): TextFile[] {
  const { estimate, schedule } = papersOf(subject, dates, beside);
  const json = (data: unknown) => `${JSON.stringify(data, undefined, 2)}\n`;
  const file = (end: string, text: string): TextFile => ({ name: `${estimate.name}.${end}`, text });
  return [
    file('estimate.md', estimateMarkdown(estimate)),
    file('estimate.csv', estimateCsv(estimate)),
    file('estimate.json', json(estimate)),
    file('schedule.md', scheduleMarkdown(schedule)),
    file('schedule.ics', scheduleIcs(schedule)),
    file('schedule.json', json(schedule)),
  ];
}
