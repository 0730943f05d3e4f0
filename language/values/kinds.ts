import { type Quantity, quantityText } from './quantity.ts';
import { unitOf } from './units.ts';

/** The kinds of values that a statement can ask for. The four rates are kinds of `rate`. */
export type ValueKind =
  | 'length'
  | 'area'
  | 'volume'
  | 'money'
  | 'rate'
  | 'money-rate'
  | 'coverage'
  | 'length-rate'
  | 'area-rate'
  | 'period'
  | 'effort'
  | 'duration'
  | 'temperature'
  | 'temperature-difference'
  | 'percent'
  | 'count'
  | 'counted'
  | 'date'
  | 'time'
  | 'monthday'
  | 'season'
  | 'vin'
  | 'text'
  | 'name';

const KINDS: Readonly<Record<ValueKind, readonly [articled: string, example: string]>> = {
  length: ['a length', '14 in'],
  area: ['an area', '120 sq-ft'],
  volume: ['a volume', '10.3 fl-oz'],
  money: ['money', '61.00 USD'],
  rate: ['a rate', '48 USD per h'],
  'money-rate': ['money per hour or day', '48 USD per h'],
  coverage: ['an area per volume', '100 sq-ft per gal'],
  'length-rate': ['a length per hour', '30 ft per h'],
  'area-rate': ['an area per hour', '120 sq-ft per h'],
  period: ['a period', '6 months'],
  effort: ['an effort in hours', '1 h 30 min'],
  duration: ['a time span', '12 h'],
  temperature: ['a temperature', '50 F'],
  'temperature-difference': ['a difference of temperatures', '5 F'],
  percent: ['a percentage', '6.5 %'],
  count: ['a whole number', '4'],
  counted: ['a number of things', '2 rolls'],
  date: ['a date', '2026-04-18'],
  time: ['a time of day', '14:30'],
  monthday: ['a day of the year', '04-15'],
  season: ['a season', '04-15 to 10-15'],
  vin: ['a VIN', '"1M8GDM9AXKP042788"'],
  text: ['a text in quotes', '"shop B"'],
  name: ['a name', 'bath-vent'],
};

/** A kind with its article, as it stands in a sentence: `a length`, `an area`, `money`. */
export function articled(kind: ValueKind): string {
  return KINDS[kind][0];
}

/** A value of the kind as it is written in a file: `14 in`. */
export function exampleOf(kind: ValueKind): string {
  return KINDS[kind][1];
}

/**
 * What a quantity is by its units alone: `number` without any unit, `unknown` if a unit is none or the units do not go
 * together. `1 h` is an effort and `7 days` a period; where a `duration` is asked for, both will do.
 */
export function kindOf(quantity: Quantity): ValueKind | 'number' | 'unknown' {
  const family = familyOf(quantity);
  if (quantity.per === undefined || family === 'unknown') return family;
  const per = unitOf(quantity.per);
  if (family === 'money' && (per?.word === 'h' || per?.word === 'day')) return 'money-rate';
  if (family === 'area' && per?.family === 'volume') return 'coverage';
  if (family === 'area' && per?.word === 'h') return 'area-rate';
  if (family === 'length' && per?.word === 'h') return 'length-rate';
  return per === undefined ? 'unknown' : 'rate';
}

function familyOf(quantity: Quantity): ValueKind | 'number' | 'unknown' {
  let family: ValueKind | 'number' = 'number';
  for (const { unit } of quantity.terms) {
    if (unit === undefined) continue;
    const found = unitOf(unit)?.family;
    if (found === undefined || (family !== 'number' && family !== found)) return 'unknown';
    family = found;
  }
  return family;
}

/** The message for a value of the wrong kind: "a length is expected here, such as `14 in`; `61 USD` is money". */
export function mismatch(expected: ValueKind, quantity: Quantity): string {
  const found = kindOf(quantity);
  const what =
    found === 'unknown' || found === expected ? 'none' : found === 'number' ? 'a bare number' : articled(found);
  const wanted = `${articled(expected)} is expected here, such as \`${exampleOf(expected)}\``;
  return `${wanted}; \`${quantityText(quantity)}\` is ${what}`;
}
