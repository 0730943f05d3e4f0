// Changes of many files as one edit of the editor's: shown first in its own preview, undone as one.
import { Range, Uri, WorkspaceEdit, workspace } from 'vscode';
import type { FileChange } from '../../language/protocol/index.ts';

/**
 * Shows what would change and makes it, if that is wanted. False: it was called off, or could not be made. The preview opens when
 * an edit asks for it, and such an edit is not ticked: one that changes nothing asks, in a file that is there, so that all others
 * are ticked and one click makes them.
 */
export function applied(changes: readonly FileChange[], label: string, there: Uri): Thenable<boolean> {
  const edit = new WorkspaceEdit();
  edit.replace(there, new Range(0, 0, 0, 0), '', { needsConfirmation: true, label: 'Rigseam: changes nothing' });
  const about = { needsConfirmation: false, label };
  for (const { uri, text, edits } of changes) {
    const file = Uri.parse(uri);
    if (text !== null) edit.createFile(file, { contents: new TextEncoder().encode(text) }, about);
    for (const { range, newText } of edits) {
      const { start, end } = range;
      edit.replace(file, new Range(start.line, start.character, end.line, end.character), newText, about);
    }
  }
  return workspace.applyEdit(edit, { isRefactoring: true });
}

/** `3 rigs`. */
export const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;
