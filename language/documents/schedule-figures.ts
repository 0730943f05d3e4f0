// The figures that a schedule shows, each with its explanation, by the ids of what they belong to.
import * as z from 'zod';
import { Figure } from '../estimate/schema.ts';
import type { Explained, Input } from '../explain.ts';
import type { Policy, RigView } from '../resolve/types.ts';
import type { Schedule, ScheduledDue, ScheduledTask, Visit } from '../schedule/index.ts';
import type { Task } from '../statements/words.ts';
import { daysBetween } from '../values/calendar.ts';
import { hoursText } from '../values/display.ts';
import { rounded } from '../values/exact.ts';

const byId = z.record(z.string(), Figure).readonly();

export const ScheduleFigures = z
  .strictObject({
    /** Hours of work of each visit, by its id. */
    visits: byId,
    /** Hours of work of each task, by its id. */
    tasks: byId,
    /** Hours that each task waits without holding the crew, by its id; tasks that do not wait are missing. */
    waits: byId,
    /** Days from the as-of date to each date that falls due, by its id. */
    dues: byId,
  })
  .readonly();
export type ScheduleFigures = z.infer<typeof ScheduleFigures>;

export function scheduleFigures({ visits, dues, asOf }: Schedule, views: readonly RigView[]): ScheduleFigures {
  const policies = new Map(views.map(({ rig }) => [rig.name, rig.policy]));
  const tasks = visits.flatMap(({ rig, tasks }) => tasks.map((task) => ({ task, policy: policies.get(rig) })));
  const figureOf = <T extends { readonly id: string }>(all: readonly T[], figure: (one: T) => Explained) =>
    Object.fromEntries(all.map((one) => [one.id, figure(one)]));
  return {
    visits: figureOf(visits, visitHours),
    tasks: Object.fromEntries(tasks.map(({ task, policy }) => [task.id, taskHours(task, policy)])),
    waits: Object.fromEntries(
      tasks.filter(({ task }) => task.waits > 0).map(({ task, policy }) => [task.id, waitHours(task, policy)]),
    ),
    dues: figureOf(dues, (due) => daysTo(due, asOf)),
  };
}

function visitHours({ tasks }: Visit): Explained {
  const minutes = tasks.reduce((sum, task) => sum + task.minutes, 0);
  const inputs = tasks.map((task, i) => minutesInput(`task_${i + 1}`, task.minutes));
  return {
    ...hours(minutes),
    rule: 'all tasks together',
    formula: `(${inputs.map(({ name }) => name).join(' + ') || '0'}) / 60`,
    inputs,
  };
}

function taskHours({ task, minutes }: ScheduledTask, policy: Policy | undefined): Explained {
  const rate = rateInput(task, policy);
  return {
    ...hours(minutes),
    rule: rate.length > 0 ? 'as much as there is of it, by the likely rate of one person' : 'no rate is known for it',
    formula: 'minutes / 60',
    inputs: [minutesInput('minutes', minutes), ...rate],
  };
}

function waitHours({ task, waits }: ScheduledTask, policy: Policy | undefined): Explained {
  const drying = task === 'wash';
  return {
    ...hours(waits),
    rule: drying ? 'the roof dries after the wash' : "until the material has flashed off, by the material's own record",
    formula: 'minutes / 60',
    inputs: [minutesInput('minutes', waits), ...(drying ? rateInput('dry', policy) : [])],
  };
}

/** The likely rate of a task and where it was written; nothing where the policy has none. */
function rateInput(task: string, policy: Policy | undefined): readonly Input[] {
  const rate = policy?.rates[task as Task];
  if (rate === undefined || rate.value === 'none') return [];
  const { text } = rate.value.likely;
  return [{ name: `${task.replaceAll('-', '_')}_rate`, value: text, text, origin: rate.origin }];
}

const hours = (minutes: number) => ({ value: minutes / 60, unit: 'h', text: hoursText(minutes) });

function minutesInput(name: string, minutes: number): Input {
  return { name, value: minutes, unit: 'min', text: `${rounded(minutes, 2)} min` };
}

function daysTo({ status, date, days }: ScheduledDue, asOf: string): Explained {
  return {
    value: days,
    unit: 'days',
    text: daysText(status, days),
    rule: 'from the as-of date to that day',
    formula: 'day - as_of',
    inputs: [dayInput('day', date), dayInput('as_of', asOf)],
  };
}

/** What holds from a day on is never overdue: after that day it is due since then. */
function daysText(status: ScheduledDue['status'], days: number): string {
  const n = Math.abs(days);
  const span = `${n} ${n === 1 ? 'day' : 'days'}`;
  if (status === 'overdue') return `overdue ${span}`;
  if (days === 0) return 'due today';
  return days < 0 ? `since ${span}` : `in ${span}`;
}

function dayInput(name: string, date: string): Input {
  return { name, value: daysBetween('1970-01-01', date), unit: 'days since 1970-01-01', text: date };
}
