/** One number with its unit, as the line reader found it: `14 in` is `{ amount: '14', unit: 'in' }`. */
export interface Term {
  /** `14`, `-5`, `6.5`, `.5`, `1/4`, `2 1/2` (a mixed fraction is one token); half typed also `1/` or `6.`. */
  readonly amount: string;
  readonly unit?: string;
}

/** One or more terms, and what they are per: `8 ft 2 1/2 in` has two terms, `48 USD per h` has one and `per: 'h'`. */
export interface Quantity {
  readonly terms: readonly Term[];
  readonly per?: string;
}

/**
 * What reading gives: the value, or a message for the person who wrote it. The message names no place.
 * `fix` is the text that should stand instead of the whole quantity; it is there only when it is certain.
 */
export type Read<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly message: string; readonly fix?: string };

/** A value that was read. */
export function done<T>(value: T): Read<T> {
  return { ok: true, value };
}

/** Why nothing was read, and what to write instead when that is certain. */
export function refused(message: string, fix?: string): Read<never> {
  return fix === undefined ? { ok: false, message } : { ok: false, message, fix };
}

/** The value of a reading that cannot fail, such as a figure of the built-in library. Throws if it does: that is a bug. */
export function certain<T>(read: Read<T>): T {
  if (read.ok) return read.value;
  throw new Error(read.message);
}

/** An amount with single blanks inside. */
export function amountText(amount: string): string {
  return amount.includes('/') ? amount.trim().replace(/[ \t]+/g, ' ') : amount;
}

/** A term as it should be written: `14 in`. */
export function termText(term: Term): string {
  return term.unit === undefined ? amountText(term.amount) : `${amountText(term.amount)} ${term.unit}`;
}

/** A quantity as it was written, with single blanks between its words: `8 ft 2 1/2 in`, `48 USD per h`. */
export function quantityText(quantity: Quantity): string {
  const { terms, per } = quantity;
  const first = terms[0];
  const text = terms.length === 1 && first !== undefined ? termText(first) : terms.map(termText).join(' ');
  return per === undefined ? text : `${text} per ${per}`;
}

const TERM = /\s*(-?(?:(?:\d+[ \t]+)?\d+\/\d*|\d+\.?\d*|\.\d+))(?:\s*(?!per\b)([^\s\d.,-][^\s,]*))?/y;
const PER = /\s*\bper\s+(\S+)/y;

/**
 * Splits a text into a quantity, for figures that do not come from a `.rig` file: the built-in library, options of the
 * command line, tests. Undefined if anything in the text is no quantity.
 */
export function quantityFrom(text: string): Quantity | undefined {
  const terms: Term[] = [];
  let at = 0;
  for (;;) {
    TERM.lastIndex = at;
    const match = TERM.exec(text);
    if (match === null) break;
    const [, amount = '', unit] = match;
    terms.push(unit === undefined ? { amount } : { amount, unit });
    at = TERM.lastIndex;
  }
  PER.lastIndex = at;
  const per = PER.exec(text)?.[1];
  if (per !== undefined) at = PER.lastIndex;
  if (terms.length === 0 || text.slice(at).trim() !== '') return undefined;
  return per === undefined ? { terms } : { terms, per };
}
