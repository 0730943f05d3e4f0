import { commands, window, workspace } from 'vscode';

/** Whether files may be written; where not, says why and offers the way out. */
export async function mayWriteFiles(): Promise<boolean> {
  if (workspace.isTrusted) return true;
  const manage = 'Manage Workspace Trust';
  const picked = await window.showWarningMessage(
    'Writing files needs a trusted workspace. Checking goes on without.',
    manage,
  );
  if (picked === manage) await commands.executeCommand('workbench.trust.manage');
  return false;
}
