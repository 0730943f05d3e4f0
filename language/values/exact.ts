import Big from 'big.js';
import type { Amount } from './amount.ts';

/** Decimals of our own precision: big.js keeps its settings on the constructor, which others may share. */
export const Exact = Big();
Exact.DP = 40;

/** The double nearest to `amount x factor / divisor`; factor and divisor are exact decimals. */
export function exactDouble(amount: Amount, factor: string, divisor = '1'): number {
  return Number(new Exact(amount.n).times(factor).div(new Exact(amount.d).times(divisor)).toString());
}

/** A figure rounded to so many decimals, halves away from zero, judged on its shortest decimal spelling. */
export function rounded(value: number, decimals: number): string {
  return new Exact(value).toFixed(decimals, Exact.roundHalfUp);
}
