// Between the engine and the protocol: offsets and positions; paths and URIs are in addresses.ts.
import type { Location, Position, Range } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Span } from '../language/grammar/problem.ts';
import { uriOf } from './addresses.ts';

export { libraryScheme, pathOf, uriOf } from './addresses.ts';

/** Texts with positions: those of open editors as they are, others read once for each task. */
export interface Texts {
  of(path: string): TextDocument | undefined;
}

export const textsFrom = (read: (path: string) => string | undefined, open: Texts): Texts => {
  const known = new Map<string, TextDocument | undefined>();
  return {
    of(path) {
      const document = open.of(path);
      if (document) return document;
      if (!known.has(path)) {
        const text = read(path);
        known.set(path, text === undefined ? undefined : TextDocument.create(uriOf(path), 'rig', 0, text));
      }
      return known.get(path);
    },
  };
};

const start: Position = { line: 0, character: 0 };

/** The range of a span; the very beginning for a text that is gone. */
export function rangeOf(document: TextDocument | undefined, [from, to]: Span): Range {
  return document ? { start: document.positionAt(from), end: document.positionAt(to) } : { start, end: start };
}

export function locationOf(texts: Texts, file: string, at: Span): Location {
  return { uri: uriOf(file), range: rangeOf(texts.of(file), at) };
}
