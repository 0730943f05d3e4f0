// Where a value comes from.
import type { Span } from '../grammar/problem.ts';
import type { Origin, OriginKind, Stated } from './types.ts';

export const isLibrary = (file: string) => file.startsWith('library/');

/** The origin of a line; in the built-in library its `source` clause says the kind, elsewhere the record itself is the source. */
export function originOf(file: string, at: Span, source?: string): Origin {
  return { file, at, kind: isLibrary(file) ? kindIn(source) : 'record', ...(source === undefined ? {} : { source }) };
}

function kindIn(source: string | undefined): OriginKind {
  if (source?.startsWith('published')) return 'published';
  return source?.startsWith('common practice') ? 'common practice' : 'from memory';
}

export function stated<T>(
  value: T,
  file: string,
  statement: { readonly at: Span; readonly source?: string },
): Stated<T> {
  return { value, origin: originOf(file, statement.at, statement.source) };
}
