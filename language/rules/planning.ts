// Rules of plans: dates that cannot be, days that are taken, plans that were not kept.
import type { Fix, Span } from '../grammar/problem.ts';
import { allLines, type Declaration } from '../records/file.ts';
import type { Whole } from '../records/statement.ts';
import { doneBy, itemsOf, type OpenPlan, openPart, pastOf } from '../resolve/done.ts';
import type { Located } from '../resolve/located.ts';
import type { Plan, RigView } from '../resolve/types.ts';
import { tooLongPlans } from '../schedule/too-long-plans.ts';
import type { Range } from '../statements/slots/lists.ts';
import { addPeriod, daysBetween } from '../values/calendar.ts';
import type { Day } from '../values/day.ts';
import { duesFor } from './falls-due.ts';
import { type FreeDays, firstFree, type Hindrance } from './free-days.ts';
import { listed } from './listed.ts';
import { family, type RigContext, type RuleEntry } from './rule.ts';
import { putOff } from './waiting.ts';
import { workedOut } from './worked-out.ts';

const rules = {
  'days-reversed': {
    severity: 'error',
    title: 'A span of days ends before it begins',
    why: 'The first day comes first, and both ends are included.',
    fix: 'Writes the two dates the other way round.',
  },
  'after-beyond-before': {
    severity: 'error',
    title: 'A plan begins after it has to be done',
    why: '`after` is the first day on which it may be done, `before` the last one.',
    fix: 'None: either date may be the wrong one, and the wrong guess moves the work by months.',
  },
  'plan-in-the-past': {
    severity: 'warning',
    title: 'A plan was not kept',
    why: 'Its day is past. Record what was done, in the past tense and with its date, or give the plan another day.',
    fix: 'Puts the plan off to the first free day. If it was done, `Record as done today` writes the record instead.',
  },
  'plan-done': {
    severity: 'hint',
    title: 'A plan is done',
    why: 'A record says so. The line can go.',
    fix: 'Removes the line.',
  },
  'day-not-free': {
    severity: 'warning',
    title: 'A plan stands on a day that is taken',
    why: 'On that day the rig is away, laid up or out of season for work on its seams.',
    fix: 'Writes the first day after it that is free.',
  },
  'no-free-day': {
    severity: 'warning',
    title: 'No free day is left for a plan',
    why: 'Every day from when it may be done until when it has to be done is taken. Do it earlier, or give it more time.',
    fix: 'Puts the last day off to the first free one, which is for a person to agree to.',
  },
  'too-long-for-its-days': {
    severity: 'information',
    title: 'A plan takes longer than the days that it has',
    why: 'Work on an open seam goes on from day to day. By the rates and the workday of the policy, one person alone, it takes more days than follow each other free between the first and the last one. A crew of more people may do it: the schedule of its fleet says.',
    fix: 'None: how it is split, into lines with days of their own, is a decision; the message says lines that fit.',
    source: 'the rates of the policy',
  },
} as const satisfies Record<string, RuleEntry>;
export type PlanningFound = Located & { readonly rule: keyof typeof rules };

function* check(context: RigContext): Iterable<PlanningFound> {
  const { view, dates } = context;
  for (const plan of view.rig.plans) yield* ofPlan(plan, view, dates.asOf);
  const worked = () => ({ state: workedOut(context).state, dues: duesFor(context) });
  for (const { job, because, wayOut } of tooLongPlans(view, dates, worked)) {
    const { file, statement } = job.plan;
    const message = `For one person ${because}: ${wayOut}.`;
    yield { rule: 'too-long-for-its-days', rig: view.rig.name, file, at: statement.at, message };
  }
}

export const planning = family(rules, check);

/** Work on seams needs dry, mild weather; looking, washing a cover and drying do not wait for it. */
const seasonal = new Set<string>(['strip', 'seal', 'tape', 'replace', 'rebed', 'coat', 'patch']);
/** Done in any place, laid up or not: water does not wait. */
const urgent = new Set<string>(['cover', 'dry']);

/** The days on which a plan may be done, as far as the rig alone decides; a fleet adds what it knows. */
export function freeDaysOf({ statement }: Plan, { rig, booked }: RigView): FreeDays {
  const { word } = statement;
  return {
    taken: [
      ...(urgent.has(word) ? [] : rig.stored.map((span) => ({ ...span, by: 'stored' }))),
      ...rig.trips.map((span) => ({ ...span, by: 'on a trip' })),
      ...(booked ?? []).map((span) => ({ ...span, by: 'booked' })),
    ],
    ...(seasonal.has(word) ? { season: rig.policy.season.value } : {}),
  };
}

/** From when to when a plan may be done; `to` is missing where nothing ends it. */
export function windowOf({ statement }: Plan, asOf: string): { readonly from: string; readonly to?: string } {
  const { on, after, before } = statement;
  const earliest = on?.first ?? after?.first ?? asOf;
  const to = on?.last ?? before?.last;
  return { from: earliest < asOf ? asOf : earliest, ...(to === undefined ? {} : { to }) };
}

