// A fleet as JSON Lines (one object a line, in UTF-8, each line ended by a line feed), for tables and other tools.
import type { TextFile } from '../../protocol/index.ts';
import { daysBetween } from '../../values/calendar.ts';
import { type Budget, decimal } from './budget.ts';
import { headOf, rigRow, seamRows } from './rig-rows.ts';
import type { BudgetRow, DueRow, VisitRow } from './rows.ts';
import { asksForWork, byRig, endOf, type FleetRig, type FleetScene } from './scene.ts';

export function jsonLinesOf(scene: FleetScene, budget: Budget): readonly TextFile[] {
  const unplaced = byRig(scene.schedule.unplaced);
  const file = (end: string, rows: readonly object[]): TextFile => ({
    name: `${scene.name}.${end}.jsonl`,
    text: rows.map((row) => `${JSON.stringify(row)}\n`).join(''),
  });
  return [
    file(
      'rigs',
      scene.rigs.map((rig) => rigRow(scene, rig, unplaced.get(rig.name)?.length ?? 0)),
    ),
    file(
      'seams',
      scene.rigs.flatMap((rig) => seamRows(scene, rig)),
    ),
    file(
      'dues',
      scene.rigs.flatMap((rig) => dueRows(scene, rig)),
    ),
    file(
      'visits',
      scene.rigs.flatMap((rig) => visitRows(scene, rig)),
    ),
    file('budget', budgetRows(scene, budget)),
  ];
}

const lateOn = (due: string, day: string): number => Math.max(0, daysBetween(due, day));

function dueRows(scene: FleetScene, rig: FleetRig): readonly DueRow[] {
  const visits = new Map(rig.visits.map((visit) => [visit.id, visit]));
  return rig.dues.map(({ due, severity }) => {
    const visit = due.settledBy === undefined ? undefined : visits.get(due.settledBy);
    return {
      ...headOf(scene, rig),
      id: due.id,
      kind: due.kind,
      item: due.item ?? null,
      title: due.title,
      date: due.date,
      status: due.status,
      days: due.days,
      work: asksForWork(due),
      severity,
      settled_by: due.settledBy ?? null,
      days_late: due.status === 'overdue' ? lateOn(due.date, scene.asOf) : 0,
      days_late_planned: visit ? lateOn(due.date, endOf(visit)) : null,
      because: due.because,
    };
  });
}

function visitRows(scene: FleetScene, rig: FleetRig): readonly VisitRow[] {
  const each = (lists: readonly (readonly string[])[]) => [...new Set(lists.flat())].join(', ');
  return rig.visits.map((visit) => {
    const from = (clock: string) => visit.clocks.find((one) => one.clock === clock)?.safeFrom ?? null;
    return {
      ...headOf(scene, rig),
      id: visit.id,
      title: visit.title,
      first: visit.days[0] as string,
      last: endOf(visit),
      days: visit.days.length,
      bay: visit.bay ?? null,
      crew: visit.crewName ?? null,
      people: visit.people,
      minutes: visit.minutes,
      tasks: visit.tasks.length,
      items: each(visit.tasks.map(({ items }) => items)),
      materials: each(visit.tasks.map(({ materials }) => materials)),
      deadline: visit.deadline ?? null,
      days_late: visit.deadline === undefined ? 0 : lateOn(visit.deadline, endOf(visit)),
      rain_from: from('rain'),
      drive_from: from('drive'),
      because: visit.because.join(' '),
    };
  });
}

function budgetRows({ name, asOf }: FleetScene, { entries }: Budget): readonly BudgetRow[] {
  return entries.map(({ rig, yard, group, month, certainty, class: kind, minor, currency, what, why, of }) => ({
    fleet: name,
    as_of: asOf,
    rig,
    yard: yard ?? null,
    group: group ?? null,
    month: month ?? null,
    certainty,
    class: kind,
    amount: decimal(minor, currency),
    currency,
    what,
    why,
    of: of ?? null,
  }));
}
