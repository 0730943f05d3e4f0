// Cells by what they hold.
import type { Explained } from '../../explain.ts';
import { minorDigits } from '../../values/currency.ts';
import type { FormulaCell, Look, NumberCell, TextCell } from './table.ts';

export const text = (value: string | undefined, look: Look = 'plain'): TextCell | undefined =>
  value === undefined || value === '' ? undefined : { text: value, look };

/** The currency stands in each cell, so that no sum over two of them looks like one. */
export function moneyFormat(currency: string | undefined): string {
  if (currency === undefined) return '#,##0.00';
  const digits = minorDigits(currency);
  return `#,##0${digits === 0 ? '' : `.${'0'.repeat(digits)}`}\\ "${currency}"`;
}

export const plainFormat = 'General';
export const countFormat = '0';
export const hoursFormat = '0.00';
export const amountFormat = '#,##0.0##';

export const number = (value: number, format: string = plainFormat): NumberCell => ({ number: value, format });

/** A number to be changed; without a value it waits for one. */
export const input = (value: number | undefined, format: string = plainFormat): NumberCell => ({
  ...(value === undefined ? {} : { number: value }),
  format,
  input: true,
});

export const formula = (made: string, result: number | string, format: string, look: Look = 'plain'): FormulaCell => ({
  formula: made,
  result,
  format,
  look,
});

/**
 * A formula for money, rounded half up at the minor unit as everywhere. The inner rounding takes away what binary
 * fractions add: 10.10 at 5 % is 0.505, not a little less.
 */
export const roundedMoney = (made: string, currency: string | undefined): string =>
  `ROUND(ROUND(${made},9),${currency === undefined ? 2 : minorDigits(currency)})`;

/** The number that a figure was worked with under a name. */
export function inputOf(figure: Explained, name: string): number | undefined {
  const value = figure.inputs.find((one) => one.name === name)?.value;
  return typeof value === 'number' ? value : undefined;
}
