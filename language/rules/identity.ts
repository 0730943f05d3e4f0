// Rules of identity: the VIN, dates that cannot be in that order, records out of their time, rigs that nobody writes of.
import type { Fix, Span } from '../grammar/problem.ts';
import type { Located } from '../resolve/located.ts';
import type { Rig, Stated } from '../resolve/types.ts';
import { addPeriod, daysBetween } from '../values/calendar.ts';
import type { Day } from '../values/day.ts';
import { checkVin, readVin } from '../values/vin.ts';
import { family, type RigContext, type RuleEntry } from './rule.ts';

/** Vehicles built before this have numbers of their makers' own forms: 17 places came with the model year 1981. */
const FIRST_VINS = '1981-01-01';

const rules = {
  'vin-form': {
    severity: 'warning',
    title: 'A VIN is not well formed',
    why: 'A VIN has 17 digits and capital letters, never I, O or Q. Vehicles built before the model year 1981 are not asked.',
    fix: 'Writes capitals without blanks, or digits for I, O and Q, where the check digit then agrees.',
    source: 'published: 49 CFR 565.13',
  },
  'vin-check-digit': {
    severity: 'warning',
    title: 'The check digit of a VIN does not agree',
    why: 'The ninth place is worked out from the others. It disagrees if one of them is mistyped, or if the vehicle was not built for North America.',
    fix: 'None: any place may be the mistyped one, and a check digit that is made to fit would hide the slip. Compare with the plate.',
    source: 'published: 49 CFR 565.15(c)',
  },
  'dates-out-of-order': {
    severity: 'error',
    title: 'Dates are in an order that cannot be',
    why: 'A rig is built before it is used or bought, and kept until after that.',
    fix: 'None: only the writer knows which date is wrong.',
  },
  'before-built': {
    severity: 'error',
    title: 'A record is older than the rig',
    why: 'Nothing can be done to a rig before it is built: one of the two dates is wrong.',
    fix: 'None: only the writer knows which date is wrong.',
  },
  'before-found': {
    severity: 'information',
    title: 'A record is older than the state in which the rig was found',
    why: '`found` says what was there on that day, so that older records no longer count for what it speaks of.',
    fix: 'None: if the older work is known for sure, `found` may say so.',
  },
  'in-the-future': {
    severity: 'error',
    title: 'Something that happened is dated after today',
    why: 'The past tense is for what was done. What is planned is written without it: `tape`, not `taped`.',
    fix: 'None: the date is wrong, or it is a plan.',
  },
  'kept-until-past': {
    severity: 'information',
    title: 'The rig was to be kept until a day that is past',
    why: 'Costs over the years are counted up to that day, so there are none left.',
    fix: 'None: only the keeper knows the new date.',
  },
  'no-records': {
    severity: 'information',
    title: 'Nothing is recorded of a rig',
    why: 'Its dates are years old, and without a first record nothing is known of its seams. `found` with `unknown` says just that, and due dates start from it.',
    fix: 'None: only the writer knows on which day it was looked at.',
  },
  'no-found-state': {
    severity: 'information',
    title: 'A used rig has no first state',
    why: 'What the owner before put on the roof is not known. `found` with `unknown` says so, and coats count as at their limit until it is stripped.',
    fix: 'Writes `found` on the day it was acquired, with everything unknown.',
  },
  'no-record-for-long': {
    severity: 'information',
    title: 'A rig has no record in a long time',
    why: 'A roof that nobody writes of is a roof that nobody looks at, or one that is gone: write `kept-until`.',
    fix: 'None: only its keeper knows what was done.',
    source: 'from memory: twice the longest time between inspections',
  },
} as const satisfies Record<string, RuleEntry>;
type Found = Located & { readonly rule: keyof typeof rules };

