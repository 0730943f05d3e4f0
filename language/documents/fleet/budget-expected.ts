// What is to be expected beyond the plans: what falls due and nobody planned, looks that recur, touching up in later years.
import { materialFor } from '../../lifecost/materials.ts';
import { type PricedWork, priceOf, type Task } from '../../lifecost/pricing.ts';
import type { Comparison } from '../../lifecost/schema.ts';
import { conditions } from '../../statements/words.ts';
import { addPeriod } from '../../values/calendar.ts';
import { type Amount, toMinor } from './budget.ts';
import { asksForWork, endOf, type FleetDue, type FleetRig, type FleetScene } from './scene.ts';

/** Looks that one visit does together. */
const looks: ReadonlySet<string> = new Set([
  'inspect',
  'event-look',
  'storage-look',
  'look-hard',
  'not-seen',
  're-read',
  'leak-look',
]);

/** At today's prices, up to the end of a month. What a plan settles is left out: it is planned. */
export function expectedOf(rig: FleetRig, { asOf }: FleetScene, until: string): readonly Amount[] {
  const price = pricing(rig, asOf);
  const open = rig.dues.filter(({ due }) => asksForWork(due) && due.settledBy === undefined && due.kind !== 'plan');
  const dayOf = ({ due }: FleetDue) => (due.date < asOf ? asOf : due.date);
  const lookDays = new Map(open.filter(({ due }) => looks.has(due.kind)).map((one) => [dayOf(one), one]));
  const { compared } = rig;
  return [
    ...[...lookDays].flatMap(([day, { due }]) => price(day, [{ word: 'inspect' }], due.title, due.because, due.id)),
    ...repeated(rig, asOf, until).flatMap(({ day, every }) =>
      price(day, [{ word: 'inspect' }], 'inspect the roof', `every ${every} after the look before`),
    ),
    ...open.flatMap((one) => {
      const work = workFor(one, rig, asOf);
      return work ? price(dayOf(one), work, one.due.title, one.due.because, one.due.id) : [];
    }),
    ...('reason' in compared ? [] : touchedUp(compared, rig, asOf)),
  ].filter(({ month }) => month === undefined || month <= until);
}

/** The days of looks that follow the first one that is due or planned, as often as the policy asks. */
function repeated(
  { view, dues, visits }: FleetRig,
  asOf: string,
  until: string,
): readonly { readonly day: string; readonly every: string }[] {
  const every = view.rig.policy.inspect.value;
  const inspect = dues.find(({ due }) => due.kind === 'inspect')?.due;
  if (!inspect || (every.months === 0 && every.days === 0)) return [];
  const settling = visits.find(({ id }) => id === inspect.settledBy);
  const first = settling ? endOf(settling) : inspect.date < asOf ? asOf : inspect.date;
  const days: { day: string; every: string }[] = [];
  for (let times = 1; ; times++) {
    const day = addPeriod(first, every, times);
    if (day.slice(0, 7) > until) return days;
    days.push({ day, every: every.text });
  }
}

/** The work that a due asks for, as an estimate counts it; undefined where it is a look, or nothing can be counted. */
function workFor({ due, from, severity }: FleetDue, { view }: FleetRig, asOf: string): readonly Task[] | undefined {
  const items = [...(from.items ?? (from.item === undefined ? [] : [from.item]))];
  if (looks.has(due.kind) || items.length === 0) return undefined;
  const sealant = materialFor(view, 'sealant', asOf)?.material.name;
  const tape = materialFor(view, 'tape', asOf)?.material.name;
  const strip: Task = { word: 'strip', items };
  if (due.kind === 'tape-end')
    return tape === undefined ? [strip] : [strip, { word: 'tape', items, materials: [tape] }];
  if (sealant === undefined) return due.kind === 'strip' ? [strip] : undefined;
  const seal: Task = { word: 'seal', items, materials: [sealant] };
  const bad = due.kind === 'strip' || severity >= conditions.indexOf('cracked');
  return bad ? [strip, seal] : [seal];
}

/** Prices of work on one rig; the same work is worked out once. Tax is taken out of what it is put on, and stands by itself. */
function pricing({ view }: FleetRig, asOf: string) {
  const known = new Map<string, PricedWork | undefined>();
  const { tax } = view.rig.policy;
  const share = (tax?.value.percent.percent ?? 0) / 100;
  return (day: string, work: readonly Task[], what: string, why: string, of?: string): readonly Amount[] => {
    const key = JSON.stringify(work);
    if (!known.has(key)) known.set(key, priceOf(view, asOf, work));
    const priced = known.get(key);
    if (!priced) return [];
    const onLabour = tax?.value.on === 'all' ? share : 0;
    return amountsOf(priced, { material: share, labour: onLabour }, priced.currency, {
      month: day.slice(0, 7),
      what,
      why,
      ...(of === undefined ? {} : { of }),
    });
  };
}

function amountsOf(
  { material, labour }: { readonly material: number; readonly labour: number },
  tax: { readonly material: number; readonly labour: number },
  currency: string,
  said: Pick<Amount, 'month' | 'what' | 'why' | 'of'>,
): readonly Amount[] {
  const net = {
    material: toMinor(material / (1 + tax.material), currency),
    labour: toMinor(labour / (1 + tax.labour), currency),
  };
  const all = toMinor(material, currency) + toMinor(labour, currency);
  const parts = [
    ['material', net.material],
    ['labour', net.labour],
    ['tax', all - net.material - net.labour],
  ] as const;
  return parts.flatMap(([kind, minor]) =>
    minor === 0 ? [] : [{ currency, certainty: 'expected', class: kind, minor, ...said }],
  );
}

/**
 * What the comparison of the ways expects of touching up in a year: of all seams, or of those that stay with sealant where taping
 * is planned. It is put into the month in which the season begins, from the next year on.
 */
function touchedUp({ ways, currency }: Comparison, { view, name }: FleetRig, asOf: string): readonly Amount[] {
  const { plans, policy } = view.rig;
  const taping = plans.some(({ statement }) => statement.word === 'tape');
  const way =
    (taping ? ways.find(({ key }) => key === 'tape') : undefined) ?? ways.find(({ key }) => key === 'touch-up');
  const courses = way?.courses.filter(({ title }) => title === 'touching up' || title === 'visits') ?? [];
  const last = Math.max(0, ...ways.map(({ spent }) => spent.length - 1)) - 1;
  if (last < 1 || courses.length === 0) return [];
  const yearly = { material: 0, labour: 0 };
  for (const { works } of courses)
    for (const { cost, number } of works)
      for (const input of cost.inputs)
        if (input.name === 'material' || input.name === 'labour')
          yearly[input.name] += (Number(input.value) * number.value) / last;
  const share = (policy.tax?.value.percent.percent ?? 0) / 100;
  const tax = { material: share, labour: policy.tax?.value.on === 'all' ? share : 0 };
  const [begins] = policy.season.value.from.split('-');
  return Array.from({ length: last }, (_, i) => `${Number(asOf.slice(0, 4)) + i + 1}-${begins}`).flatMap((month) =>
    amountsOf(yearly, tax, currency, {
      month,
      what: 'touching up, on average',
      why: `a year's share by the comparison of the ways in ${name}.estimate`,
    }),
  );
}
