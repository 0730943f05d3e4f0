import { commands, window, workspace } from 'vscode';

/** Whether files may be written; where not, says why and offers the way out. */
export const mayWriteFiles = (): Promise<boolean> =>
  isTrusted('Writing files needs a trusted workspace. Checking goes on without.');

/** Whether git may be run, which does what the repository tells it to. */
export const mayRunGit = (): Promise<boolean> =>
  isTrusted('Reading revisions runs git, which needs a trusted workspace. Checking goes on without.');

async function isTrusted(why: string): Promise<boolean> {
  if (workspace.isTrusted) return true;
  const manage = 'Manage Workspace Trust';
  const picked = await window.showWarningMessage(why, manage);
  if (picked === manage) await commands.executeCommand('workbench.trust.manage');
  return false;
}