function* check(context: RigContext): Iterable<Found> {
  if (context.view.rig.kind !== 'rig') return;
  yield* vin(context);
  yield* order(context.view.rig);
  yield* inTheFuture(context);
  yield* outOfTime(context.view.rig);
  yield* silence(context);
}

export const identity = family(rules, check);

type Fact = 'unit' | 'vin' | 'built' | 'in-service' | 'acquired' | 'kept-until';

/** Where the value of a fact stands: without the words around it, if the rig is seen from its own file. */
function valueAt(fact: Fact, stated: Stated<unknown>, { declaration }: RigContext): Span | undefined {
  const line = declaration?.statements.find((s) => s.word === fact && s.at === stated.origin.at);
  return line?.spans.text ?? line?.spans.date;
}

function* vin(context: RigContext): Iterable<Found> {
  const { vin, built } = context.view.rig.identity;
  if (!vin || (built && built.value.last < FIRST_VINS)) return;
  const value = valueAt('vin', vin, context);
  const where = { rig: context.view.rig.name, file: vin.origin.file, at: value ?? vin.origin.at };
  const read = readVin(vin.value);
  if (!read.ok) {
    const fixes: Fix[] =
      read.fix === undefined || !value ? [] : [{ label: `Write \`${read.fix}\``, at: value, text: `"${read.fix}"` }];
    yield { rule: 'vin-form', ...where, message: sentence(read.message), fixes };
    return;
  }
  const agrees = checkVin(read.value);
  if (!agrees.ok)
    yield { rule: 'vin-check-digit', ...where, message: `${sentence(agrees.message)} Compare it with the plate.` };
}

const sentence = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

/** Rough dates only disagree where no day of the one can come before a day of the other. */
function* order(rig: Rig): Iterable<Found> {
  const { built, inService, acquired, keptUntil } = rig.identity;
  const pairs: readonly (readonly [string, Stated<Day> | undefined, string, Stated<Day> | undefined])[] = [
    ['built', built, 'went into service', inService],
    ['built', built, 'was acquired', acquired],
    ['built', built, 'was kept', keptUntil],
    ['acquired', acquired, 'was kept', keptUntil],
  ];
  for (const [first, a, then, b] of pairs) {
    if (!a || !b || a.value.first <= b.value.last) continue;
    yield {
      rule: 'dates-out-of-order',
      rig: rig.name,
      file: b.origin.file,
      at: b.origin.at,
      message: `${rig.name} was ${first} ${a.value.text}, so it cannot be that it ${then} ${then === 'was kept' ? 'until ' : ''}${b.value.text}: one of the two dates is wrong.`,
      related: [{ file: a.origin.file, at: a.origin.at, message: 'The other date.' }],
    };
    return;
  }
}

/** Between the as-of date and today records are only left out; after today they are wrong. */
function* inTheFuture({ view, dates }: RigContext): Iterable<Found> {
  const { rig } = view;
  const { built, inService, acquired } = rig.identity;
  const past = [
    ...[built, inService, acquired].flatMap((fact) => (fact ? [{ day: fact.value, ...fact.origin }] : [])),
    ...rig.events.map(({ first, file, record }) => ({ day: { first, text: first }, file, at: record.at })),
    ...rig.stock.flatMap((s) => (s.word === 'bought' ? [{ day: s.date, file: s.file, at: s.at }] : [])),
  ];
  for (const { day, file, at } of past)
    if (day.first > dates.today)
      yield {
        rule: 'in-the-future',
        rig: rig.name,
        file,
        at,
        message: `${day.text} is after today, ${dates.today}: the date is wrong, or this is a plan and its verb stands without the past tense.`,
      };
}

