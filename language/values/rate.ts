import * as z from 'zod';
import { readArea, squareMillimetresPer } from './area.ts';
import { isCurrency } from './currency.ts';
import { exactDouble } from './exact.ts';
import { articled, exampleOf, kindOf, mismatch, type ValueKind } from './kinds.ts';
import { readLength } from './length.ts';
import { likelyUnit } from './misread.ts';
import { readMoney } from './money.ts';
import { readPart } from './parts.ts';
import { done, type Quantity, quantityText, type Read, refused } from './quantity.ts';
import { type Family, unitOf } from './units.ts';
import { millilitresPer } from './volume.ts';

/** Money per hour or per day: `48 USD per h`. */
export const MoneyRate = z
  .strictObject({
    kind: z.literal('money-rate'),
    amount: z.string().regex(/^\d+(\.\d+)?$/),
    currency: z.string().refine(isCurrency, 'no ISO 4217 code'),
    per: z.enum(['h', 'day']),
    text: z.string(),
  })
  .readonly();
export type MoneyRate = z.infer<typeof MoneyRate>;

/** Area that a volume covers, in mm2 per mL: `100 sq-ft per gal`. */
export const Coverage = z
  .strictObject({ kind: z.literal('coverage'), mm2PerMl: z.number().nonnegative(), text: z.string() })
  .readonly();
export type Coverage = z.infer<typeof Coverage>;

/** Length done in an hour, in nanometres: `30 ft per h`. */
export const LengthRate = z
  .strictObject({ kind: z.literal('length-rate'), nmPerH: z.int().nonnegative(), text: z.string() })
  .readonly();
export type LengthRate = z.infer<typeof LengthRate>;

/** Area done in an hour, in square millimetres: `120 sq-ft per h`. */
export const AreaRate = z
  .strictObject({ kind: z.literal('area-rate'), mm2PerH: z.number().nonnegative(), text: z.string() })
  .readonly();
export type AreaRate = z.infer<typeof AreaRate>;

/** Any of the four rates. */
export const Rate = z.discriminatedUnion('kind', [MoneyRate, Coverage, LengthRate, AreaRate]);
export type Rate = z.infer<typeof Rate>;

const AREA: readonly Family[] = ['area'];
const PER_FAMILIES: readonly Family[] = ['effort', 'period', 'volume'];
const VOLUMES = ['gal', 'qt', 'pt', 'fl-oz', 'L', 'mL'] as const;

/** Reads `48 USD per h`, `350 USD per day`. */
export function readMoneyRate(quantity: Quantity): Read<MoneyRate> {
  const per = perWord('money-rate', ['h', 'day'], quantity);
  if (!per.ok) return per;
  const money = above(quantity, readMoney);
  if (!money.ok) return money;
  const { amount, currency } = money.value;
  return done({
    kind: 'money-rate',
    amount,
    currency,
    per: per.value === 'day' ? 'day' : 'h',
    text: quantityText(quantity),
  });
}

/** Reads `100 sq-ft per gal`, `2 sq-m per L`. */
export function readCoverage(quantity: Quantity): Read<Coverage> {
  const per = perWord('coverage', VOLUMES, quantity);
  if (!per.ok) return per;
  const area = above(quantity, (terms) => readPart('area', AREA, terms));
  if (!area.ok) return area;
  const { amount, unit } = area.value;
  const mm2PerMl = exactDouble(amount, squareMillimetresPer(unit.word), millilitresPer(per.value));
  return done({ kind: 'coverage', mm2PerMl, text: quantityText(quantity) });
}

/** Reads `30 ft per h`. */
export function readLengthRate(quantity: Quantity): Read<LengthRate> {
  const per = perWord('length-rate', ['h'], quantity);
  if (!per.ok) return per;
  const length = above(quantity, readLength);
  if (!length.ok) return length;
  return done({ kind: 'length-rate', nmPerH: length.value.nm, text: quantityText(quantity) });
}

/** Reads `120 sq-ft per h`. */
export function readAreaRate(quantity: Quantity): Read<AreaRate> {
  const per = perWord('area-rate', ['h'], quantity);
  if (!per.ok) return per;
  const area = above(quantity, readArea);
  if (!area.ok) return area;
  return done({ kind: 'area-rate', mm2PerH: area.value.mm2, text: quantityText(quantity) });
}

/** Reads whichever of the four rates it is by its units. */
export function readRate(quantity: Quantity): Read<Rate> {
  switch (kindOf(quantity)) {
    case 'money-rate':
      return readMoneyRate(quantity);
    case 'coverage':
      return readCoverage(quantity);
    case 'length-rate':
      return readLengthRate(quantity);
    case 'area-rate':
      return readAreaRate(quantity);
    default:
      return refused(mismatch('rate', quantity));
  }
}

/** The rate as it was written. */
export function printRate(rate: Rate): string {
  return rate.text;
}

/** The canonical word after `per`, if it is one of those that fit. */
function perWord(expected: ValueKind, words: readonly string[], quantity: Quantity): Read<string> {
  const { per } = quantity;
  if (per === undefined) return refused(mismatch(expected, quantity));
  const unit = unitOf(per);
  if (unit !== undefined && words.includes(unit.word)) return done(unit.word);
  const kind = kindOf(quantity);
  if (kind !== 'unknown' && kind !== 'rate') return refused(mismatch(expected, quantity));
  const likely = unit === undefined ? likelyUnit(per, PER_FAMILIES) : undefined;
  if (likely !== undefined && words.includes(likely.word)) {
    const better = quantityText({ terms: quantity.terms, per: likely.word });
    return refused(`\`${per}\` is no unit here; write \`${better}\``, better);
  }
  const list = words.map((word) => `\`per ${word}\``).join(' or ');
  return refused(
    `${articled(expected)} is expected here, such as \`${exampleOf(expected)}\`; write ${list}, not \`per ${per}\``,
  );
}

/** Reads what stands before `per`; a fix keeps the `per`. */
function above<T>(quantity: Quantity, read: (quantity: Quantity) => Read<T>): Read<T> {
  const result = read({ terms: quantity.terms });
  if (result.ok || result.fix === undefined) return result;
  return refused(result.message, `${result.fix} per ${quantity.per ?? ''}`);
}
