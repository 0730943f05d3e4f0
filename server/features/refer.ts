// Where a figure comes from, as a place to go to.
import type { Location } from 'vscode-languageserver';
import type { Input } from '../../language/explain.ts';
import type { Span } from '../../language/grammar/problem.ts';
import { isLibrary } from '../../language/resolve/origin.ts';
import { locationOf, type Texts } from '../places.ts';

export interface Place {
  readonly file: string;
  readonly at: Span;
}

/** The first input of a figure that somebody wrote, other than on the line of the figure itself. */
export function writtenElsewhere(inputs: readonly Input[], { file, at }: Place): Place | undefined {
  return originsOf(inputs).find((one) => one.file !== file || one.at[0] < at[0] || one.at[1] > at[1]);
}

/** The first input of a figure that somebody wrote. */
export const written = (inputs: readonly Input[]): Place | undefined => originsOf(inputs)[0];

const originsOf = (inputs: readonly Input[]) =>
  inputs.flatMap(({ origin }) => (origin && !isLibrary(origin.file) ? [origin] : []));

export const placeToGo = (place: Place | undefined, texts: Texts): Location | undefined =>
  place && locationOf(texts, place.file, place.at);
