import { mixed } from './amount.ts';
import { rounded } from './exact.ts';
import type { Money } from './money.ts';
import { fahrenheit } from './temperature.ts';

/**
 * Texts for computed figures, rounded for people; halves go up. What a person wrote is shown by its own `text`, not by
 * these. None of these texts is ever read back.
 */

/** The measures that a reader is used to. */
export type System = 'us' | 'metric';

const MM = 1_000_000;
const SIXTEENTH = 25_400_000 / 16;

/**
 * A length for people. US: feet and inches, to 1/4 in (`103 ft 2 in`), below a foot to 1/16 in (`1 3/16 in`); a whole
 * number of sixteenths is never changed. Metric: to 1 cm from a metre up (`31.45 m`), to 1 mm from 10 mm up (`85 mm`),
 * below that to 0.1 mm.
 */
export function lengthText(nm: number, system: System): string {
  if (nm < 0) return `-${lengthText(-nm, system)}`;
  if (system === 'metric') {
    if (nm >= 999.5 * MM) return `${rounded(nm / (1000 * MM), 2)} m`;
    return `${rounded(nm / MM, nm >= 9.95 * MM || nm % MM === 0 ? 0 : 1)} mm`;
  }
  const coarse = nm % SIXTEENTH !== 0 && nm >= 12 * 16 * SIXTEENTH;
  const sixteenths = coarse ? Math.round(nm / (4 * SIXTEENTH)) * 4 : Math.round(nm / SIXTEENTH);
  const feet = Math.floor(sixteenths / 192);
  const inches = sixteenths - feet * 192;
  if (feet === 0) return `${mixed(inches, 16)} in`;
  return inches === 0 ? `${feet} ft` : `${feet} ft ${mixed(inches, 16)} in`;
}

/** A length in feet with one decimal: `103.2 ft`. */
export function feetText(nm: number): string {
  return `${rounded(nm / (12 * 16 * SIXTEENTH), 1)} ft`;
}

/** An area: `228.7 sq-ft` or `21.24 sq-m`. */
export function areaText(mm2: number, system: System): string {
  return system === 'us' ? `${rounded(mm2 / 92_903.04, 1)} sq-ft` : `${rounded(mm2 / 1_000_000, 2)} sq-m`;
}

/** A volume: `10.3 fl-oz`, from a quart up `1.25 gal`; `305 mL`, from a litre up `1.25 L`. */
export function volumeText(mL: number, system: System): string {
  if (system === 'metric') return mL >= 999.5 ? `${rounded(mL / 1000, 2)} L` : `${rounded(mL, 0)} mL`;
  return mL >= 946.352946 ? `${rounded(mL / 3785.411784, 2)} gal` : `${rounded(mL / 29.5735295625, 1)} fl-oz`;
}

/** A temperature to whole degrees: `64 F`, `18 C`. */
export function temperatureText(celsius: number, system: System): string {
  const text = system === 'us' ? `${rounded(fahrenheit(celsius), 0)} F` : `${rounded(celsius, 0)} C`;
  return text.startsWith('-0 ') ? text.slice(1) : text;
}

/** Hours with two decimals: 476.4 minutes are `7.94 h`. */
export function hoursText(minutes: number): string {
  return `${rounded(minutes / 60, 2)} h`;
}

/** Money with all decimals of its currency: `116.00 USD`. */
export function moneyText(money: Money): string {
  return `${money.amount} ${money.currency}`;
}

/** A percentage with at most one decimal: `12.5 %`, `3 %`. */
export function percentText(percent: number): string {
  return `${rounded(percent, 1).replace(/\.0$/, '')} %`;
}

/** An ISO date stays one: it sorts, and it is read the same way everywhere. */
export function dateText(date: string): string {
  return date;
}
