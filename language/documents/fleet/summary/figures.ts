// The figures of the summary: counts and sums of what the other papers of a fleet have in full.
import { seamLength } from '../../../measure/length.ts';
import { speedOf } from '../../../schedule/crew.ts';
import { isThere } from '../../../seams/index.ts';
import { addDays, addPeriod, daysBetween, weekday } from '../../../values/calendar.ts';
import { minorDigits } from '../../../values/currency.ts';
import { byCondition, conditionOf } from '../../roof/classes.ts';
import { type Budget, entriesBy, sumOf, totalOf } from '../budget.ts';
import { bayPlaces, type CrewPlace, crewPlaces, staysUntil } from '../places.ts';
import { asksForWork, type FleetScene } from '../scene.ts';

/** How far ahead it looks. */
const [months, weeks] = [12, 13];

/** `2026-11` and the months that follow. */
export const monthsFrom = (asOf: string): readonly string[] =>
  Array.from({ length: months }, (_, i) => addPeriod(`${asOf.slice(0, 7)}-01`, { months: i, days: 0 }).slice(0, 7));

export interface DuesIn {
  /** `late`, or a month. */
  readonly label: string;
  readonly planned: number;
  readonly pressing: number;
  readonly later: number;
}

/** What asks for work: over today, then by month; what a visit settles apart from what is due soon and what has time. */
export function duesByMonth({ rigs, asOf }: FleetScene): readonly DuesIn[] {
  const dues = rigs.flatMap((rig) => rig.dues.map(({ due }) => due)).filter(asksForWork);
  const counted = (label: string, mine: typeof dues): DuesIn => {
    const open = mine.filter(({ settledBy }) => settledBy === undefined);
    const later = open.filter(({ status }) => status === 'not-due').length;
    return { label, planned: mine.length - open.length, pressing: open.length - later, later };
  };
  const ahead = dues.filter(({ status }) => status !== 'overdue');
  return [
    counted(
      'late',
      dues.filter(({ status }) => status === 'overdue'),
    ),
    ...monthsFrom(asOf).map((month) =>
      counted(
        month,
        ahead.filter(({ date }) => date.slice(0, 7) === month),
      ),
    ),
  ];
}

export interface ConditionOf {
  readonly id: string;
  readonly words: string;
  /** Length of seams in nanometres, all copies. */
  readonly nm: number;
  /** Seams of which at least a part has it. */
  readonly seams: number;
}

/** How much of the seams of the fleet is in which condition, by the last records; the gravest first. */
export function conditionsOf({ rigs }: FleetScene): readonly ConditionOf[] {
  const sums = new Map(byCondition.map(({ id, words }) => [id, { id, words, nm: 0, seams: 0 }]));
  for (const { state, view } of rigs) {
    for (const seam of state.seams.values()) {
      if (seam.role !== 'sealed' || !isThere(seam, state.asOf)) continue;
      const length = seamLength(seam.item, view.rig.roof, view.rig.policy.units.value);
      const each = length.ok ? length.value.all.nm / seam.item.count : 0;
      const here = new Set<string>();
      for (const stretch of seam.stretches) {
        const { id } = conditionOf(stretch);
        const sum = sums.get(id)!;
        sum.nm += Math.max(0, Math.min(stretch.to ?? each, each) - stretch.from) * seam.item.count;
        here.add(id);
      }
      for (const id of here) sums.get(id)!.seams += 1;
    }
  }
  const order = ['open', 'lifting', 'cracked', 'hairline', 'chalky', 'not-seen', 'unknown', 'renewed', 'sound'];
  return order.flatMap((id) => sums.get(id) ?? []);
}

export interface MoneyIn {
  readonly month: string;
  readonly material: number;
  readonly labour: number;
  readonly tax: number;
  readonly expected: number;
}

/** The months ahead in one currency, in major units. */
export function moneyByMonth(budget: Budget, asOf: string, currency: string): readonly MoneyIn[] {
  const unit = 10 ** minorDigits(currency);
  const by = new Map(
    entriesBy(
      budget.entries.filter((entry) => entry.currency === currency),
      ({ month }) => month,
    ),
  );
  return monthsFrom(asOf).map((month) => {
    const { planned, expected } = sumOf(by.get(month) ?? []);
    return {
      month,
      material: planned.material / unit,
      labour: planned.labour / unit,
      tax: planned.tax / unit,
      expected: totalOf(expected) / unit,
    };
  });
}

export interface WeekLoad {
  /** Its Monday. */
  readonly monday: string;
  /** Hours of people that visits take, and those that the crews have. */
  readonly taken: number;
  readonly there: number;
}

/** The weeks from that of the as-of date on. */
export function loadByWeek(scene: FleetScene): readonly WeekLoad[] {
  const first = addDays(scene.asOf, 1 - weekday(scene.asOf));
  const crews = crewPlaces(scene);
  const taken = new Array<number>(weeks).fill(0);
  for (const { tasks, people } of scene.schedule.visits) {
    const speed = speedOf({ people: Array.from({ length: people }, (_, i) => i) });
    for (const { date, minutes } of tasks) {
      const week = Math.floor(daysBetween(first, date) / 7);
      if (week >= 0 && week < weeks) taken[week]! += (minutes * people) / speed / 60;
    }
  }
  return taken.map((hours, week) => {
    const monday = addDays(first, 7 * week);
    const days = Array.from({ length: 7 }, (_, i) => addDays(monday, i));
    const there = days.reduce((sum, day) => sum + minutesOn(day, crews, scene), 0) / 60;
    return { monday, taken: hours, there };
  });
}

type Days = readonly { readonly first: string; readonly last: string }[];
const within = (day: string, spans: Days) => spans.some(({ first, last }) => first <= day && day <= last);

/** Of all people together; without a crew one person works the policy's workday, as the schedule counts it. */
function minutesOn(day: string, crews: readonly CrewPlace[], { fleet }: FleetScene): number {
  if (crews.length === 0) return within(day, fleet.closed) ? 0 : fleet.policy.workday.value.minutes;
  return crews.reduce((sum, { crews: all, closed }) => {
    if (within(day, closed)) return sum;
    const working = all.filter(({ days, off }) => days.includes(weekday(day)) && !within(day, off));
    return sum + working.reduce((minutes, one) => minutes + one.people * one.minutes, 0);
  }, 0);
}

export interface BayLoad {
  readonly bay: string;
  /** Days on which a rig stands in it, of those that are looked at. */
  readonly taken: number;
  readonly of: number;
}

/** How long each indoor bay is taken in the weeks ahead, the days among it on which a rig stays until rain does no harm. */
export function bayLoads(scene: FleetScene): readonly BayLoad[] {
  const until = addDays(scene.asOf, 7 * weeks);
  return bayPlaces(scene).map(({ title, visits }) => {
    const days = visits.reduce((sum, visit) => {
      const first = visit.days[0] as string;
      const last = staysUntil(visit);
      const end = last < until ? last : addDays(until, -1);
      return sum + Math.max(0, daysBetween(first, end) + 1);
    }, 0);
    return { bay: title, taken: days, of: 7 * weeks };
  });
}
