// Round figures along an axis.
import { rounded } from '../../values/exact.ts';

export interface Scale {
  /** The end of the axis: the last tick. */
  readonly end: number;
  /** From 0 on, in even steps. */
  readonly ticks: readonly number[];
}

/** An axis from 0 to at least `most` with about so many steps of 1, 2 or 5 times a power of ten. */
export function scaleTo(most: number, steps: number, least = 0): Scale {
  const wanted = Math.max(most, Number.MIN_VALUE) / steps;
  const power = 10 ** Math.floor(Math.log10(Math.max(wanted, 1e-9)));
  const step = Math.max(least, ([1, 2, 5].find((one) => one * power >= wanted) ?? 10) * power);
  const count = Math.max(1, Math.ceil(most / step - 1e-9));
  return { end: count * step, ticks: Array.from({ length: count + 1 }, (_, i) => i * step) };
}

/** A figure of an axis: whole from 10 up, else as short as it goes. */
export function tickText(value: number): string {
  return value === 0 || value >= 10 ? rounded(value, 0) : String(Number(rounded(value, 2)));
}

/** A coordinate with at most two decimals. */
export const at = (value: number): number => Math.round(value * 100) / 100;
