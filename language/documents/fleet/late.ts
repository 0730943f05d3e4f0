// What of a fleet is late, or will be by the day on which it is planned, and why.
import { folderOf, relativeTo } from '../../resolve/paths.ts';
import type { Unplaced, Visit } from '../../schedule/index.ts';
import { conditions } from '../../statements/words.ts';
import { daysBetween } from '../../values/calendar.ts';
import { asksForWork, byRig, endOf, type FleetDue, type FleetRig, type FleetScene, severityAt } from './scene.ts';

export type Standing = 'no plan' | 'planned' | 'no day';

/** One thing that is late, or will be. */
export interface LateLine {
  readonly rig: string;
  readonly yard?: string;
  readonly group?: string;
  readonly what: string;
  /** Its id in the schedule; missing of a plan that has no day and no date. */
  readonly id?: string;
  /** The gravest finding there: a condition, `sound or unknown` where there is none. */
  readonly condition: string;
  /** 0 for sound or unknown to 5 for open. */
  readonly severity: number;
  readonly due?: string;
  /** Days over on the as-of date; 0 for what is not over yet, missing without a date. */
  readonly daysLate?: number;
  readonly standing: Standing;
  /** The first and last day of the visit that does it, and how late it is then. */
  readonly planned?: { readonly first: string; readonly last: string; readonly daysLate: number };
  /** Why it is not done sooner, a sentence each. */
  readonly because: readonly string[];
  /** Of what has no day: the first that would do. */
  readonly firstDay?: string;
  /** What has to be ordered for it and from when on it can be there. */
  readonly waitsFor: readonly { readonly material: string; readonly until: string }[];
}

/** The gravest first, of these what is over longest. */
export function lateLines(scene: FleetScene): readonly LateLine[] {
  const unplaced = byRig(scene.schedule.unplaced);
  const waiting = byRig(scene.schedule.waiting ?? []);
  const folder = folderOf(scene.fleet.file);
  const lines = scene.rigs.flatMap((rig) => {
    const waits = (title: string) =>
      (waiting.get(rig.name) ?? [])
        .filter((one) => title.split('; ').includes(one.title))
        .map(({ material, until }) => ({ material, until }));
    const out = unplaced.get(rig.name) ?? [];
    const isOf = (plan: Unplaced, { from: { kind, sourceEvent } }: FleetDue) =>
      kind === 'plan' &&
      sourceEvent?.at[0] === plan.at[0] &&
      sourceEvent.at[1] === plan.at[1] &&
      relativeTo(folder, sourceEvent.file) === plan.file;
    const dues = rig.dues.filter((due) => !out.some((plan) => isOf(plan, due)));
    const visits = new Map(rig.visits.map((visit) => [visit.id, visit]));
    const told = new Set<string>();
    const ofDues = dues.flatMap((due) => {
      const visit = due.due.settledBy === undefined ? undefined : visits.get(due.due.settledBy);
      const line = lateDue(due, visit, rig, scene.asOf);
      if (!line) return [];
      if (visit) told.add(visit.id);
      return [{ ...line, waitsFor: visit ? waits(visit.title) : [] }];
    });
    const ofVisits = rig.visits
      .filter(({ id }) => !told.has(id))
      .flatMap((visit) => {
        const line = lateVisit(visit, rig, scene.asOf);
        return line ? [{ ...line, waitsFor: waits(visit.title) }] : [];
      });
    const ofPlans = out.map((plan) => ({
      ...withoutDay(
        plan,
        rig.dues.find((due) => isOf(plan, due)),
        rig,
        scene.asOf,
      ),
      waitsFor: waits(plan.title),
    }));
    return [...ofDues, ...ofVisits, ...ofPlans];
  });
  return lines.sort(
    (a, b) =>
      b.severity - a.severity ||
      lateInAll(b) - lateInAll(a) ||
      compare(a.rig, b.rig) ||
      compare(a.due ?? '', b.due ?? '') ||
      compare(a.what, b.what),
  );
}

