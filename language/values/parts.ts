import { type Amount, readAmount } from './amount.ts';
import { articled, exampleOf, mismatch, type ValueKind } from './kinds.ts';
import { misread } from './misread.ts';
import { done, type Quantity, quantityText, type Read, refused, type Term } from './quantity.ts';
import { type Family, type Unit, unitOf } from './units.ts';

/** A term with its number and its unit understood. */
export interface Part {
  readonly amount: Amount;
  readonly unit: Unit;
}

/**
 * The terms of a quantity whose units all belong to one of the families; the gate that every reader with units passes.
 * Missing, unknown and foreign units, half-typed numbers and (unless `signed`) negative ones are refused here.
 */
export function readParts(
  expected: ValueKind,
  families: readonly Family[],
  quantity: Quantity,
  signed = false,
): Read<readonly Part[]> {
  if (quantity.per !== undefined) return misread(expected, families, quantity);
  const parts: Part[] = [];
  for (const term of quantity.terms) {
    const amount = readAmount(term.amount);
    if (!amount.ok) return amountRefused(quantity, term, amount);
    const unit = term.unit === undefined ? undefined : unitOf(term.unit);
    if (unit === undefined || !families.includes(unit.family)) return misread(expected, families, quantity);
    if (amount.value.n < 0 && !signed) return negative(expected, quantity);
    parts.push({ amount: amount.value, unit });
  }
  return parts.length === 0 ? refused(mismatch(expected, quantity)) : done(parts);
}

/** As `readParts`, for kinds that are written with one number and one unit. */
export function readPart(
  expected: ValueKind,
  families: readonly Family[],
  quantity: Quantity,
  signed = false,
): Read<Part> {
  const parts = readParts(expected, families, quantity, signed);
  if (!parts.ok) return parts;
  const [part, second] = parts.value;
  if (part === undefined || second !== undefined) {
    return refused(
      `${articled(expected)} has one number and one unit, as in \`${exampleOf(expected)}\`; ` +
        `\`${quantityText(quantity)}\` has ${parts.value.length}`,
    );
  }
  return done(part);
}

/** Carries the refusal of one amount over to the whole quantity, so that its fix replaces the whole. */
function amountRefused(quantity: Quantity, term: Term, read: Read<unknown> & { ok: false }): Read<never> {
  const { message, fix } = read;
  if (fix === undefined) return refused(message);
  const terms = quantity.terms.map((other) => (other === term ? { ...term, amount: fix } : other));
  return refused(message, quantityText({ ...quantity, terms }));
}

/** Amounts without a unit, such as counts, carry their refusals the same way. */
export function readBareAmount(expected: ValueKind, quantity: Quantity): Read<Amount> {
  const [term, second] = quantity.terms;
  if (term === undefined || second !== undefined || term.unit !== undefined || quantity.per !== undefined) {
    return refused(mismatch(expected, quantity));
  }
  const amount = readAmount(term.amount);
  return amount.ok ? amount : amountRefused(quantity, term, amount);
}

/** The refusal of a negative value. */
export function negative(expected: ValueKind, quantity: Quantity): Read<never> {
  const terms = quantity.terms.map((term) => ({ ...term, amount: term.amount.replace(/^-/, '') }));
  return refused(`${articled(expected)} cannot be negative; write \`${quantityText({ ...quantity, terms })}\``);
}
