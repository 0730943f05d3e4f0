// The sum of an estimate: lines that are rounded, added exactly, in one currency.
import type { Input } from '../explain.ts';
import { figureInput, sumOf } from '../measure/figure.ts';
import type { Policy } from '../resolve/types.ts';
import { Exact } from '../values/exact.ts';
import { moneyOf, sumMoney } from '../values/money.ts';
import { certain } from '../values/quantity.ts';
import { priced } from './priced.ts';
import type { LabourLine, Priced, Purchase, Question, Totals } from './schema.ts';

/** Questions that leave the sum as it is. */
const ASIDE = new Set<Question['rule']>(['two-materials', 'unknown-stock', 'past-best-before', 'unknown-underneath']);

/** The currency of an estimate: the policy's, else that of its labour, else the first that is met. */
export function currencyOf({ currency, labour }: Policy, met: readonly (string | undefined)[]): string | undefined {
  return currency?.value ?? labour?.value.currency ?? met.find((each) => each !== undefined);
}

/** Questions about lines that cannot be added because they are in another currency. */
export function otherCurrencies(
  lines: readonly { readonly about: string; readonly cost?: Priced }[],
  currency: string | undefined,
): readonly Question[] {
  const apart = lines.flatMap(({ about, cost }) => {
    const other = cost?.money.currency;
    if (other === undefined || other === currency) return [];
    const text = `${about} is in ${other}, the estimate in ${currency}: it is not in the sum, for no rate of exchange is known.`;
    return [{ rule: 'mixed-currencies' as const, about, text }];
  });
  return apart.filter((one, i) => apart.findIndex(({ text }) => text === one.text) === i);
}

/** Materials, labour, tax and their sum; what is missing from it comes from the open questions. */
export function totalsOf(
  purchases: readonly Purchase[],
  labour: readonly LabourLine[],
  { tax }: Pick<Policy, 'tax'>,
  currency: string | undefined,
  questions: readonly Question[],
): Totals {
  const missing = questions.filter(({ rule }) => !ASIDE.has(rule)).map(({ text }) => text);
  const state = { complete: missing.length === 0, missing };
  if (currency === undefined) return state;
  // A sum of nothing that has a price is no sum: it would read as free.
  const unpriced = (lines: readonly { readonly cost?: Priced }[]) =>
    lines.length > 0 && lines.every(({ cost }) => cost?.money.currency !== currency);
  if (unpriced(purchases) && unpriced(labour)) return { currency, ...state };
  const sums = {
    materials: sum(purchases, 'all materials together', 'material', currency),
    labour: sum(labour, 'all work together', 'task', currency),
  };
  const taxed = tax && taxOf(sums, tax, currency);
  const parts: readonly (readonly [string, Priced])[] = [
    ...Object.entries(sums),
    ...(taxed === undefined ? [] : [['tax', taxed] as const]),
  ];
  const total = priced(
    certain(
      sumMoney(
        parts.map(([, { money }]) => money),
        currency,
      ),
    ),
    'materials, labour and tax',
    parts.map(([name]) => name).join(' + '),
    parts.map(([name, { figure }]) => figureInput(name, figure)),
  );
  return { currency, ...sums, ...(taxed === undefined ? {} : { tax: taxed }), total, ...state };
}

function sum(lines: readonly { readonly cost?: Priced }[], rule: string, name: string, currency: string): Priced {
  const costs = lines.flatMap(({ cost }) => (cost?.money.currency === currency ? [cost] : []));
  const { formula, inputs } = sumOf(
    costs.map(({ figure }) => figure),
    name,
  );
  const money = costs.map((cost) => cost.money);
  return priced(certain(sumMoney(money, currency)), rule, formula, inputs);
}

function taxOf(
  { materials, labour }: { readonly materials: Priced; readonly labour: Priced },
  { value, origin }: NonNullable<Policy['tax']>,
  currency: string,
): Priced {
  const percent: Input = { name: 'tax', value: value.percent.percent, unit: '%', text: value.percent.text, origin };
  const taxed = value.on === 'all' ? [materials, labour] : [materials];
  const base = taxed.reduce((total, { money }) => total.plus(money.amount), new Exact(0));
  const money = moneyOf(base.times(value.percent.percent).div(100).toString(), currency);
  const inputs = [figureInput('materials', materials.figure)];
  return value.on === 'all'
    ? priced(money, 'tax on all', '(materials + labour) * tax / 100', [
        ...inputs,
        figureInput('labour', labour.figure),
        percent,
      ])
    : priced(money, 'tax on materials', 'materials * tax / 100', [...inputs, percent]);
}
