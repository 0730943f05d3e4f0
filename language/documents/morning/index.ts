// The page of the morning of a yard.

import type { TextFile } from '../../protocol/index.ts';
import { dayPlan } from '../../schedule/day.ts';
import type { Papers, Subject } from '../papers.ts';
import { morningDate } from './date.ts';
import { morningPage } from './page.ts';

export { morningDate } from './date.ts';
export { morningPage } from './page.ts';

/**
 * `NAME.morning.html` of a fleet: one landscape page for its crew, for the first day from the as-of date on with work, else
 * for the as-of date. An owner's rig has a work sheet and needs none.
 */
export function morningOf(subject: Subject, papers: Papers): TextFile[] {
  if (subject.kind === 'rig') return [];
  const { fleet, views } = subject;
  const { schedule } = papers.schedule;
  const estimates = new Map(papers.estimate.estimates.map((estimate) => [estimate.rig.name, estimate]));
  const day = dayPlan(schedule, morningDate(schedule), { views, fleet, estimates });
  return [{ name: `${fleet.name}.morning.html`, text: morningPage(day, fleet.policy.units.value) }];
}
