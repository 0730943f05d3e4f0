// What may stand at a place of a line, found by walking the line's row with the reader's own slots.
import type { Line, Part } from '../../language/grammar/lines.ts';
import { cursorAt, peek } from '../../language/statements/cursor.ts';
import type { Clause, Place, Row } from '../../language/statements/row.ts';
import type { Offer, Slot } from '../../language/statements/slot.ts';

export interface Expected {
  readonly offers: readonly Offered[];
  /** Words of the language that may go on with the value before: `by`, `to`, `and`. */
  readonly inside: readonly string[];
  /** Clauses that may begin here. */
  readonly clauses: readonly Clause[];
}
export interface Offered {
  readonly offer: Offer;
  readonly slot: Slot<unknown>;
}

const nothing: Expected = { offers: [], inside: [], clauses: [] };

/** What may follow these parts of a line; `said`: the clauses that stand elsewhere in it. */
export function expectedAfter(line: Line, row: Row, parts: readonly Part[], said: ReadonlySet<string>): Expected {
  const cursor = cursorAt({ ...line, parts }, []);
  const { places, clauses: known } = row.walk;
  const used = new Set(said);
  const open = () => [...known.values()].map(([, clause]) => clause).filter(({ word }) => !used.has(word));

  for (const [i, [, place]] of places.entries()) {
    const part = peek(cursor);
    if (!part)
      return beginning(
        places.slice(i).map(([, one]) => one),
        open(),
      );
    if (!takes(place, part, row)) {
      if (place.optional) continue;
      break;
    }
    const from = cursor.index;
    const value = place.slot.read(cursor);
    if (cursor.index >= parts.length) {
      const next = beginning(
        places.slice(i + 1).map(([, one]) => one),
        open(),
      );
      return inside(line, place.slot, parts.slice(from), value !== undefined, next);
    }
    if (value === undefined) break;
  }
  for (let part = peek(cursor); part; part = peek(cursor)) {
    cursor.index++;
    const clause = part.kind === 'clause' ? known.get(part.text)?.[1] : undefined;
    if (!clause) continue;
    used.add(clause.word);
    if (!peek(cursor)) return { ...nothing, offers: offersOf(clause.slot) };
    const from = cursor.index;
    const value = clause.slot.read(cursor);
    if (cursor.index >= parts.length)
      return inside(line, clause.slot, parts.slice(from), value !== undefined, { ...nothing, clauses: open() });
  }
  return { ...nothing, clauses: open() };
}

/** What may begin where some places are still empty: the first of them, and what follows it if it may be left out. */
function beginning(places: readonly Place[], clauses: readonly Clause[]): Expected {
  const offers: Offered[] = [];
  for (const { slot, optional } of places) {
    offers.push(...offersOf(slot));
    if (!optional) return { ...nothing, offers };
  }
  return { ...nothing, offers, clauses };
}

/** A unit stands behind its number only. */
const offersOf = (slot: Slot<unknown>): Offered[] =>
  slot.offers.filter(({ kind }) => kind !== 'units').map((offer) => ({ offer, slot }));

/** What may follow within a value that has begun, `whole` if it could end here; `next` is what may stand behind it. */
function inside(line: Line, slot: Slot<unknown>, taken: readonly Part[], whole: boolean, next: Expected): Expected {
  const last = taken.at(-1);
  if (last?.kind === 'quantity' && last.per === undefined && last.terms.at(-1)?.unit === undefined && !whole)
    return { ...nothing, offers: unitsOf(slot) };
  const offers = slot.offers
    .filter((offer) => offer.kind !== 'units' && goesOn(line, slot, taken, offer))
    .map((offer) => ({ offer, slot }));
  const words = (slot.inside ?? []).filter((word) => accepted(line, slot, taken, { kind: 'clause', text: word }));
  const more = last?.kind === 'quantity' && whole && isBare(last) ? unitsOf(slot) : [];
  if (!whole) return { offers, inside: words, clauses: [] };
  return { offers: [...more, ...offers, ...next.offers], inside: words, clauses: next.clauses };
}

const isBare = (part: Part) => part.kind === 'quantity' && part.terms.at(-1)?.unit === undefined;
const unitsOf = (slot: Slot<unknown>): Offered[] =>
  slot.offers.filter(({ kind }) => kind === 'units').map((offer) => ({ offer, slot }));

/** Would the reader go on with such a part? */
function goesOn(line: Line, slot: Slot<unknown>, taken: readonly Part[], offer: Offer): boolean {
  switch (offer.kind) {
    case 'date':
      return accepted(line, slot, taken, { kind: 'date', text: '2020-01-01' });
    case 'text':
      return accepted(line, slot, taken, { kind: 'text', text: 'a', closed: true });
    case 'words':
      return offer.words.some((word) => accepted(line, slot, taken, { kind: 'word', text: word }));
    default:
      return accepted(line, slot, taken, { kind: 'word', text: 'a' });
  }
}

type Probe =
  | { readonly kind: 'word' | 'clause' | 'date'; readonly text: string }
  | { readonly kind: 'text'; readonly text: string; readonly closed: true };

function accepted(line: Line, slot: Slot<unknown>, taken: readonly Part[], probe: Probe): boolean {
  const end = line.at[1];
  const cursor = cursorAt({ ...line, parts: [...taken, { ...probe, at: [end, end + 1] }] }, []);
  slot.read(cursor);
  if (cursor.index <= taken.length) return false;
  return !cursor.problems.some(({ rule, at }) => rule !== 'missing-value' && at[0] === end);
}

function takes(place: Place, part: Part, row: Row): boolean {
  return place.slot.accepts(part) && !(part.kind === 'clause' && row.walk.clauses.has(part.text));
}
