import { isCurrency } from './currency.ts';
import { articled, exampleOf, mismatch, type ValueKind } from './kinds.ts';
import { nearest } from './nearest.ts';
import { amountText, type Quantity, quantityText, type Read, refused, type Term, termText } from './quantity.ts';
import { type Family, spelled, type Unit, unitOf, unitWords } from './units.ts';

/** What people write for a unit, in lower case, and the word for it here. */
const ALIASES: ReadonlyMap<string, string> = new Map(
  Object.entries({
    in: `inch inches inchs in. ins " '' ″ ” “`,
    ft: `foot feet feets ft. fts ' ′ ’ ‘`,
    yd: 'yard yards yds yd.',
    m: 'metre metres meter meters m. mtr',
    cm: 'centimetre centimetres centimeter centimeters cm. cms',
    mm: 'millimetre millimetres millimeter millimeters mm. mms',
    'sq-ft': 'sqft sq.ft sq.ft. sq_ft sf ft2 ft² ft^2',
    'sq-in': 'sqin sq.in sq.in. sq_in in2 in² in^2',
    'sq-m': 'sqm sq.m sq.m. sq_m m2 m² m^2',
    'fl-oz': 'oz oz. ozs floz fl.oz fl.oz. fl_oz ounce ounces',
    mL: 'ml. mls cc millilitre millilitres milliliter milliliters',
    L: 'ltr litre litres liter liters',
    pt: 'pint pints pts pt.',
    qt: 'quart quarts qts qt.',
    gal: 'gallon gallons gals gal.',
    years: 'yr yrs yr. y',
    months: 'mo mos mth mths mo.',
    weeks: 'wk wks wk.',
    days: 'd dy dys',
    h: 'hr hrs hr. h.',
    min: 'minute minutes mins min.',
    F: 'degf °f ºf ℉ fahrenheit',
    C: 'degc °c ºc ℃ celsius centigrade',
    '%': 'percent pct percents per-cent',
    EUR: '€ euro euros',
    cartridges: 'cart carts cartridge(s)',
    pieces: 'pcs pc ea each',
  }).flatMap(([word, aliases]) => aliases.split(' ').map((alias): [string, string] => [alias, word])),
);

/** Words that look like a unit but cannot be turned into one, and what to say of them. */
const NOTES: ReadonlyMap<string, string> = new Map([
  ...['lb', 'lbs', 'kg', 'g', 'pound', 'pounds'].map((word): [string, string] => [word, 'a weight']),
  ...['$', 'dollar', 'dollars', '£', '¥', 'bucks'].map((word): [string, string] => [word, 'no currency code']),
]);

/** The two units that a bare number most likely lacks, or the only one that there is. */
const LIKELY: Partial<Record<ValueKind, readonly string[]>> = {
  length: ['in', 'ft'],
  area: ['sq-ft', 'sq-m'],
  volume: ['fl-oz', 'mL'],
  money: ['USD'],
  period: ['day', 'month'],
  effort: ['h', 'min'],
  duration: ['h', 'day'],
  temperature: ['F', 'C'],
  'temperature-difference': ['F', 'C'],
  percent: ['%'],
  counted: ['roll', 'cartridge'],
};

/** The unit that follows in a compound: after feet come inches. */
const NEXT: Readonly<Record<string, string>> = {
  yd: 'ft',
  ft: 'in',
  m: 'cm',
  cm: 'mm',
  h: 'min',
  year: 'month',
  month: 'day',
  week: 'day',
};

/**
 * Why a quantity is not of the expected kind, when a unit is missing, unknown, or belongs to something else.
 * `families` are the units that would do.
 */
export function misread(expected: ValueKind, families: readonly Family[], quantity: Quantity): Read<never> {
  if (quantity.per !== undefined) return refused(mismatch(expected, quantity));
  const grouped = thousands(quantity);
  if (grouped !== undefined) {
    return refused(`a number has no blanks inside; write \`${grouped}\``, grouped);
  }
  for (const [i, term] of quantity.terms.entries()) {
    if (term.unit === undefined) return missing(expected, quantity, i);
    const unit = unitOf(term.unit);
    if (unit === undefined) return unknown(expected, families, quantity, i);
    if (!families.includes(unit.family)) return foreign(expected, families, quantity, i);
  }
  return refused(mismatch(expected, quantity));
}

/** `1 450 USD` is one number with a blank inside. */
function thousands({ terms, per }: Quantity): string | undefined {
  const amounts = terms.map((term) => term.amount);
  const last = terms.at(-1);
  if (terms.length < 2 || last === undefined || terms.slice(0, -1).some((term) => term.unit !== undefined)) return;
  if (!/^\d{1,3}( \d{3})+(\.\d+)?$/.test(amounts.join(' '))) return;
  return quantityText({ terms: [{ ...last, amount: amounts.join('') }], ...(per === undefined ? {} : { per }) });
}

