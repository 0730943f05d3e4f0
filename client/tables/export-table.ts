import { Uri, window, workspace } from 'vscode';
import { exportTableAsk } from '../../language/protocol/index.ts';
import type { LanguageServer } from '../language-server.ts';
import { mayWriteFiles } from '../trust.ts';
import { counted } from './apply.ts';
import { pickKind } from './import-table.ts';

/** The command "Export Table": writes a table of all rigs of the workspace, with the columns that the import reads. */
export async function exportTable(server: LanguageServer): Promise<void> {
  if (!(await mayWriteFiles())) return;
  try {
    const kind = await pickKind('Export Table', 'What is the table to hold?');
    if (!kind) return;
    const home = workspace.workspaceFolders?.[0]?.uri;
    const file = await window.showSaveDialog({
      title: 'Export Table',
      filters: { Tables: ['csv'] },
      ...(home && { defaultUri: Uri.joinPath(home, `${kind}.csv`) }),
    });
    if (!file) return;
    const { table, rows } = await server.ask(exportTableAsk, { kind });
    await workspace.fs.writeFile(file, new TextEncoder().encode(table));
    await window.showTextDocument(file);
    void window.showInformationMessage(`${counted(rows, 'row')} written to ${workspace.asRelativePath(file)}.`);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    void window.showErrorMessage(`The table was not written: ${why}`);
  }
}
