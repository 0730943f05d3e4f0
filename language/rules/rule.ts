// The form of a rule and of the families they come in.
import type { RigDeclaration } from '../records/file.ts';
import type { Located } from '../resolve/located.ts';
import type { Names } from '../resolve/names.ts';
import type { Dates, RigView } from '../resolve/types.ts';
import type { Severity } from '../statements/words.ts';

/** What the catalogue says of a rule. Each has a page made from this, a test, and a quick fix or a reason why there is none. */
export interface RuleEntry {
  readonly severity: Exclude<Severity, 'off'>;
  /** What is wrong, in a few words. */
  readonly title: string;
  /** Why it matters and what to do, in plain sentences. */
  readonly why: string;
  /** What the quick fix does, or why there is none. */
  readonly fix: string;
  /** What it points at can go, or is past its time: editors show it faded, or struck through. */
  readonly tag?: 'unnecessary' | 'deprecated';
  /** The kind of the rule's figures and its source: `published: …`, `common practice`, `from memory`, or none where it is the language's own. */
  readonly source?: string;
}

/** A family of rules: their entries, and the function that finds them on one rig. */
export interface RuleFamily<N extends string = string> {
  readonly rules: Readonly<Record<N, RuleEntry>>;
  readonly check?: (rig: RigContext) => Iterable<Located & { readonly rule: N }>;
}

/** One rig and the dates, with what several rules need worked out once. */
export interface RigContext {
  readonly view: RigView;
  readonly dates: Dates;
  /** Whether a file that a record names is there; undefined where the front door cannot tell. */
  readonly exists?: (path: string) => boolean;
  /** What was written of the rig itself, with the place of each value; missing where it is seen from a fleet. */
  readonly declaration?: RigDeclaration;
  /** The names that are visible where the rig is written. */
  readonly names?: Names;
  /** What several rules need, worked out once; see `once`. Not a WeakMap: its entries would outlive every young collection. */
  readonly remembered: Map<unknown, unknown>;
}

/** What `make` gives, worked out at the first call for this rig. */
export function once<T>(context: RigContext, make: (context: RigContext) => T): T {
  const { remembered } = context;
  if (!remembered.has(make)) remembered.set(make, make(context));
  return remembered.get(make) as T;
}

/** Keeps the names of the rules of a family in its type. */
export function family<const N extends string>(
  rules: Readonly<Record<N, RuleEntry>>,
  check?: RuleFamily<N>['check'],
): RuleFamily<N> {
  return check ? { rules, check } : { rules };
}
