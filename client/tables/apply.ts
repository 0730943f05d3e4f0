// Changes of many files as one edit of the editor's: shown first in its own preview, undone as one.
import { Range, Uri, WorkspaceEdit, workspace } from 'vscode';
import type { FileChange } from '../../language/protocol/index.ts';

/** Shows what would change and makes it, if that is wanted. False: it was called off, or could not be made. */
export function applied(changes: readonly FileChange[], label: string): Thenable<boolean> {
  const edit = new WorkspaceEdit();
  const about = { needsConfirmation: true, label };
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