/** Days late on the day on which it is planned to be over; without a plan those of today. */
export const lateInAll = ({ planned, daysLate = 0 }: LateLine): number => planned?.daysLate ?? daysLate;

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** The place of a rig, the word for what was found: what all lines of it say. */
function headOf({ name, yard, group }: FleetRig, severity: number) {
  return {
    rig: name,
    ...(yard === undefined ? {} : { yard }),
    ...(group === undefined ? {} : { group }),
    severity,
    condition: severity === 0 ? 'sound or unknown' : (conditions[severity] as string),
  };
}

type Line = Omit<LateLine, 'waitsFor'>;

function lateDue({ due, severity }: FleetDue, visit: Visit | undefined, rig: FleetRig, asOf: string): Line | undefined {
  if (!asksForWork(due)) return undefined;
  const over = Math.max(0, daysBetween(due.date, asOf));
  const then = visit ? daysBetween(due.date, endOf(visit)) : 0;
  if (due.status !== 'overdue' && then <= 0) return undefined;
  return {
    ...headOf(rig, severity),
    what: due.title,
    id: due.id,
    due: due.date,
    daysLate: over,
    ...placed(visit, then),
    because: visit ? visit.because : [due.because, 'No plan settles it.'],
  };
}

/** A visit that ends after the last day of one of its plans. */
function lateVisit(visit: Visit, rig: FleetRig, asOf: string): Line | undefined {
  const { deadline, title, id, because, tasks } = visit;
  const then = deadline === undefined ? 0 : daysBetween(deadline, endOf(visit));
  if (deadline === undefined || then <= 0) return undefined;
  const items = [...new Set(tasks.flatMap((task) => task.items))];
  return {
    ...headOf(rig, severityAt(items, rig.state)),
    what: title,
    id,
    due: deadline,
    daysLate: Math.max(0, daysBetween(deadline, asOf)),
    ...placed(visit, then),
    because,
  };
}

const placed = (visit: Visit | undefined, then: number): Pick<Line, 'standing' | 'planned'> =>
  visit
    ? {
        standing: 'planned',
        planned: { first: visit.days[0] as string, last: endOf(visit), daysLate: Math.max(0, then) },
      }
    : { standing: 'no plan' };

function withoutDay(plan: Unplaced, due: FleetDue | undefined, rig: FleetRig, asOf: string): Line {
  return {
    ...headOf(rig, severityAt(plan.items, rig.state)),
    what: plan.title,
    ...(due ? { id: due.due.id, due: due.due.date, daysLate: Math.max(0, daysBetween(due.due.date, asOf)) } : {}),
    standing: 'no day',
    because: [`${plan.because.charAt(0).toUpperCase()}${plan.because.slice(1)}.`.replace(/\.\.$/, '.')],
    ...(plan.firstDay === undefined ? {} : { firstDay: plan.firstDay }),
  };
}

/** How many lines there are of a kind, and how many of them are over today. */
export interface LateSum {
  readonly of: string;
  readonly lines: number;
  readonly over: number;
  /** With a finding of cracked or worse. */
  readonly grave: number;
  readonly withoutPlan: number;
  readonly withoutDay: number;
  /** Of all of them, on the days on which they are planned to be over; without a plan those of today. */
  readonly days: number;
}

export function lateSum(of: string, lines: readonly LateLine[]): LateSum {
  const count = (which: (line: LateLine) => boolean) => lines.filter(which).length;
  return {
    of,
    lines: lines.length,
    over: count(({ daysLate = 0 }) => daysLate > 0),
    grave: count(({ severity }) => severity >= conditions.indexOf('cracked')),
    withoutPlan: count(({ standing }) => standing === 'no plan'),
    withoutDay: count(({ standing }) => standing === 'no day'),
    days: lines.reduce((sum, line) => sum + lateInAll(line), 0),
  };
}

/** The lines by yard or by group, where the fleet has some; rigs that belong to none come last. */
export function lateBy(key: 'yard' | 'group', lines: readonly LateLine[]): readonly LateSum[] {
  const names = [...new Set(lines.map((line) => line[key] ?? ''))].sort(
    (a, b) => Number(a === '') - Number(b === '') || compare(a, b),
  );
  if (names.every((name) => name === '')) return [];
  return names.map((name) =>
    lateSum(
      name === '' ? `no ${key}` : name,
      lines.filter((line) => (line[key] ?? '') === name),
    ),
  );
}
