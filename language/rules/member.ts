// What a fleet asks of one of its rigs, as plain data: a fleet of thousands is judged without keeping their records.
import type { Span } from '../grammar/problem.ts';
import { openPlans } from '../resolve/done.ts';
import type { Origin, Plan, RigView, Served } from '../resolve/types.ts';
import { addPeriod } from '../values/calendar.ts';
import { type OpenSeam, openSeams } from './departures.ts';
import { type FreeDays, firstFree } from './free-days.ts';
import { lotsUsed, type UsedLot } from './materials-used.ts';
import { freeDaysOf, type PlannedDay, plannedDay, windowOf } from './planning.ts';
import type { RigContext } from './rule.ts';
import { keyOf } from './silenced.ts';

/** A rig as its fleets see it on the as-of date. Depends on what the rig depends on, and on no fleet. Dates are ISO dates. */
export interface Member extends Served {
  readonly file: string;
  readonly nameAt: Span;
  readonly unit?: Written;
  readonly vin?: Written;
  /** The length of the roof, in nanometres. */
  readonly along?: number;
  readonly stored: RigView['rig']['stored'];
  readonly open: readonly OpenSeam[];
  /** A departure up to this day is near. */
  readonly soon: string;
  /** What its records used of lots, as JSON of {@link UsedLot}s: it is the most of a member, and hardly ever asked for. */
  readonly lots: string;
  /** Plans with days of their own that the rig alone could keep. */
  readonly plans: readonly MemberPlan[];
  /** What is still planned: of each kind of work the first plan. */
  readonly work: readonly { readonly word: string; readonly file: string; readonly at: Span }[];
  /** The rules that it accepts on the as-of date. */
  readonly accepts: readonly string[];
  /** The rules that its policy accepts on the as-of date, with the keys of the lines. */
  readonly silences: readonly { readonly rule: string; readonly key: string }[];
}

interface Written {
  readonly value: string;
  readonly origin: Pick<Origin, 'file' | 'at'>;
}

export interface MemberPlan extends PlannedDay {
  readonly file: string;
  readonly at: Span;
  readonly from: string;
  readonly to: string;
  /** As the rig alone knows them. */
  readonly days: FreeDays;
}

/** The rig of a context as a member. */
export function memberOf(context: RigContext): Member {
  const { view, dates } = context;
  const { asOf } = dates;
  const { rig } = view;
  const { unit, vin } = rig.identity;
  const plans = openPlans(rig, asOf);
  return ownCopy({
    name: rig.name,
    file: rig.file,
    nameAt: rig.nameAt,
    ...(unit ? { unit: written(unit) } : {}),
    ...(vin ? { vin: written(vin) } : {}),
    ...(rig.group ? { group: { value: rig.group.value } } : {}),
    ...(rig.roof ? { along: rig.roof.along.nm } : {}),
    stored: rig.stored,
    open: openSeams(context),
    soon: addPeriod(asOf, rig.policy.dueSoon.value),
    lots: JSON.stringify(lotsUsed(view, asOf)),
    work: firstOfEach(plans),
    plans: plans.flatMap((plan): MemberPlan[] => {
      const { from, to } = windowOf(plan, asOf);
      if (to === undefined || to < from) return [];
      const days = freeDaysOf(plan, view);
      const { day } = firstFree(from, days);
      if (day === undefined || day > to) return [];
      return [{ file: plan.file, at: plan.statement.at, ...plannedDay(plan), from, to, days }];
    }),
    accepts: rig.accepts.flatMap(({ rule, until }) => (asOf <= until.last ? [rule.name] : [])),
    silences: rig.policy.accepts.flatMap(({ rule, until, file, at }) =>
      asOf <= until.last ? [{ rule: rule.name, key: keyOf(file, at) }] : [],
    ),
  });
}

function firstOfEach(plans: readonly Plan[]): Member['work'] {
  const words = new Map<string, Member['work'][number]>();
  for (const { statement, file } of plans)
    if (!words.has(statement.word)) words.set(statement.word, { word: statement.word, file, at: statement.at });
  return [...words.values()];
}

function written({ value, origin: { file, at } }: { readonly value: string; readonly origin: Origin }): Written {
  return { value, origin: { file, at } };
}

/** What a member used of some lots; perhaps of others too. */
export function lotsAmong({ lots }: Member, some: ReadonlySet<string>): readonly UsedLot[] {
  for (const lot of some) if (lots.includes(JSON.stringify(lot))) return JSON.parse(lots) as readonly UsedLot[];
  return [];
}

/** Held by itself: a piece of a text would keep the whole text in memory for as long as the member lives. */
const ownCopy = (member: Member): Member => JSON.parse(JSON.stringify(member)) as Member;
