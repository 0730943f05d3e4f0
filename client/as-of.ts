import { ConfigurationTarget, window, workspace } from 'vscode';
import { asOfProblem } from './as-of-date.ts';
import { section } from './settings.ts';

/** The command "Set As-of Date": asks for the date and keeps it in the workspace's settings. */
export async function setAsOf(): Promise<void> {
  const settings = workspace.getConfiguration(section);
  const answer = await window.showInputBox({
    title: 'As-of date',
    prompt: 'Figures, due dates and papers speak of this date; records after it are left out. Empty means today.',
    placeHolder: '2026-10-01',
    value: settings.get<string>('asOf', ''),
    validateInput: asOfProblem,
  });
  if (answer === undefined) return;
  // Without a workspace there is nowhere else to keep it than in the person's own settings.
  const target = workspace.workspaceFolders?.length ? ConfigurationTarget.Workspace : ConfigurationTarget.Global;
  const date = answer.trim();
  try {
    await settings.update('asOf', date === '' ? undefined : date, target);
  } catch (error) {
    void window.showErrorMessage(
      `The as-of date could not be saved (${messageOf(error)}). Set "rigseam.asOf" in the settings by hand.`,
    );
  }
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
