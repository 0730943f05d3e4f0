// The form of a row of the table of advice.
import type { Facts } from './facts.ts';
import type { Action, Urgency } from './schema.ts';

/** What a reason is taken from; each gives a sentence where the records have something to say (`reasons.ts`). */
export type Cite =
  | 'condition'
  | 'looked'
  | 'coats'
  | 'underneath'
  | 'silicone'
  | 'leak'
  | 'reading'
  | 'wet'
  | 'bare'
  | 'work'
  | 'struck'
  | 'not-seen'
  | 'temporary'
  | 'part'
  | 'surface'
  | 'tightened'
  | 'unread'
  | 'limit'
  | 'worn';

/** Which of the rig's dues gives the day by which (`by.ts`). */
export type ByWhat =
  | 'finding'
  | 'repair'
  | 'strip'
  | 'wet'
  | 'reading'
  | 'leak'
  | 'leak-look'
  | 'bare'
  | 'struck'
  | 'not-seen'
  | 'temporary'
  | 'inspect';

export interface AdviceRow {
  readonly id: string;
  /** The condition in words. */
  readonly when: string;
  readonly holds: (facts: Facts) => boolean;
  readonly action: Action;
  /** What to do, in a sentence. */
  readonly what: string;
  readonly why: string;
  /** The kind of the habit or figure: `published: …`, `common practice` or `from memory`, with remarks. */
  readonly source: string;
  readonly urgency: Urgency;
  /** The reasons that it rests on, the first one first. */
  readonly cites: readonly Cite[];
  readonly by?: ByWhat;
  /** What is to be answered first: what the rows after it say without that question is told as what comes afterwards. */
  readonly asks?: 'moisture' | 'leak' | 'silicone' | 'look';
  /** What else would change it, in sentences. */
  readonly changes?: readonly string[];
}

/** A row of what is done until the lasting repair. */
export interface InterimRow extends Omit<AdviceRow, 'action' | 'urgency' | 'asks' | 'changes'> {
  readonly action: 'cover until repaired';
}
