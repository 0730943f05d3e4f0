// What is known of each seam on a date: layers, condition, looks, readings, for each stretch of it. Plain, immutable data.
import type { Event, Item } from '../resolve/types.ts';
import type { Condition, Defect, Family } from '../statements/words.ts';
import type { Day } from '../values/day.ts';

/** The word of a record of what happened. */
export type Verb = Event['record']['word'];

/** What lies on a seam, one thing on another. */
export interface Layer {
  readonly kind: 'sealant' | 'tape' | 'primer' | 'coating' | 'patch';
  /** The factory's (or the part's) own bead, what was found there, or recorded work. */
  readonly by: 'factory' | 'found' | 'work';
  /** The name as recorded; missing where none was written or it was said to be unknown. */
  readonly material?: string;
  /**
   * `named` and declared; said to be `unknown`; `unnamed`: the record names none; `undeclared`: a name that nothing has,
   * about which rules stay silent.
   */
  readonly known: 'named' | 'unknown' | 'unnamed' | 'undeclared';
  readonly family?: Family;
  /** The first and last day on which it can have been laid; ages count from the first, clocks from the last. */
  readonly first?: string;
  readonly last?: string;
  readonly event?: Event;
}

/** The first and the last of the records that say so, with none between that says otherwise. */
export interface Since {
  readonly since: Event;
  readonly last: Event;
}

/** A reading of a moisture meter. */
export interface Reading {
  readonly percent: number;
  readonly text: string;
  readonly inside?: string;
  readonly event: Event;
}

/**
 * The state of a part of a seam that has one history. Lengths in nanometres from the beginning of the seam.
 *
 * A field that is missing says that nothing is recorded, never that all is well. No field ever says that a seam is dry.
 */
export interface Stretch {
  readonly from: number;
  /** Missing where the length of the item is not known: to its end. */
  readonly to?: number;
  /** From the bottom. */
  readonly layers: readonly Layer[];
  /** The last coating of the roof here; it stays on the surface round the seam when the seam is stripped. */
  readonly coating?: Layer;
  /**
   * The worst of the last findings; `renewed` after work: not yet looked at, never sound. Missing: no condition is
   * recorded since the surface was laid bare, or ever.
   */
  readonly condition?: { readonly word: Condition | 'renewed'; readonly event: Event };
  readonly defects: readonly Defect[];
  /** By level: the record from which on the seam was found at this level or worse, without a repair or a better finding since. */
  readonly onset: Readonly<Partial<Record<Condition, Event>>>;
  /** Found wet, and no drying and no later dry finding since. */
  readonly wet?: Since;
  /** In order of time. */
  readonly readings: readonly Reading[];
  /** The last look, with or without a condition; `not-seen` is no look. */
  readonly looked?: Event;
  /** The last finding of sound since the work before it. */
  readonly sound?: Event;
  /** Said to be `not-seen`, and no look since. */
  readonly notSeen?: Since;
  /** The last record of each kind. */
  readonly lastOf: Readonly<Partial<Record<Verb, Event>>>;
  readonly temporary?: { readonly event: Event; readonly until?: Day };
  /** Stripped, replaced or rebedded, and nothing laid since. */
  readonly bare?: Event;
  /** Of a bare stretch: silicone that was taken off. Its film may still be there, until something is laid. */
  readonly film?: Layer;
}

/** What is known of an item on a date. */
export interface SeamState {
  readonly item: Item;
  /** `sealed` seams carry sealant or tape; `open` ones (gasket, drain, channel, insert) must not; the `field` is the membrane. */
  readonly role: 'sealed' | 'open' | 'field';
  /** In order along the seam, without gaps; at least one. */
  readonly stretches: readonly Stretch[];
  /** Taken away for good. */
  readonly removed?: Event;
  /** The part's last replacement. */
  readonly replaced?: Event;
  /** Lines about it could not be read: nothing may be concluded from what is missing. */
  readonly unread: boolean;
}

/** Water came in: open until a look on a later day than a repair finds the place sound and dry. */
export interface Leak {
  readonly event: Event;
  readonly inside?: string;
  /** Items through which it may come; empty where nobody knows. */
  readonly suspects: readonly string[];
  /** Repairs since: of a suspect, or of anything where there is none. */
  readonly repairs: readonly { readonly event: Event; readonly items: readonly string[] }[];
  readonly closed?: Event;
  /** Earlier leaks with the same words for the place or a suspect in common. */
  readonly earlier: number;
}

/** A blow or strain after which the roof is to be looked at. */
export interface Strike {
  readonly event: Event;
  /** Items that nobody has looked at since. */
  readonly waiting: readonly string[];
}

/** Everything that the records say of a rig up to a date. */
export interface RigState {
  readonly asOf: string;
  readonly seams: ReadonlyMap<string, SeamState>;
  readonly leaks: readonly Leak[];
  readonly strikes: readonly Strike[];
}

/** Whether the item is on the rig on a date: fitted by then as far as is known, and not taken away. */
export function isThere({ item, removed }: SeamState, date: string): boolean {
  if (removed || (item.until && item.until.last <= date)) return false;
  return item.since === undefined || item.since.first <= date;
}

/** The change from the reading before to the last one in percentage points; undefined with fewer than two readings. */
export function moistureTrend(stretch: Stretch): number | undefined {
  const [before, last] = stretch.readings.slice(-2);
  return before && last ? last.percent - before.percent : undefined;
}
