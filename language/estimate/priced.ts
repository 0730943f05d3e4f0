// Money as a figure, and which prices can go into one sum.
import type { Input } from '../explain.ts';
import type { OnSale, Origin } from '../resolve/types.ts';
import { minorDigits } from '../values/currency.ts';
import type { Money } from '../values/money.ts';
import type { Priced } from './schema.ts';

/** Money, rounded half up at the minor unit, whose formula is rounded alike. */
export function priced(money: Money, rule: string, formula: string, inputs: readonly Input[]): Priced {
  const { amount, currency } = money;
  return {
    money,
    figure: {
      value: Number(amount),
      unit: currency,
      text: `${amount} ${currency}`,
      rule,
      formula: `round(${formula}, ${minorDigits(currency)})`,
      inputs,
    },
  };
}

/** An amount of money as an input. */
export function moneyInput(name: string, money: Money, origin?: Origin): Input {
  const { amount, currency, text } = money;
  return { name, value: Number(amount), unit: currency, text, ...(origin === undefined ? {} : { origin }) };
}

/**
 * What can be bought together: what is on sale in the given currency; if nothing is, in the first other currency; if
 * nothing has a price, all of it, without money.
 */
export function buyable<T>(
  onSale: readonly OnSale<T>[],
  currency: string | undefined,
): { readonly from: readonly OnSale<T>[]; readonly currency?: string } {
  const currencies = onSale.flatMap(({ price }) => (price === undefined ? [] : [price.currency]));
  const chosen = currencies.find((each) => each === currency) ?? currencies[0];
  if (chosen === undefined) return { from: onSale };
  return { from: onSale.filter(({ price }) => price?.currency === chosen), currency: chosen };
}