function missing(expected: ValueKind, quantity: Quantity, at: number): Read<never> {
  const term = quantity.terms[at]!;
  const amount = amountText(term.amount);
  const after = unitOf(quantity.terms[at - 1]?.unit ?? '')?.word;
  const next = after === undefined ? undefined : NEXT[after];
  if (next !== undefined) {
    const better = withUnit(quantity, at, next);
    return refused(`\`${amount}\` has no unit; write \`${better}\``, better);
  }
  const likely = (LIKELY[expected] ?? []).map((word) => `${amount} ${spelled(word, amount === '1')}`);
  if (likely.length === 0) return refused(mismatch(expected, quantity));
  const fix = expected === 'percent' && quantity.terms.length === 1 ? likely[0] : undefined;
  return refused(`\`${amount}\` has no unit; write ${likely.map((text) => `\`${text}\``).join(' or ')}`, fix);
}

function unknown(expected: ValueKind, families: readonly Family[], quantity: Quantity, at: number): Read<never> {
  const term = quantity.terms[at]!;
  const word = term.unit ?? '';
  const meant = likelyUnit(word, families);
  const family = meant?.family;
  if (meant !== undefined && families.includes(meant.family)) {
    const better = quantityText({ terms: quantity.terms.map((other) => withKnownUnit(other, families)) });
    return refused(`\`${word}\` is no unit here; write \`${spelled(meant.word, term.amount === '1')}\``, better);
  }
  const wanted = `${articled(expected)} is expected here, such as \`${exampleOf(expected)}\``;
  const note = NOTES.get(word.toLowerCase());
  if (note !== undefined) return refused(`\`${word}\` is ${note}; ${wanted}`);
  if (family !== undefined) return refused(`${wanted}; \`${termText(term)}\` is ${articled(family)}`);
  if (at > 0) return missingBeside(quantity, at);
  return refused(`\`${word}\` is no unit; ${wanted}`);
}

/** `8 ft 2 epdm`: the 2 lacks its unit, and the word after it is something else. */
function missingBeside(quantity: Quantity, at: number): Read<never> {
  const term = quantity.terms[at]!;
  const next = NEXT[unitOf(quantity.terms[at - 1]?.unit ?? '')?.word ?? ''];
  const write = next === undefined ? '' : `; write \`${termText({ amount: term.amount, unit: next })}\``;
  return refused(`\`${amountText(term.amount)}\` has no unit, and \`${term.unit ?? ''}\` is none${write}`);
}

function foreign(expected: ValueKind, families: readonly Family[], quantity: Quantity, at: number): Read<never> {
  const found = quantity.terms.map((term) => unitOf(term.unit ?? '')?.family);
  if (at === 0 || found.every((family) => family !== undefined && !families.includes(family))) {
    return refused(mismatch(expected, quantity));
  }
  const term = quantity.terms[at]!;
  const kind = found[at];
  return refused(
    `\`${termText(term)}\` cannot follow \`${termText(quantity.terms[at - 1]!)}\`: it is ${articled(kind ?? 'name')}`,
  );
}

/** The unit that an unknown word most likely stands for: an alias, another case, or a near spelling of the right families. */
export function likelyUnit(word: string, families: readonly Family[]): Unit | undefined {
  const lower = word.toLowerCase();
  const alias = ALIASES.get(lower);
  if (alias !== undefined) return unitOf(alias);
  const words = families.flatMap(unitWords);
  const folded = words.find((known) => known.toLowerCase() === lower);
  if (folded !== undefined) return unitOf(folded);
  // Only where money is asked for: `all`, `try` and `top` are currencies in capitals.
  if (families.includes('money') && isCurrency(word.toUpperCase())) return unitOf(word.toUpperCase());
  const near = nearest(word, words);
  return near === undefined ? undefined : unitOf(near);
}

/** A term whose unit, if it is unknown but can be guessed, is put right. */
function withKnownUnit(term: Term, families: readonly Family[]): Term {
  if (term.unit === undefined || unitOf(term.unit) !== undefined) return term;
  const meant = likelyUnit(term.unit, families);
  return meant === undefined ? term : { ...term, unit: spelled(meant.word, term.amount === '1') };
}

/** The whole quantity with another unit at one of its terms. */
function withUnit(quantity: Quantity, at: number, word: string): string {
  const terms = quantity.terms.map((term, i): Term => {
    return i === at ? { amount: term.amount, unit: spelled(word, term.amount === '1') } : term;
  });
  return quantityText({ ...quantity, terms });
}
