// The budget of a fleet: every amount that is planned or expected, with its month, its class and where it comes from.
import { minorDigits } from '../../values/currency.ts';
import { fromMinor } from '../../values/money.ts';
import { expectedOf } from './budget-expected.ts';
import { plannedOf } from './budget-planned.ts';
import type { FleetRig, FleetScene } from './scene.ts';

export const costClasses = ['material', 'labour', 'tax'] as const;
export type CostClass = (typeof costClasses)[number];

/**
 * `planned`: of the estimate of a plan. `expected`: nobody planned it yet; what falls due is counted on its day, what recurs in
 * the years after it.
 */
export type Certainty = 'planned' | 'expected';

/** One amount of one rig in one month. */
export interface Amount {
  readonly currency: string;
  /** `2027-04`; missing of a plan that has no day yet. */
  readonly month?: string;
  readonly certainty: Certainty;
  readonly class: CostClass;
  /** In minor units of the currency: cents. */
  readonly minor: number;
  readonly what: string;
  /** Why in this month. */
  readonly why: string;
  /** The visit or the due that it is for, by its id in the schedule. */
  readonly of?: string;
}

export interface BudgetEntry extends Amount {
  readonly rig: string;
  readonly yard?: string;
  readonly group?: string;
}

export interface Budget {
  /** In order of rigs; of a rig what is planned first, then in order of months. */
  readonly entries: readonly BudgetEntry[];
  readonly currencies: readonly string[];
  /** The last month up to which what is expected is counted: the end of the second calendar year after the as-of date. */
  readonly until: string;
  /** What is not in it, a sentence each. */
  readonly missing: readonly string[];
}

/** The budget of a fleet. What is planned adds up, rig by rig, to the totals of the estimates, to the last minor unit. */
export function budgetOf(scene: FleetScene): Budget {
  const until = `${Number(scene.asOf.slice(0, 4)) + 2}-12`;
  const entries = scene.rigs.flatMap((rig) =>
    [...plannedOf(rig, scene.fleet, scene.asOf), ...inOrder(expectedOf(rig, scene, until))].map((amount) =>
      ofRig(amount, rig),
    ),
  );
  return {
    entries,
    currencies: [...new Set(entries.map(({ currency }) => currency))].sort(),
    until,
    missing: missingOf(scene),
  };
}

const inOrder = (amounts: readonly Amount[]): readonly Amount[] =>
  [...amounts].sort((a, b) => ((a.month ?? '') < (b.month ?? '') ? -1 : (a.month ?? '') > (b.month ?? '') ? 1 : 0));

function ofRig(amount: Amount, { name, yard, group }: FleetRig): BudgetEntry {
  return {
    rig: name,
    ...(yard === undefined ? {} : { yard }),
    ...(group === undefined ? {} : { group }),
    ...amount,
  };
}

function missingOf({ papers: { estimate } }: FleetScene): readonly string[] {
  const { sums, unsummed } = estimate;
  const parts = sums.flatMap(({ currency, incomplete }) =>
    incomplete.length === 0
      ? []
      : [
          `Not all of ${incomplete.join(', ')} has a price: what is planned in ${currency} is more than is counted here. The estimates of these rigs say what is missing.`,
        ],
  );
  return [...unsummed, ...parts];
}

/** Sums of one set of entries in minor units, by class and certainty. */
export interface MoneySum {
  readonly planned: Readonly<Record<CostClass, number>>;
  readonly expected: Readonly<Record<CostClass, number>>;
}

export function sumOf(entries: readonly Amount[]): MoneySum {
  const none = () => ({ material: 0, labour: 0, tax: 0 });
  const out = { planned: none(), expected: none() };
  for (const { certainty, class: kind, minor } of entries) out[certainty][kind] += minor;
  return out;
}

export const totalOf = (of: MoneySum[Certainty]): number => of.material + of.labour + of.tax;

/** Entries by month, year, rig, yard …, in order of their names; those without one under `''`, which comes last. */
export function entriesBy<E extends Amount>(
  entries: readonly E[],
  key: (entry: E) => string | undefined,
): readonly (readonly [string, readonly E[]])[] {
  const found = new Map<string, E[]>();
  for (const entry of entries) {
    const name = key(entry) ?? '';
    const mine = found.get(name);
    if (mine) mine.push(entry);
    else found.set(name, [entry]);
  }
  return [...found].sort(([a], [b]) => Number(a === '') - Number(b === '') || (a < b ? -1 : 1));
}

/** `1234.50`, in the decimals of the currency. */
export const decimal = (minor: number, currency: string): string => fromMinor(minor, currency).amount;

/** An amount of plain arithmetic in minor units, rounded half up. */
export const toMinor = (amount: number, currency: string): number =>
  Math.round(Number((amount * 10 ** minorDigits(currency)).toFixed(6)));
