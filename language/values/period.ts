import * as z from 'zod';
import { mixed } from './amount.ts';
import { type Part, readParts } from './parts.ts';
import { done, type Quantity, quantityText, type Read, refused } from './quantity.ts';
import { type Family, spelled } from './units.ts';

/** A calendar period, such as `18 months`: months and days apart, since a month is no number of days. */
export const Period = z
  .strictObject({ months: z.int().nonnegative(), days: z.int().nonnegative(), text: z.string() })
  .readonly();
export type Period = z.infer<typeof Period>;

/** Working or waiting time in minutes, such as `1 h 30 min`. */
export const Effort = z.strictObject({ minutes: z.number().nonnegative(), text: z.string() }).readonly();
export type Effort = z.infer<typeof Effort>;

/** What a clock runs for, by the hour or by the calendar: `24 h` is an effort, `7 days` a period. */
export const Duration = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('effort'), minutes: z.number().nonnegative(), text: z.string() }).readonly(),
  z
    .strictObject({
      kind: z.literal('period'),
      months: z.int().nonnegative(),
      days: z.int().nonnegative(),
      text: z.string(),
    })
    .readonly(),
]);
export type Duration = z.infer<typeof Duration>;

const PERIOD: readonly Family[] = ['period'];
const EFFORT: readonly Family[] = ['effort'];
const EITHER: readonly Family[] = ['period', 'effort'];

/** Rank from great to small, and how many of a unit make one of the unit that may stand before it. */
const RANK: Readonly<Record<string, number>> = { year: 0, month: 1, week: 2, day: 3, h: 4, min: 5 };
const LIMITS: Readonly<Record<string, number>> = { 'year month': 12, 'week day': 7, 'h min': 60 };

/** Reads `6 months`, `30 days`, `2 weeks`, `1 year 6 months`, `1/2 year`; whole months and days only. */
export function readPeriod(quantity: Quantity): Read<Period> {
  const parts = readParts('period', PERIOD, quantity);
  return parts.ok ? periodOfParts(parts.value, quantity) : parts;
}

/** The period as it was written. */
export function printPeriod(period: Period): string {
  return period.text;
}

/** Reads `8 h`, `45 min`, `1 h 30 min`, `1.5 h`. */
export function readEffort(quantity: Quantity): Read<Effort> {
  const parts = readParts('effort', EFFORT, quantity);
  return parts.ok ? effortOfParts(parts.value, quantity) : parts;
}

/** The effort as it was written. */
export function printEffort(effort: Effort): string {
  return effort.text;
}

/** Reads an effort or a period, whichever it is by its units; a mixture (`1 day 6 h`) is refused. */
export function readDuration(quantity: Quantity): Read<Duration> {
  const parts = readParts('duration', EITHER, quantity);
  if (!parts.ok) return parts;
  const family = parts.value[0]?.unit.family;
  if (parts.value.some((part) => part.unit.family !== family)) {
    return refused(
      `days and hours do not go together; write \`${quantityText(quantity)}\` in hours alone or days alone`,
    );
  }
  if (family === 'effort') {
    const effort = effortOfParts(parts.value, quantity);
    return effort.ok ? done({ kind: 'effort', ...effort.value }) : effort;
  }
  const period = periodOfParts(parts.value, quantity);
  return period.ok ? done({ kind: 'period', ...period.value }) : period;
}

/** The time span as it was written. */
export function printDuration(duration: Duration): string {
  return duration.text;
}

/** A computed period: 18 and 0 are `1 year 6 months`, 0 and 0 are `0 days`. */
export function periodOf(months: number, days: number): Period {
  const texts = [counted(Math.floor(months / 12), 'year'), counted(months % 12, 'month'), counted(days, 'day')].filter(
    (text) => text !== undefined,
  );
  return { months, days, text: texts.length === 0 ? '0 days' : texts.join(' ') };
}

/** A computed effort in minutes: 90 is `1 h 30 min`. */
export function effortOf(minutes: number): Effort {
  const texts = [counted(Math.floor(minutes / 60), 'h'), counted(minutes % 60, 'min')].filter(
    (text) => text !== undefined,
  );
  return { minutes, text: texts.length === 0 ? '0 min' : texts.join(' ') };
}

