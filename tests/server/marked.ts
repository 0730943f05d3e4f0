// Texts with a cursor in them: `taped 2026-07-05 <|> with EdgeTape4`.
import type { Position } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';

/** The text without its marker, and where the marker stood. */
export function marked(text: string): { readonly text: string; readonly position: Position } {
  const at = text.indexOf('<|>');
  if (at < 0 || text.indexOf('<|>', at + 1) >= 0) throw new Error('one <|> is expected in the text');
  const without = text.slice(0, at) + text.slice(at + 3);
  return { text: without, position: TextDocument.create('', 'rig', 0, without).positionAt(at) };
}
