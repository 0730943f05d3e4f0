import { rounded } from '../values/exact.ts';
import { moneyOf } from '../values/money.ts';

/** An amount of money as a person reads it, rounded half up at the minor unit. */
export function money(value: number, currency: string): string {
  return moneyOf(rounded(value, 9), currency).text;
}
