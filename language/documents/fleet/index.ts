// The papers of a fleet as a whole: what is late, what it costs by month, who works where, rows for other tools.

import type { TextFile } from '../../protocol/index.ts';
import type { Dates } from '../../resolve/types.ts';
import type { Papers, Subject } from '../papers.ts';
import { budgetOf } from './budget.ts';
import { budgetCsv, budgetMarkdown } from './budget-written.ts';
import { calendarsOf } from './calendars.ts';
import { jsonLinesOf } from './json-lines.ts';
import { lateLines } from './late.ts';
import { lateCsv, lateMarkdown } from './late-written.ts';
import { sceneOf } from './scene.ts';
import { summaryPage } from './summary/page.ts';

/**
 * Of a fleet `NAME.late.{md,csv}`, `NAME.budget.{md,csv}`, the page `NAME.summary.html`, a calendar for each crew and bay where there are several, and
 * `NAME.{rigs,seams,dues,visits,budget}.jsonl`. An owner's rig needs none of them.
 */
export function fleetPapersOf(subject: Subject, papers: Papers, dates: Dates): readonly TextFile[] {
  if (subject.kind === 'rig') return [];
  const scene = sceneOf(subject.fleet, subject.views, papers, dates);
  const late = lateLines(scene);
  const budget = budgetOf(scene);
  const file = (end: string, text: string): TextFile => ({ name: `${scene.name}.${end}`, text });
  return [
    file('late.md', lateMarkdown(scene, late)),
    file('late.csv', lateCsv(late)),
    file('budget.md', budgetMarkdown(scene, budget)),
    file('budget.csv', budgetCsv(budget)),
    file('summary.html', summaryPage(scene, late, budget)),
    ...calendarsOf(scene),
    ...jsonLinesOf(scene, budget),
  ];
}
