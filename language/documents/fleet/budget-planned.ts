// What the plans of a rig cost, in the months in which it is spent.
import type { Estimate, Priced } from '../../estimate/index.ts';
import { folderOf, relativeTo } from '../../resolve/paths.ts';
import type { Fleet } from '../../resolve/types.ts';
import { planKeys, type Visit } from '../../schedule/index.ts';
import { addPeriod } from '../../values/calendar.ts';
import { minorUnits } from '../../values/money.ts';
import type { Amount, CostClass } from './budget.ts';
import type { FleetRig } from './scene.ts';
import { shared } from './shares.ts';

/**
 * The amounts of an estimate by month: material when its order must go out, labour when the work is done, tax with what it is
 * put on. They add up to the total of the estimate. Without a currency or a price there are none.
 */
export function plannedOf(rig: FleetRig, fleet: Fleet, asOf: string): readonly Amount[] {
  const { estimate, view } = rig;
  const { currency, total, tax } = estimate.totals;
  if (currency === undefined || !total) return [];
  const visitsOf = placing(rig, fleet);
  const cost = (priced: Priced | undefined) => (priced?.money.currency === currency ? minorUnits(priced.money) : 0);
  const amounts = [
    ...estimate.purchases.flatMap((purchase): Amount[] => {
      const minor = cost(purchase.cost);
      if (minor === 0) return [];
      const { material } = purchase;
      const [first] = visitsOf(visitsUsing(material, estimate), new Set(jobsUsing(material, estimate)));
      const what = `${material}: ${purchase.buy.map(({ count, what: one }) => `${count} x ${one}`).join(', ')}`;
      const lead = view.rig.policy.leads[material];
      return [{ currency, certainty: 'planned', class: 'material', minor, what, ...ordered(first, lead?.value, asOf) }];
    }),
    ...estimate.labour.flatMap((line): Amount[] => {
      const minor = cost(line.cost);
      if (minor === 0) return [];
      const visits = visitsOf(new Set([line.visit]));
      return split(minor, line.task, visits).map(([visit, part]) => ({
        currency,
        certainty: 'planned',
        class: 'labour',
        minor: part,
        what: line.task,
        ...done(visit),
      }));
    }),
  ];
  const onAll = view.rig.policy.tax?.value.on === 'all';
  return [...amounts, ...taxOn(amounts, cost(tax), onAll ? ['material', 'labour'] : ['material'])];
}

type Jobs = ReadonlySet<Estimate['jobs'][number]>;

/** The schedule's visits, in order of time, that do the plans of visits of the estimate, or only some of these plans. */
function placing({ view, estimate, visits }: FleetRig, { file }: Fleet) {
  const folder = folderOf(file);
  const place = (of: string, at: readonly [number, number]) => `${of} ${at.join(' ')}`;
  const keys = new Map(
    [...planKeys(view.rig)].map(([plan, key]) => [place(relativeTo(folder, plan.file), plan.statement.at), key]),
  );
  return (numbers: ReadonlySet<number>, only?: Jobs): readonly Visit[] => {
    const jobs = estimate.jobs.filter((job) => numbers.has(job.visit) && (!only || only.size === 0 || only.has(job)));
    const wanted = new Set(jobs.map((job) => keys.get(place(job.file, job.at))));
    return visits.filter(({ plans = [] }) => plans.some((plan) => wanted.has(plan)));
  };
}

function jobsUsing(material: string, { jobs }: Estimate): readonly Estimate['jobs'][number][] {
  return jobs.filter(
    ({ pieces, beads, liquids }) =>
      pieces.some(({ tape }) => tape === material) ||
      beads.some(({ sealant }) => sealant === material) ||
      liquids.some((liquid) => liquid.material === material),
  );
}

/** The visits of the estimate in which a material is used, the washing that begins them among it. */
function visitsUsing(material: string, estimate: Estimate): ReadonlySet<number> {
  const washed = estimate.visits.filter(({ liquids }) => liquids.some((liquid) => liquid.material === material));
  return new Set([...jobsUsing(material, estimate).map(({ visit }) => visit), ...washed.map(({ number }) => number)]);
}

type Lead = Parameters<typeof addPeriod>[1] & { readonly text: string };

function ordered(visit: Visit | undefined, lead: Lead | undefined, asOf: string): Pick<Amount, 'month' | 'why' | 'of'> {
  if (!visit) return { why: 'its work has no day yet' };
  const first = visit.days[0] as string;
  if (!lead) return { month: first.slice(0, 7), why: `for the visit of ${first}`, of: visit.id };
  const order = addPeriod(first, lead, -1);
  const day = order < asOf ? asOf : order;
  return { month: day.slice(0, 7), why: `ordered by ${day}, ${lead.text} before the visit of ${first}`, of: visit.id };
}

const done = (visit: Visit | undefined): Pick<Amount, 'month' | 'why' | 'of'> =>
  visit
    ? { month: (visit.days[0] as string).slice(0, 7), why: `the visit of ${visit.days[0]}`, of: visit.id }
    : { why: 'it has no day yet' };

/** Work of one kind in several visits, by the time that it takes in each; in the first one where no task has its name. */
function split(
  minor: number,
  task: string,
  visits: readonly Visit[],
): readonly (readonly [Visit | undefined, number])[] {
  if (visits.length <= 1) return [[visits[0], minor]];
  const minutes = visits.map(({ tasks }) => tasks.reduce((sum, one) => sum + (one.task === task ? one.minutes : 0), 0));
  if (minutes.every((one) => one === 0)) return [[visits[0], minor]];
  const parts = shared(minor, minutes);
  return visits.flatMap((visit, i) => (parts[i] === 0 ? [] : [[visit, parts[i]!] as const]));
}

/** Tax is rounded once for the whole estimate; each visit and order carries its share of it. */
function taxOn(amounts: readonly Amount[], tax: number, on: readonly CostClass[]): readonly Amount[] {
  if (tax === 0) return [];
  const taxed = amounts.filter((amount) => on.includes(amount.class));
  const groups = new Map<string, Amount & { minor: number }>();
  for (const amount of taxed) {
    const key = `${amount.month} ${amount.of}`;
    const known = groups.get(key);
    if (known) groups.set(key, { ...known, minor: known.minor + amount.minor });
    else groups.set(key, amount);
  }
  const all = [...groups.values()];
  const parts = shared(
    tax,
    all.map(({ minor }) => minor),
  );
  return all.map((group, i) => ({
    ...group,
    class: 'tax',
    what: 'tax',
    why: 'with what it is put on',
    minor: parts[i]!,
  }));
}