function* ofPlan(plan: Plan, view: RigView, asOf: string): Iterable<PlanningFound> {
  const { statement, file } = plan;
  const { on, after, before } = statement;
  const where = { rig: view.rig.name, file, at: statement.at };
  const crossed = crossing(plan);
  if (crossed) {
    yield {
      rule: 'after-beyond-before',
      ...where,
      message: `${crossed[0]} comes after ${crossed[1]}: no day is left on which this could be done.`,
    };
    return;
  }
  const { from, to } = windowOf(plan, asOf);
  if (to !== undefined && to < asOf) {
    // Past its day, a plan without a first one is taken for done by a record of the interval, or of the year, before it.
    const { inspect } = view.rig.policy;
    const span = statement.word === 'inspect' ? inspect.value : { months: 12, days: 0 };
    const since = addPeriod(to, span, -1);
    const done = doneBy(plan, view.rig, asOf, since);
    yield done
      ? {
          rule: 'plan-done',
          ...where,
          message: `This was done on ${done.last}: the line can go.`,
          fixes: [{ label: 'Remove this line', at: statement.at, text: '' }],
          related: [{ file: done.file, at: done.record.at, message: 'The record.' }],
        }
      : {
          rule: 'plan-in-the-past',
          ...where,
          message: `${leftOf(openPart(plan, view.rig, asOf, since))} to be done ${on ? 'on' : 'by'} ${(on ?? before)?.text}, ${count(daysBetween(to, asOf))} ago: record it as \`${pastOf[statement.word]} DATE …\`, or give it another day.`,
          fixes: laterThanPast(plan, view, asOf),
        };
    return;
  }
  if (to === undefined || (!on && !after && !before) || doneBy(plan, view.rig, asOf)) return;
  const found = notFree(plannedDay(plan), freeDaysOf(plan, view), from, to);
  if (found) yield { ...where, ...found };
}

function laterThanPast(plan: Plan, view: RigView, asOf: string): readonly Fix[] {
  const { day } = firstFree(asOf, freeDaysOf(plan, view));
  return day === undefined ? [] : putOff(plan.statement, day);
}

/** How a sentence about what was to be done begins: the plan, or the items that are left of it. */
function leftOf(plan: OpenPlan | undefined): string {
  const items = plan?.partly ? itemsOf(plan) : [];
  if (items.length === 0) return 'This was';
  return `Of this, ${listed(items)} ${items.length === 1 ? 'was' : 'were'}`;
}

/** The one day of a plan as written, with the place of the clause; of a span of days the place of its last one. */
export interface PlannedDay {
  readonly on?: string;
  readonly onAt?: Span;
  readonly beforeAt?: Span;
}

export function plannedDay({ statement: { on, spans } }: Plan): PlannedDay {
  if (on) return { on: on.text, ...(spans.on ? { onAt: spans.on } : {}) };
  return spans.before ? { beforeAt: spans.before } : {};
}

/** What is to be said of a plan whose days are all taken; undefined if one is free. Shared with fleets. */
export function notFree(
  { on, onAt, beforeAt }: PlannedDay,
  days: FreeDays,
  from: string,
  to: string,
): Pick<PlanningFound, 'rule' | 'message' | 'fixes' | 'related'> | undefined {
  const { day, hindrances } = firstFree(from, days);
  if (day !== undefined && day <= to) return undefined;
  const related = hindrances.flatMap(({ why, origin }) =>
    origin ? [{ file: origin.file, at: origin.at, message: sentence(why) }] : [],
  );
  const could =
    day === undefined ? 'No day within three years is free.' : `The first day on which it could be done is ${day}.`;
  const because = reasons(hindrances);
  if (on !== undefined) {
    const at = onAt;
    const fixes: Fix[] = day === undefined || !at ? [] : [{ label: `Write \`on ${day}\``, at, text: `on ${day}` }];
    return { rule: 'day-not-free', message: `${on} is not free: ${because}. ${could}`, fixes, related };
  }
  const text = `before ${day}`;
  const fixes: Fix[] =
    day === undefined || !beforeAt ? [] : [{ label: `Put off: \`${text}\``, at: beforeAt, text, unsure: true }];
  return { rule: 'no-free-day', message: `No day from ${from} to ${to} is free: ${because}. ${could}`, fixes, related };
}

function crossing({ statement }: Plan): readonly [string, string] | undefined {
  const { on, after, before } = statement;
  const said = (word: string, day: Day) => `\`${word} ${day.text}\``;
  if (after && before && after.first > before.last) return [said('after', after), said('before', before)];
  if (after && on && after.first > on.last) return [said('after', after), said('on', on)];
  if (on && before && on.first > before.last) return [said('on', on), said('before', before)];
  return undefined;
}

function reasons(hindrances: readonly Hindrance[]): string {
  const shown = hindrances.slice(0, 4).map(({ why }) => why);
  return hindrances.length > 4 ? `${shown.join(', ')} and more` : shown.join(', ');
}

const count = (days: number) => (days === 1 ? '1 day' : `${days} days`);
const sentence = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

/** Spans of days that end before they begin, in any declaration of a file. */
export function* reversedDays(file: string, declarations: readonly Declaration[]): Iterable<PlanningFound> {
  for (const declaration of declarations) {
    for (const statement of allLines(declaration) as Iterable<Whole & { readonly days?: Range<Day> }>) {
      const { days, spans } = statement;
      const at = spans.days;
      if (!days || !at || days.low.first <= days.high.last) continue;
      const better = `${days.high.text} to ${days.low.text}`;
      yield {
        file,
        rule: 'days-reversed',
        at,
        message: `These days end before they begin: write \`${better}\`.`,
        fixes: [{ label: `Write \`${better}\``, at, text: better }],
      };
    }
  }
}
