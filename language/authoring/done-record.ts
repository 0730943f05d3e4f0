// The record of a plan that is done: the same words in the past tense.
import { type OpenPlan, pastOf, targetsLeft } from '../resolve/done.ts';
import type { System } from '../values/display.ts';
import type { Form } from './inspection-block.ts';

/** Whether a record can be made of a plan alone; what an inspection found is for a person to say. */
export const isRecordable = ({ statement }: OpenPlan): boolean => statement.word !== 'inspect';

/** The line that says that what is left of a plan was done on a day: `sealed 2026-11-25 curbside with GreyLap`. */
export function doneLines(plan: OpenPlan, date: string, system: System, { indent, dateAt }: Form): readonly string[] {
  const { word, materials = [] } = plan.statement;
  const verb = pastOf[word];
  const targets = targetsLeft(plan, system, '');
  const said = [
    date,
    ...(targets.length > 0 ? [targets.map((one) => one.trimEnd()).join(', ')] : []),
    ...(materials.length > 0 ? [`with ${materials.map(({ name }) => name).join(', ')}`] : []),
  ].join(' ');
  return [`${indent}${verb.padEnd(Math.max(dateAt, verb.length + 1))}${said}`];
}

/** Whether the record of a day is the plan's own by its dates; of any other the line of the plan has to go. */
export function closesPlan({ statement }: OpenPlan, date: string): boolean {
  const since = (statement.on ?? statement.after)?.first;
  return since !== undefined && since <= date;
}
