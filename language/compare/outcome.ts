// What follows from the records of one rig or one fleet: dues, purchase, total, visits.
import type { LinearPrograms } from '../cutting/index.ts';
import { type Estimate, estimateWithNeeds, pooledPurchases } from '../estimate/index.ts';
import type { ResolvedFleet } from '../resolve/project-form.ts';
import type { Dates, RigView } from '../resolve/types.ts';
import { type Schedule, scheduleOfFleet, scheduleOfRig, type Visit } from '../schedule/index.ts';
import type { Money } from '../values/money.ts';
import type { NamesNow } from './names.ts';
import type { BuyChange, DueChange, RigChange, VisitChange } from './schema.ts';

interface Bought {
  readonly text: string;
  readonly cost?: Money;
}

export interface Outcome {
  /** By kind and item, under the names of now. */
  readonly dues: ReadonlyMap<string, Schedule['dues'][number]>;
  /** By material. */
  readonly buy: ReadonlyMap<string, Bought>;
  readonly visits: readonly Visit[];
  readonly total?: NonNullable<RigChange['totalAfter']>;
}

export const nothing: Outcome = { dues: new Map(), buy: new Map(), visits: [] };

/** Of a rig. Where a fleet has it, that fleet's schedule counts: then it has no visits of its own. */
export function outcomeOfRig(view: RigView, dates: Dates, names: NamesNow, inFleet: boolean): Outcome {
  const { estimate } = estimateWithNeeds(view, dates);
  const schedule = scheduleOfRig(view, dates);
  const { total, complete } = estimate.totals;
  return {
    dues: new Map(schedule.dues.map((due) => [dueKey(due, names), due])),
    buy: boughtOf(estimate.purchases),
    visits: inFleet ? [] : schedule.visits,
    ...(total && { total: { money: total.money, complete } }),
  };
}

/** Of a fleet: what is bought together, and the visits of all its rigs. */
export function outcomeOfFleet({ fleet, views }: ResolvedFleet, dates: Dates, lp?: LinearPrograms): Outcome {
  const rigs = views.map((view) => ({ view, ...estimateWithNeeds(view, dates) }));
  const currency =
    fleet.policy.currency?.value ?? rigs.find(({ estimate }) => estimate.totals.currency)?.estimate.totals.currency;
  const together = pooledPurchases(fleet, rigs, dates.asOf, currency, lp);
  return {
    ...nothing,
    buy: boughtOf(together.map(({ purchase }) => purchase)),
    visits: scheduleOfFleet(fleet, views, dates).visits,
  };
}

function dueKey({ id, rig, kind, item }: Schedule['dues'][number], names: NamesNow): string {
  const rest = id.slice(rig.length + 1);
  return item === undefined ? rest : `${kind}/${names.item(item)}${rest.slice(`${kind}/${item}`.length)}`;
}

function boughtOf(purchases: Estimate['purchases']): ReadonlyMap<string, Bought> {
  return new Map(
    purchases.flatMap(({ material, buy, cost }) =>
      buy.length === 0
        ? []
        : [
            [
              material,
              {
                text: buy.map(({ count, what }) => `${count} × ${what}`).join(', '),
                ...(cost && { cost: cost.money }),
              },
            ] as const,
          ],
    ),
  );
}

const keysOf = <T>(before: ReadonlyMap<string, T>, after: ReadonlyMap<string, T>) => [
  ...new Set([...before.keys(), ...after.keys()]),
];

/** Dues that came, went or moved, by their date. */
export function duesChanged(before: Outcome, after: Outcome): readonly DueChange[] {
  return keysOf(before.dues, after.dues)
    .flatMap((key): readonly DueChange[] => {
      const [old, now] = [before.dues.get(key), after.dues.get(key)];
      const told = now ?? old;
      if (!told || old?.date === now?.date) return [];
      return [
        { title: told.title, ...(old && { before: old.date }), ...(now && { after: now.date }), because: told.because },
      ];
    })
    .sort((a, b) => ((a.after ?? a.before ?? '') < (b.after ?? b.before ?? '') ? -1 : 1));
}

/** Materials of which something else, or at another price, is to be bought. */
export function buyChanged(before: Outcome, after: Outcome): readonly BuyChange[] {
  return keysOf(before.buy, after.buy).flatMap((material) => {
    const [old, now] = [before.buy.get(material), after.buy.get(material)];
    const same = old?.text === now?.text && sameMoney(old?.cost, now?.cost);
    if (same) return [];
    return [
      {
        material,
        ...(old && { before: old.text }),
        ...(now && { after: now.text }),
        ...(old?.cost && { costBefore: old.cost }),
        ...(now?.cost && { costAfter: now.cost }),
      },
    ];
  });
}

/** Visits that came, went or have other days. `namesOf` gives the names of now of a rig by its name before. */
export function visitsChanged(
  before: Outcome,
  after: Outcome,
  namesOf: (rig: string) => NamesNow,
): readonly VisitChange[] {
  const keys = ({ rig, plans = [], title }: Visit) => {
    const names = namesOf(rig);
    const said = plans.length > 0 ? plans : [title];
    return said.map((plan) => `${names.rig}\n${plan.replace(/[^ +/]+/g, names.item)}`);
  };
  const left = new Map(before.visits.map((visit) => [visit, keys(visit)]));
  const changes = after.visits.map((visit): VisitChange | undefined => {
    const mine = keys(visit);
    const old = [...left].find(([, theirs]) => theirs.some((key) => mine.includes(key)))?.[0];
    if (old) left.delete(old);
    if (old && daysOf(old).join() === daysOf(visit).join()) return undefined;
    return { rig: visit.rig, title: visit.title, ...(old && { before: daysOf(old) }), after: daysOf(visit) };
  });
  return [
    ...[...left.keys()].map(
      (visit): VisitChange => ({ rig: namesOf(visit.rig).rig, title: visit.title, before: daysOf(visit) }),
    ),
    ...changes.flatMap((change) => change ?? []),
  ];
}

const daysOf = ({ days }: Visit) => [days[0] as string, days.at(-1) as string] as const;

/** Whether two amounts are the same, or both are unknown. */
export const sameMoney = (a: Money | undefined, b: Money | undefined): boolean =>
  a?.amount === b?.amount && a?.currency === b?.currency;