function* outOfTime(rig: Rig): Iterable<Found> {
  const { built } = rig.identity;
  const found = rig.events.find(({ record }) => record.word === 'found');
  for (const event of rig.events) {
    const where = { rig: rig.name, file: event.file, at: event.record.at };
    if (built && event.last < built.value.first) {
      yield {
        rule: 'before-built',
        ...where,
        message: `${rig.name} was built ${built.value.text}; this is dated ${event.last}, before that: one of the two dates is wrong.`,
        related: [{ file: built.origin.file, at: built.origin.at, message: 'Built.' }],
      };
    } else if (found && event !== found && event.last < found.first && touches(event, found)) {
      yield {
        rule: 'before-found',
        ...where,
        message: `${rig.name} was found on ${found.first}; this is from ${event.last} and no longer counts for what was found then.`,
        related: [{ file: found.file, at: found.record.at, message: 'Found.' }],
      };
    }
  }
}

function touches(a: Rig['events'][number], b: Rig['events'][number]): boolean {
  const items = new Set([...b.places, ...b.findings.flatMap(({ places }) => places)].map(({ item }) => item));
  return (
    a.places.some(({ item }) => items.has(item)) || a.findings.some((f) => f.places.some((p) => items.has(p.item)))
  );
}

/** Concludes from what is not there, so it is silent while something could not be read. */
function* silence(context: RigContext): Iterable<Found> {
  const { rig } = context.view;
  const { asOf } = context.dates;
  const { built, inService, acquired, keptUntil } = rig.identity;
  if (keptUntil && keptUntil.value.last < asOf) {
    yield {
      rule: 'kept-until-past',
      rig: rig.name,
      file: keptUntil.origin.file,
      at: keptUntil.origin.at,
      message: `${rig.name} was to be kept until ${keptUntil.value.text}. If it is still here, write the new date; if it is gone, its file may go too.`,
    };
    return;
  }
  if (rig.unread.all || rig.unread.items.size > 0) return;
  const limit = rig.policy.inspectLimit.value;
  const events = rig.events.filter(({ first }) => first <= asOf);
  const longAgo = addPeriod(asOf, limit, -2);
  const where = { rig: rig.name, file: rig.file, at: rig.nameAt };
  const last = events.map((event) => event.last).reduce<string | undefined>((a, b) => (a && a > b ? a : b), undefined);
  const began = inService ?? built;
  if (acquired && began && !firstState(events, acquired.value.last) && isUsed(began.value, acquired.value, inService)) {
    const { file, at } = acquired.origin;
    const day = acquired.value.text;
    const here: Span = [at[0], at[0]];
    yield {
      rule: 'no-found-state',
      rig: rig.name,
      file,
      at,
      message: `${rig.name} was used when it was acquired ${day}, and how its seams were then is not written. Write \`found ${day} all with unknown\`, or what is known.`,
      fixes: [{ label: `Write \`found\` on that day`, at: here, text: `found     ${day} all with unknown\n  ` }],
    };
    return;
  }
  if (last === undefined) {
    const newest = [acquired, inService, built].map((fact) => fact?.value.last ?? '').sort()[2] ?? '';
    if (newest !== '' && newest <= longAgo)
      yield {
        rule: 'no-records',
        ...where,
        message: `Nothing is recorded of ${rig.name}, which is known since ${newest}. Begin with the day on which it was first looked at, such as \`found ${asOf} all with unknown\`, or with an inspection.`,
      };
  } else if (last < longAgo)
    yield {
      rule: 'no-record-for-long',
      ...where,
      message: `The last record of ${rig.name} is from ${last}, ${Math.floor(daysBetween(last, asOf) / 30.44)} months ago. Look at the roof and write what was found, or \`kept-until\` if it is gone.`,
    };
}

/** A record of the first day or before says something of the state on it. */
function firstState(events: Rig['events'], day: string): boolean {
  return events.some((event) => event.record.word === 'found' || event.first <= day);
}

/** In service before it was acquired; or, where only the year of building is known, acquired two years after that. */
function isUsed(began: Day, acquired: Day, inService: Stated<Day> | undefined): boolean {
  return inService ? began.last < acquired.first : addPeriod(began.last, { months: 24, days: 0 }) < acquired.first;
}
