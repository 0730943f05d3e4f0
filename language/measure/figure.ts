// Builds explained figures: the value in the unit that the reader's formula is worked in, beside the exact value.
import type { Explained, Input } from '../explain.ts';
import type { Origin } from '../resolve/types.ts';
import { areaText, lengthText, type System, volumeText } from '../values/display.ts';
import { rounded } from '../values/exact.ts';

/** How a figure came about, without the figure. */
export interface Working {
  readonly rule: string;
  readonly formula: string;
  readonly inputs: readonly Input[];
  readonly source?: string;
}

/** A length in nanometres and its explanation in inches or millimetres. */
export interface Long {
  readonly nm: number;
  readonly figure: Explained;
}
/** An area in square millimetres and its explanation in square feet or square metres. */
export interface Wide {
  readonly mm2: number;
  readonly figure: Explained;
}
/** A volume in millilitres and its explanation in fluid ounces, gallons, millilitres or litres. */
export interface Filling {
  readonly mL: number;
  readonly figure: Explained;
}

/** The units that figures are worked in, with their sizes in nanometres, square millimetres and millilitres. */
export const units = {
  us: {
    length: { unit: 'in', nm: 25_400_000 },
    run: { unit: 'ft', nm: 304_800_000 },
    section: { unit: 'sq-in', mm2: 645.16 },
    area: { unit: 'sq-ft', mm2: 92_903.04 },
    volume: { unit: 'fl-oz', mL: 29.5735295625 },
    liquid: { unit: 'gal', mL: 3785.411784 },
    /** Square inches in a square foot, cubic inches in a fluid ounce: definitions. */
    perArea: '144',
    perVolume: '1.8046875',
  },
  metric: {
    length: { unit: 'mm', nm: 1_000_000 },
    run: { unit: 'm', nm: 1_000_000_000 },
    section: { unit: 'sq-mm', mm2: 1 },
    area: { unit: 'sq-m', mm2: 1_000_000 },
    volume: { unit: 'mL', mL: 1 },
    liquid: { unit: 'L', mL: 1000 },
    perArea: '1000000',
    perVolume: '1000',
  },
} as const;

/** A length as a figure. */
export function long(nm: number, system: System, working: Working): Long {
  const { unit, nm: size } = units[system].length;
  return { nm, figure: { value: nm / size, unit, text: lengthText(nm, system), ...working } };
}

/** A length as a figure in feet or metres, as rates count it. */
export function run(nm: number, system: System, working: Working): Long {
  const { unit, nm: size } = units[system].run;
  return { nm, figure: { value: nm / size, unit, text: lengthText(nm, system), ...working } };
}

/** An area as a figure. */
export function wide(mm2: number, system: System, working: Working): Wide {
  const { unit, mm2: size } = units[system].area;
  return { mm2, figure: { value: mm2 / size, unit, text: areaText(mm2, system), ...working } };
}

/** A volume as a figure: `liquid` in gallons or litres, else in fluid ounces or millilitres. */
export function filling(mL: number, system: System, working: Working, as: 'volume' | 'liquid' = 'volume'): Filling {
  const { unit, mL: size } = units[system][as];
  return { mL, figure: { value: mL / size, unit, text: volumeWords(mL, system, as), ...working } };
}

/** A volume for people: of sealant in fluid ounces or millilitres however much it is, as its cartridges are. */
export function volumeWords(mL: number, system: System, as: 'volume' | 'liquid'): string {
  if (as === 'liquid') return volumeText(mL, system);
  const { unit, mL: size } = units[system].volume;
  return `${rounded(mL / size, system === 'us' ? 1 : 0)} ${unit}`;
}

/** A length as an input, with the text that a person wrote or is to read. */
export function lengthInput(
  name: string,
  length: { readonly nm: number; readonly text: string },
  system: System,
  origin?: Origin,
): Input {
  const { unit, nm } = units[system].length;
  return { name, value: length.nm / nm, unit, text: length.text, ...(origin === undefined ? {} : { origin }) };
}

/** A volume as an input, in the unit that figures of its kind are worked in. */
export function volumeInput(
  name: string,
  { mL, text }: { readonly mL: number; readonly text: string },
  system: System,
  as: 'volume' | 'liquid',
  origin?: Origin,
): Input {
  const { unit, mL: size } = units[system][as];
  return { name, value: mL / size, unit, text, ...(origin === undefined ? {} : { origin }) };
}

/** A bare number as an input. */
export function countInput(name: string, value: number, origin?: Origin): Input {
  return { name, value, text: String(value), ...(origin === undefined ? {} : { origin }) };
}

/** A figure as an input of another. */
export function figureInput(name: string, { value, unit, text }: Explained): Input {
  return { name, value, unit, text };
}

/** `a + b + c` over figures that are named in order, and their inputs; `0` for none. */
export function sumOf(figures: readonly Explained[], name: string): Pick<Working, 'formula' | 'inputs'> {
  const inputs = figures.map((figure, i) => figureInput(`${name}_${i + 1}`, figure));
  return { formula: inputs.map((input) => input.name).join(' + ') || '0', inputs };
}
