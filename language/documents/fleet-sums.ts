// What the estimates of a fleet's rigs come to.
import * as z from 'zod';
import type { Estimate, Priced } from '../estimate/index.ts';
import { Figure } from '../estimate/schema.ts';
import type { Explained, Input } from '../explain.ts';
import { fromMinor, minorUnits } from '../values/money.ts';

/** The total of the rigs that are counted in one currency. */
export const Sum = z
  .strictObject({
    currency: z.string(),
    rigs: z.int().positive(),
    /** Rigs whose own total is not whole. */
    incomplete: z.array(z.string()).readonly(),
    total: Figure,
  })
  .readonly();
export type Sum = z.infer<typeof Sum>;

/** Totals are added within a currency only: no rate of exchange is known. */
export function sumsOf(estimates: readonly Estimate[]): readonly Sum[] {
  const priced = estimates.flatMap(({ rig, totals: { total, complete } }) =>
    total ? [{ name: rig.name, total, complete }] : [],
  );
  const currencies = [...new Set(priced.map(({ total }) => total.money.currency))].sort();
  return currencies.map((currency) => {
    const mine = priced.filter(({ total }) => total.money.currency === currency);
    return {
      currency,
      rigs: mine.length,
      incomplete: mine.filter(({ complete }) => !complete).map(({ name }) => name),
      total: moneySum(
        mine.map(({ name, total }) => ({ of: name, priced: total })),
        currency,
        'the totals of the rigs added up',
      ),
    };
  });
}

/** Why there is not one sum over all rigs; empty if there is. */
export function unsummed(estimates: readonly Estimate[], sums: readonly Sum[]): readonly string[] {
  const without = estimates.filter(({ totals, jobs }) => jobs.length > 0 && totals.total === undefined);
  return [
    ...(sums.length > 1
      ? [`The rigs are counted in ${sums.map(({ currency }) => currency).join(' and ')}: no rate of exchange is known.`]
      : []),
    ...without.map(({ rig }) => `${rig.name} has no total: no currency and no price is known.`),
  ];
}

function moneySum(
  parts: readonly { readonly of: string; readonly priced: Priced }[],
  currency: string,
  rule: string,
): Explained {
  const sum = fromMinor(
    parts.reduce((total, { priced }) => total + minorUnits(priced.money), 0),
    currency,
  );
  const inputs = parts.map(({ of, priced: { money } }, i) => ({
    name: `rig_${i + 1}`,
    value: Number(money.amount),
    unit: currency,
    text: `${money.text} (${of})`,
  }));
  return { value: Number(sum.amount), unit: currency, text: sum.text, rule, ...added(inputs) };
}

const added = (inputs: readonly Input[]): Pick<Explained, 'formula' | 'inputs'> => ({
  formula: inputs.map(({ name }) => name).join(' + '),
  inputs,
});
