// A value and where it was written.
import type { Span } from '../grammar/problem.ts';

/** How far a figure can be trusted: written by the user, or one of the built-in library's kinds. */
export type OriginKind = 'record' | 'published' | 'common practice' | 'from memory';

/** Where a value was written. Files of the built-in library begin with `library/`. */
export interface Origin {
  readonly file: string;
  readonly at: Span;
  readonly kind: OriginKind;
  /** The `source` clause, as written. */
  readonly source?: string;
}

export interface Stated<T> {
  readonly value: T;
  readonly origin: Origin;
}
