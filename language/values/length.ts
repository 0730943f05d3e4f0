import * as z from 'zod';
import { type Amount, commonDivisor, mixed } from './amount.ts';
import { type Part, readParts } from './parts.ts';
import { done, type Quantity, quantityText, type Read, refused } from './quantity.ts';
import type { Family } from './units.ts';

/**
 * A length as an exact number of nanometres, and the text it was written as (single blanks between its words).
 * An inch is 25.4 mm by definition (NIST SP 811, appendix B), so every 1/64 in and every 0.001 mm is a whole number of
 * nanometres, and sums are exact.
 */
export const Length = z.strictObject({ nm: z.int().nonnegative(), text: z.string() }).readonly();
export type Length = z.infer<typeof Length>;

interface LengthUnit {
  readonly nm: number;
  readonly system: 'us' | 'metric';
}

const MM = 1_000_000;
const INCH = 25_400_000;
const UNITS: Readonly<Record<string, LengthUnit>> = {
  yd: { nm: 36 * INCH, system: 'us' },
  ft: { nm: 12 * INCH, system: 'us' },
  in: { nm: INCH, system: 'us' },
  m: { nm: 1000 * MM, system: 'metric' },
  cm: { nm: 10 * MM, system: 'metric' },
  mm: { nm: MM, system: 'metric' },
};
const FAMILIES: readonly Family[] = ['length'];

/**
 * Reads `14 in`, `8 ft 2 1/2 in`, `2.5 m`, `1/4 in`. In a compound each unit is smaller than the one before and its
 * number less than one of that; only the last may be a fraction or a decimal. What is not exact (`1/3 in`) is refused.
 */
export function readLength(quantity: Quantity): Read<Length> {
  const parts = readParts('length', FAMILIES, quantity);
  if (!parts.ok) return parts;
  let nm = 0;
  let fault: string | undefined;
  let above: LengthUnit | undefined;
  for (const [i, part] of parts.value.entries()) {
    const unit = UNITS[part.unit.word]!;
    const exact = nanometres(part.amount, unit.nm);
    if (exact === undefined) return inexact(quantity, part, unit);
    nm += exact;
    fault ??= compoundFault(parts.value, i, unit, above, exact);
    above = unit;
  }
  if (!Number.isSafeInteger(nm)) return refused(`\`${quantityText(quantity)}\` is too long to be kept exactly`);
  if (fault !== undefined) return misbuilt(fault, parts.value, nm);
  return done({ nm, text: quantityText(quantity) });
}

/** The length as it was written. */
export function printLength(length: Length): string {
  return length.text;
}

/**
 * A computed length with a text that reads back to exactly the same: feet and inches where it is a whole number of
 * 1/64 in, else millimetres with as many decimals as it takes. For a rounded text see `lengthText` in display.ts.
 */
export function lengthOf(nm: number, system: 'us' | 'metric' = 'us'): Length {
  const us = system === 'us' ? respell(nm, ['ft', 'in']) : undefined;
  return { nm, text: us ?? `${decimal(nm, MM) ?? nm / MM} mm` };
}

/** A part of a length in whole nanometres, or undefined where it is none or too great. */
function nanometres({ n, d }: Amount, unit: number): number | undefined {
  if (d === 1) return n * unit;
  const g = commonDivisor(unit, d);
  const rest = d / g;
  return n % rest === 0 ? (n / rest) * (unit / g) : undefined;
}

function compoundFault(
  parts: readonly Part[],
  i: number,
  unit: LengthUnit,
  above: LengthUnit | undefined,
  exact: number,
): string | undefined {
  const part = parts[i]!;
  if (i < parts.length - 1 && part.amount.form !== 'whole') {
    return 'only the last number of a length may be a fraction or a decimal';
  }
  if (above === undefined) return undefined;
  const before = parts[i - 1]!.unit.word;
  if (above.system !== unit.system) return `\`${before}\` and \`${part.unit.word}\` do not go together in one length`;
  if (unit.nm === above.nm) return `\`${before}\` stands twice in one length`;
  if (unit.nm > above.nm) return 'the greater unit comes first';
  if (exact >= above.nm) return `${above.nm / unit.nm} ${part.unit.word} are 1 ${before}`;
  return undefined;
}

/** A compound that is put together wrongly: says what to write, with a fix unless a unit may have been mistyped. */
function misbuilt(fault: string, parts: readonly Part[], nm: number): Read<never> {
  const words = parts.map((part) => part.unit.word);
  const distinct = [...new Set(words)].sort((a, b) => UNITS[b]!.nm - UNITS[a]!.nm);
  const better = respell(nm, distinct);
  if (better === undefined || distinct.length < words.length || new Set(words.map(systemOf)).size > 1) {
    return refused(`${fault}; write it as in \`8 ft 2 1/2 in\` or \`2.5 m\``);
  }
  return refused(`${fault}; write \`${better}\``, better);
}

function systemOf(word: string): string {
  return UNITS[word]!.system;
}

/** Spells an exact length in the given units, greatest first; undefined if the last cannot hold the rest exactly. */
function respell(nm: number, words: readonly string[]): string | undefined {
  const texts: string[] = [];
  let rest = nm;
  for (const [i, word] of words.entries()) {
    const { nm: size, system } = UNITS[word]!;
    const last = i === words.length - 1;
    const count = last ? lastNumber(rest, size, system) : String(Math.floor(rest / size));
    if (count === undefined) return undefined;
    if (count !== '0' || (last && texts.length === 0)) texts.push(`${count} ${word}`);
    rest %= size;
  }
  return texts.join(' ');
}

function lastNumber(nm: number, size: number, system: 'us' | 'metric'): string | undefined {
  if (system === 'metric') return decimal(nm, size);
  const sixtyFourth = INCH / 64;
  // An inch has 64 parts, a foot 768: below a foot other fractions than those of an inch are not written.
  return nm % sixtyFourth === 0 && (size === INCH || nm % size === 0)
    ? mixed(nm / sixtyFourth, size / sixtyFourth)
    : decimal(nm, size);
}

/** `nm / size` as a decimal of at most six places, or undefined if that is not exact. */
function decimal(nm: number, size: number): string | undefined {
  const whole = Math.floor(nm / size);
  const micro = ((nm - whole * size) * MM) / size;
  if (!Number.isInteger(micro)) return undefined;
  return micro === 0 ? String(whole) : `${whole}.${String(micro).padStart(6, '0').replace(/0+$/, '')}`;
}

/** `1/3 in`: says the nearest that is exact, without a fix, for that is another length. */
function inexact(quantity: Quantity, part: Part, unit: LengthUnit): Read<never> {
  const { n, d } = part.amount;
  const step = unit.system === 'us' ? INCH / 64 : 1000;
  const near = Math.round(((n / d) * unit.nm) / step) * step;
  const better =
    quantity.terms.length > 1 || near === 0
      ? undefined
      : respell(near, unit.system === 'us' ? ['ft', 'in'] : [part.unit.word]);
  const rule =
    unit.system === 'us'
      ? 'fractions end in /2, /4, /8, /16, /32 or /64, decimals have at most 5 places'
      : 'the finest that is kept is a millionth of a millimetre';
  const write = better === undefined ? '' : `; the nearest is \`${better}\``;
  return refused(`\`${quantityText(quantity)}\` is no exact length: ${rule}${write}`);
}