function counted(count: number, word: string): string | undefined {
  return count === 0 ? undefined : `${count} ${spelled(word, count === 1)}`;
}

function periodOfParts(parts: readonly Part[], quantity: Quantity): Read<Period> {
  const fault = compoundFault(parts, quantity);
  if (fault !== undefined) return fault;
  let months = 0;
  let days = 0;
  for (const { amount, unit } of parts) {
    const monthly = unit.word === 'year' || unit.word === 'month';
    const factor = unit.word === 'year' ? 12 : unit.word === 'week' ? 7 : 1;
    const count = (amount.n * factor) / amount.d;
    if (!Number.isInteger(count)) {
      const text = quantityText(quantity);
      return refused(
        monthly
          ? `\`${text}\` is no whole number of months; the nearest is \`${nearestDays((count * 365.2425) / 12)}\``
          : `\`${text}\` is no whole number of days; the nearest is \`${nearestDays(count)}\``,
      );
    }
    if (monthly) months += count;
    else days += count;
  }
  return months > 12_000 || days > 365_250
    ? refused(`\`${quantityText(quantity)}\` is longer than a thousand years`)
    : done({ months, days, text: quantityText(quantity) });
}

function nearestDays(count: number): string {
  const days = Math.max(1, Math.round(count));
  return `${days} ${spelled('day', days === 1)}`;
}

function effortOfParts(parts: readonly Part[], quantity: Quantity): Read<Effort> {
  const fault = compoundFault(parts, quantity);
  if (fault !== undefined) return fault;
  let minutes = 0;
  for (const { amount, unit } of parts) minutes += (amount.n * (unit.word === 'h' ? 60 : 1)) / amount.d;
  return done({ minutes, text: quantityText(quantity) });
}

/** As in lengths: greater units first, each once, a later number less than one of the unit before, whole but the last. */
function compoundFault(parts: readonly Part[], quantity: Quantity): Read<never> | undefined {
  for (let i = 1; i < parts.length; i++) {
    const [before, part] = [parts[i - 1]!, parts[i]!];
    const [a, b] = [before.unit.word, part.unit.word];
    if (before.amount.form !== 'whole')
      return refused('only the last number may be a fraction or a decimal, as in `1 h 30 min`');
    if (a === b) return refused(`\`${a}\` stands twice in \`${quantityText(quantity)}\`; write it once`);
    if (RANK[a]! > RANK[b]!) {
      const better = quantityText({ terms: [...quantity.terms].sort(byRank) });
      return refused(`the greater unit comes first; write \`${better}\``, better);
    }
    const limit = LIMITS[`${a} ${b}`];
    if (limit !== undefined && part.amount.n >= limit * part.amount.d) return carried(parts, i, limit);
  }
  return undefined;
}

function byRank(a: { readonly unit?: string }, b: { readonly unit?: string }): number {
  return rankOf(a.unit) - rankOf(b.unit);
}

function rankOf(unit: string | undefined): number {
  return RANK[unit === 'hour' || unit === 'hours' ? 'h' : (unit ?? '').replace(/s$/, '')] ?? 9;
}

/** `1 h 90 min` is `2 h 30 min`. */
function carried(parts: readonly Part[], at: number, limit: number): Read<never> {
  const { n, d } = parts[at]!.amount;
  const over = Math.floor(n / (limit * d));
  const better = parts
    .map(({ amount, unit }, i) => {
      const above =
        i === at - 1 ? amount.n + over * amount.d : i === at ? amount.n - over * limit * amount.d : amount.n;
      return above === 0 && i === at ? '' : `${mixed(above, amount.d)} ${spelled(unit.word, above === amount.d)}`;
    })
    .filter((text) => text !== '')
    .join(' ');
  const [small, great] = [parts[at]!.unit.word, parts[at - 1]!.unit.word];
  return refused(`${limit} ${spelled(small, false)} are 1 ${great}; write \`${better}\``, better);
}
