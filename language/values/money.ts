import * as z from 'zod';
import { isCurrency, minorDigits } from './currency.ts';
import { Exact } from './exact.ts';
import { readPart } from './parts.ts';
import { done, type Quantity, quantityText, type Read, refused } from './quantity.ts';
import type { Family } from './units.ts';

/**
 * An amount of money: an exact decimal with just the decimals of the currency's minor unit (`61.00`, `1450` JPY), an
 * ISO 4217 code, and its text. Never negative where a person wrote it; differences that are computed may be.
 */
export const Money = z
  .strictObject({
    amount: z.string().regex(/^-?\d+(\.\d+)?$/),
    currency: z.string().refine(isCurrency, 'no ISO 4217 code'),
    text: z.string(),
  })
  .readonly();
export type Money = z.infer<typeof Money>;

/** Thrown where two currencies meet that the caller should have kept apart. */
export class MixedCurrencies extends Error {
  override readonly name = 'MixedCurrencies';
}

const FAMILIES: readonly Family[] = ['money'];

/** Reads `61.00 USD`, `61 USD`, `1450 JPY`: a decimal with at most the decimals of the currency. */
export function readMoney(quantity: Quantity): Read<Money> {
  const part = readPart('money', FAMILIES, quantity);
  if (!part.ok) return part;
  const { amount, unit } = part.value;
  const currency = unit.word;
  const text = quantityText(quantity);
  const exact = new Exact(amount.n).div(amount.d);
  const digits = minorDigits(currency);
  const better = `${exact.toFixed(digits, Exact.roundHalfUp)} ${currency}`;
  if (amount.form === 'fraction') {
    const certain = exact.eq(exact.round(digits));
    return refused(`money is written as a decimal; write \`${better}\``, certain ? better : undefined);
  }
  if (amount.d > 10 ** digits) {
    const finest = digits === 0 ? 'no decimals' : `${digits} decimals`;
    const certain = exact.eq(exact.round(digits));
    return refused(`${currency} has ${finest}; write \`${better}\``, certain ? better : undefined);
  }
  return done({ amount: exact.toFixed(digits), currency, text });
}

/** The money as it was written. */
export function printMoney(money: Money): string {
  return money.text;
}

/** Money from a computed amount, **rounded half up (away from zero) at the minor unit**: 0.125 USD is 0.13 USD. */
export function moneyOf(amount: string | number, currency: string): Money {
  const fixed = new Exact(amount).toFixed(minorDigits(currency), Exact.roundHalfUp);
  return { amount: fixed, currency, text: `${fixed} ${currency}` };
}

/** The money as a whole number of minor units (cents). */
export function minorUnits(money: Money): number {
  return Number(new Exact(money.amount).times(10 ** minorDigits(money.currency)).toString());
}

/** Money from a whole number of minor units: 6100 and USD are 61.00 USD. */
export function fromMinor(units: number, currency: string): Money {
  return moneyOf(new Exact(units).div(10 ** minorDigits(currency)).toString(), currency);
}

/** The exact sum, in the given currency; refused if any amount has another. The sum of nothing is 0. */
export function sumMoney(amounts: readonly Money[], currency: string): Read<Money> {
  let sum = new Exact(0);
  for (const money of amounts) {
    if (money.currency !== currency) {
      return refused(`\`${money.text}\` cannot be added to ${currency}: no rate of exchange is known`);
    }
    sum = sum.plus(money.amount);
  }
  return done(moneyOf(sum.toString(), currency));
}

/** `a - b`, which may be negative; throws `MixedCurrencies`. */
export function minusMoney(a: Money, b: Money): Money {
  requireSame(a, b);
  return moneyOf(new Exact(a.amount).minus(b.amount).toString(), a.currency);
}

/** Negative, zero or positive as `a` is less than, equal to or more than `b`; throws `MixedCurrencies`. */
export function compareMoney(a: Money, b: Money): number {
  requireSame(a, b);
  return new Exact(a.amount).cmp(b.amount);
}

/** Money times a factor, exact until it is rounded half up at the minor unit. A factor with many digits goes in as text. */
export function timesMoney(money: Money, factor: number | string): Money {
  return moneyOf(new Exact(money.amount).times(factor).toString(), money.currency);
}

function requireSame(a: Money, b: Money): void {
  if (a.currency !== b.currency)
    throw new MixedCurrencies(`${a.currency} and ${b.currency} are two currencies: no rate of exchange is known`);
}
