// What a piece of work on many seams costs: an estimate of plans that nobody wrote, for the sake of comparison.
import { type Estimate, estimateOf } from '../estimate/index.ts';
import type { Explained } from '../explain.ts';
import { figureInput } from '../measure/figure.ts';
import type { Plan, RigView } from '../resolve/types.ts';
import type { PlanStatement } from '../statements/plans.ts';

/** One step of the work: a verb, the names of items, the names of materials. */
export interface Task {
  readonly word: 'strip' | 'seal' | 'tape' | 'wash' | 'inspect';
  readonly items?: readonly string[];
  readonly materials?: readonly string[];
}

/** What work costs on one occasion, in whole money of `currency`; tax is in what it is put on. */
export interface PricedWork {
  readonly material: number;
  readonly labour: number;
  /** The part of `labour` that a visit takes however little is done: setting up and clearing. */
  readonly setUp: number;
  readonly hours: number;
  readonly currency: string;
  /** Why the sum is not whole; empty if it is. */
  readonly missing: readonly string[];
  readonly figures: { readonly materials: Explained; readonly labour: Explained };
}

/**
 * The cost of steps that are done in one visit on the as-of date, bought new: what lies on the shelf is spent once, and
 * these are costs of many years. Undefined where no currency is known.
 */
export function priceOf(view: RigView, asOf: string, steps: readonly Task[]): PricedWork | undefined {
  const plans = steps.flatMap((step) => planOf(view, step));
  const estimate = estimateOf({ ...view, rig: { ...view.rig, plans, stock: [] } }, { asOf, today: asOf });
  const { totals, labour, hours } = estimate;
  if (totals.currency === undefined || !totals.materials || !totals.labour) return undefined;
  const { percent, on } = taxOf(view);
  const share = 1 + percent / 100;
  const setUp = labour.filter(({ task }) => task === 'set-up').reduce((sum, { cost }) => sum + amount(cost), 0);
  const onLabour = on === 'all' ? share : 1;
  return {
    material: amount(totals.materials) * share,
    labour: amount(totals.labour) * onLabour,
    setUp: setUp * onLabour,
    hours: hours.likely.value,
    currency: totals.currency,
    missing: totals.missing,
    figures: {
      materials: taxed('materials', totals.materials.figure, percent, view),
      labour: on === 'all' ? taxed('labour', totals.labour.figure, percent, view) : totals.labour.figure,
    },
  };
}

const amount = (priced: Estimate['totals']['materials']) => Number(priced?.money.amount ?? 0);

function taxOf({ rig }: RigView): { readonly percent: number; readonly on: 'materials' | 'all' } {
  const tax = rig.policy.tax?.value;
  return { percent: tax?.percent.percent ?? 0, on: tax?.on ?? 'materials' };
}

function taxed(name: string, figure: Explained, percent: number, { rig }: RigView): Explained {
  const { tax } = rig.policy;
  if (!tax || percent === 0) return figure;
  const value = figure.value * (1 + percent / 100);
  return {
    value,
    unit: figure.unit,
    text: `${value.toFixed(2)} ${figure.unit}`,
    rule: `${name} with tax`,
    formula: `${name} * (1 + tax / 100)`,
    inputs: [
      figureInput(name, figure),
      { name: 'tax', value: percent, unit: '%', text: tax.value.percent.text, origin: tax.origin },
    ],
  };
}

/** A plan as if it were written in the heading of the rig, without a date, so that no record is taken for it. */
function planOf({ rig }: RigView, { word, items, materials }: Task): readonly Plan[] {
  if (items?.length === 0) return [];
  const at = rig.nameAt;
  const statement = {
    word,
    at,
    spans: {},
    ...(items ? { targets: items.map((name) => ({ name, at })) } : {}),
    ...(materials ? { materials: materials.map((name) => ({ name, at })) } : {}),
  } as PlanStatement;
  return [{ statement, file: rig.file, places: (items ?? []).map((item) => ({ item, at })) }];
}
