// The papers of a rig or a fleet. The same records and as-of date give the same bytes.
import type { Dates } from '../resolve/types.ts';
import { estimateCsv } from './estimate-csv.ts';
import { estimateMarkdown } from './estimate-markdown.ts';
import { estimatePaper, nameOf, type Subject, schedulePaper } from './papers.ts';
import type { DocumentFile } from './protocol.ts';
import { scheduleIcs } from './schedule-ics.ts';
import { scheduleMarkdown } from './schedule-markdown.ts';

export type { Subject } from './papers.ts';

/** `NAME.estimate.{md,csv,json}` and `NAME.schedule.{md,ics,json}`. */
export function documentsOf(subject: Subject, dates: Dates): DocumentFile[] {
  const name = nameOf(subject);
  const estimate = estimatePaper(subject, dates);
  const schedule = schedulePaper(subject, dates);
  const json = (data: unknown) => `${JSON.stringify(data, undefined, 2)}\n`;
  return [
    { name: `${name}.estimate.md`, text: estimateMarkdown(estimate) },
    { name: `${name}.estimate.csv`, text: estimateCsv(estimate) },
    { name: `${name}.estimate.json`, text: json(estimate) },
    { name: `${name}.schedule.md`, text: scheduleMarkdown(schedule) },
    { name: `${name}.schedule.ics`, text: scheduleIcs(schedule) },
    { name: `${name}.schedule.json`, text: json(schedule) },
  ];
}
