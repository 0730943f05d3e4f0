// Formatting: the whole text, some of its lines, and what was typed just now. Needs nothing but the text.
import type { LangiumDocument } from 'langium';
import type { Formatter } from 'langium/lsp';
import type { TextEdit } from 'vscode-languageserver';
import { afterBrace, afterEnter, type Edit, format } from '../../language/format/index.ts';
import { pathOf, rangeOf } from '../places.ts';
import type { Features } from './here.ts';

export function formatter({ open }: Features): Formatter {
  // A build may still wait behind a keystroke: what is open is as it was typed.
  const textOf = (document: LangiumDocument) => open.of(pathOf(document.uri)) ?? document.textDocument;
  const given = (document: LangiumDocument, edits: (text: string) => readonly Edit[]): TextEdit[] => {
    const now = textOf(document);
    return edits(now.getText()).map(({ at, text }) => ({ range: rangeOf(now, at), newText: text }));
  };
  return {
    formatDocument: (document) => given(document, (text) => format(text).edits),
    formatDocumentRange: (document, { range: { start, end } }) =>
      given(document, (text) => {
        // A selection that ends where a line begins does not take that line in.
        const last = end.character === 0 && end.line > start.line ? end.line - 1 : end.line;
        return format(text, { first: start.line, last }).edits;
      }),
    formatDocumentOnType: (document, { ch, position: { line } }) =>
      given(document, (text) => (ch === '}' ? afterBrace(text, line) : afterEnter(text, line))),
    formatOnTypeOptions: { firstTriggerCharacter: '}', moreTriggerCharacter: ['\n'] },
  };
}
