// What the checker says: a rule, how grave, where, and a way out.
import type { Fix, Span } from '../grammar/problem.ts';
import type { Severity } from '../statements/words.ts';

/** Another place that explains a finding. */
export interface Related {
  readonly file: string;
  readonly at: Span;
  readonly message: string;
}

/** A plan that would follow up a finding, for the rig that it is about: `inspect bath-vent before 2026-12-02`. */
export interface FollowUp {
  readonly word: string;
  /** Empty for the whole rig. */
  readonly items: readonly string[];
  /** An ISO date. */
  readonly before: string;
}

/** A finding at a place of a file. `item` and `rig` name what it is about, for `accept`. */
export interface Finding {
  readonly rule: string;
  readonly severity: Exclude<Severity, 'off'>;
  readonly message: string;
  readonly file: string;
  readonly at: Span;
  readonly fixes?: readonly Fix[];
  readonly related?: readonly Related[];
  readonly rig?: string;
  readonly item?: string;
  readonly followUp?: FollowUp;
}
