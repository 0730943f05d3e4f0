// What the estimates of a fleet's rigs come to: totals, and what is to be bought in all.
import * as z from 'zod';
import type { Estimate, Priced, PurchaseLine } from '../estimate/index.ts';
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

/** How much of one thing the rigs need together, each bought for itself. */
export const Shopping = z
  .strictObject({
    material: z.string(),
    what: z.string(),
    count: Figure,
    /** Missing where no price is known. */
    cost: Figure.exactOptional(),
  })
  .readonly();
export type Shopping = z.infer<typeof Shopping>;

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

/** What is to be bought for all rigs, by material; a thing with two prices stands twice. */
export function shoppingOf(estimates: readonly Estimate[]): readonly Shopping[] {
  const found = new Map<string, { material: string; lines: { rig: string; line: PurchaseLine }[] }>();
  for (const { rig, purchases } of estimates) {
    for (const { material, buy } of purchases) {
      for (const line of buy) {
        const key = JSON.stringify([material, line.what, line.unitPrice?.amount, line.unitPrice?.currency]);
        const entry = found.get(key) ?? { material, lines: [] };
        entry.lines.push({ rig: rig.name, line });
        found.set(key, entry);
      }
    }
  }
  const all = [...found.values()].map(({ material, lines }): Shopping => {
    const costs = lines.flatMap(({ rig, line }) => (line.cost ? [{ of: rig, priced: line.cost }] : []));
    const currency = costs[0]?.priced.money.currency;
    const what = (lines[0] as (typeof lines)[0]).line.what;
    return {
      material,
      what,
      count: countSum(lines.map(({ rig, line }) => ({ of: rig, count: line.count }))),
      ...(currency === undefined ? {} : { cost: moneySum(costs, currency, 'what each rig needs, added up') }),
    };
  });
  return all.sort((a, b) => compare(a.material, b.material) || compare(a.what, b.what));
}

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);

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

function countSum(parts: readonly { readonly of: string; readonly count: number }[]): Explained {
  const value = parts.reduce((total, { count }) => total + count, 0);
  const inputs = parts.map(({ of, count }, i) => ({ name: `rig_${i + 1}`, value: count, text: `${count} (${of})` }));
  return { value, unit: 'pieces', text: String(value), rule: 'what each rig needs, added up', ...added(inputs) };
}

const added = (inputs: readonly Input[]): Pick<Explained, 'formula' | 'inputs'> => ({
  formula: inputs.map(({ name }) => name).join(' + '),
  inputs,
});
