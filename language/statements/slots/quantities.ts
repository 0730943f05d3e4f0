// Slots for a single figure with its unit.
import * as z from 'zod';
import type { Part } from '../../grammar/lines.ts';
import { Area, readArea } from '../../values/area.ts';
import { articled, exampleOf, kindOf, type ValueKind } from '../../values/kinds.ts';
import { Length, readLength } from '../../values/length.ts';
import { Money, readMoney } from '../../values/money.ts';
import { Count, Percent, readCount, readPercent } from '../../values/numbers.ts';
import { Duration, Effort, Period, readDuration, readEffort, readPeriod } from '../../values/period.ts';
import type { Quantity, Read } from '../../values/quantity.ts';
import {
  AreaRate,
  Coverage,
  LengthRate,
  MoneyRate,
  readAreaRate,
  readCoverage,
  readLengthRate,
  readMoneyRate,
} from '../../values/rate.ts';
import { readTemperature, Temperature } from '../../values/temperature.ts';
import { readVolume, Volume } from '../../values/volume.ts';
import { type Cursor, expected, peek, refuse, takeClause } from '../cursor.ts';
import type { Slot } from '../slot.ts';

const units: Partial<Record<ValueKind, readonly string[]>> = {
  length: ['in', 'ft', 'mm', 'cm', 'm'],
  area: ['sq-ft', 'sq-m'],
  volume: ['fl-oz', 'mL', 'qt', 'gal', 'L'],
  money: ['USD', 'EUR', 'GBP', 'CAD', 'AUD'],
  period: ['days', 'weeks', 'months', 'years'],
  effort: ['h', 'min'],
  duration: ['h', 'min', 'days'],
  temperature: ['F', 'C'],
  percent: ['%'],
};

const isQuantity = (part: Part): part is Part & { kind: 'quantity' } => part.kind === 'quantity';

function quantitySlot<T>(kind: ValueKind, schema: z.ZodType<T>, read: (quantity: Quantity) => Read<T>): Slot<T> {
  return {
    what: articled(kind),
    example: exampleOf(kind),
    schema,
    offers: [{ kind: 'units', units: units[kind] ?? [] }],
    accepts: isQuantity,
    read(cursor: Cursor) {
      const part = peek(cursor);
      if (!part || !isQuantity(part)) return expected(cursor, articled(kind), exampleOf(kind));
      cursor.index++;
      const got = read(part);
      if (got.ok) return got.value;
      return refuse(cursor, 'wrong-value', got, part.at);
    },
  };
}

export const length = quantitySlot('length', Length, readLength);
export const area = quantitySlot('area', Area, readArea);
export const volume = quantitySlot('volume', Volume, readVolume);
export const money = quantitySlot('money', Money, readMoney);
export const percent = quantitySlot('percent', Percent, readPercent);
export const count = quantitySlot('count', Count, readCount);
export const temperature = quantitySlot('temperature', Temperature, readTemperature);
export const period = quantitySlot('period', Period, readPeriod);
export const effort = quantitySlot('effort', Effort, readEffort);
export const duration = quantitySlot('duration', Duration, readDuration);
export const moneyRate = quantitySlot('money-rate', MoneyRate, readMoneyRate);
export const coverage = quantitySlot('coverage', Coverage, readCoverage);
export const lengthRate = quantitySlot('length-rate', LengthRate, readLengthRate);
export const areaRate = quantitySlot('area-rate', AreaRate, readAreaRate);

export const TaskRate = z.discriminatedUnion('kind', [
  LengthRate,
  AreaRate,
  Effort.unwrap()
    .extend({ kind: z.literal('effort') })
    .readonly(),
]);
export type TaskRate = z.infer<typeof TaskRate>;

/** How fast a task goes: a length or an area per hour, or the time that one takes. */
export const taskRate: Slot<TaskRate> = {
  what: 'a rate or an effort',
  example: '40 ft per h',
  schema: TaskRate,
  offers: [{ kind: 'units', units: ['ft per h', 'sq-ft per h', 'm per h', 'sq-m per h', 'min', 'h'] }],
  accepts: isQuantity,
  read(cursor: Cursor) {
    const part = peek(cursor);
    if (!part || !isQuantity(part)) return expected(cursor, 'a rate or an effort', '40 ft per h');
    const kind = kindOf(part);
    if (kind === 'area-rate') return areaRate.read(cursor);
    if (kind !== 'effort') return lengthRate.read(cursor);
    const value = effort.read(cursor);
    return value && { kind: 'effort', ...value };
  },
};

/** `5 in wide`, directly after a name: the older way to write `wide 5 in`. */
export const bandBefore: Slot<Length> = {
  ...length,
  what: 'a length and `wide`',
  example: '5 in wide',
  inside: ['wide'],
  read(cursor: Cursor) {
    const value = length.read(cursor);
    if (value === undefined) return undefined;
    return takeClause(cursor, 'wide') ? value : expected(cursor, '`wide`', 'wide');
  },
};
