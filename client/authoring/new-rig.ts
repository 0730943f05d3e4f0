import { commands, FileSystemError, Uri, WorkspaceEdit, type WorkspaceFolder, window, workspace } from 'vscode';
import { firstPolicy, firstPolicyName } from '../../language/authoring/first-policy.ts';
import { firstRecord } from '../../language/authoring/first-record.ts';
import { newRigAsk, recordInspectionCommand, roofPlanCommand } from '../../language/protocol/index.ts';
import type { LanguageServer } from '../language-server.ts';
import { mayWriteFiles } from '../trust.ts';
import { freeName } from './free-name.ts';
import { pickOne } from './inputs.ts';
import { emptyDraft, type Reader, recordOf, title } from './new-rig-draft.ts';
import { stepsFor } from './new-rig-steps.ts';
import { problemIn } from './read-answer.ts';
import { throughSteps } from './steps.ts';

const policyFile = 'policy.rig';

/**
 * The command "New Rig Record": asks what kind of rig it is, how large, what is on its roof, and writes a first record into
 * the chosen folder of the workspace. Never overwrites anything.
 */
export async function newRig(server: LanguageServer): Promise<void> {
  try {
    const folder = await chosenFolder();
    if (folder === undefined) return;
    const offers = await server.ask(newRigAsk, { folder: folder?.uri.toString() ?? null });
    const mayWritePolicy = folder !== null && !(await exists(Uri.joinPath(folder.uri, policyFile)));
    const reader: Reader = {
      name: problemIn(server, 'rig-name'),
      length: (text, atMost) => problemIn(server, 'length', atMost)(text),
      date: problemIn(server, 'rough-day'),
    };
    const draft = await throughSteps((so) => stepsFor(so, offers, reader, mayWritePolicy), emptyDraft);
    if (draft === undefined) return;
    const newPolicy = mayWritePolicy && !draft.policy && draft.wantsPolicy ? firstPolicyName : undefined;
    const text = firstRecord(recordOf(draft, newPolicy));
    if (folder === null) return await showUntitled(text);
    await write(folder, draft.name, text, newPolicy === undefined ? undefined : firstPolicy(draft.units));
  } catch (error) {
    void window.showErrorMessage(`No record was written: ${error instanceof Error ? error.message : String(error)}`);
  }
}

/** The folder to write into; `null`: no folder, an untitled document; undefined: nothing is to be written. */
async function chosenFolder(): Promise<WorkspaceFolder | null | undefined> {
  const folders = workspace.workspaceFolders ?? [];
  if (folders.length === 0) return withoutFolder();
  if (!(await mayWriteFiles())) return undefined;
  if (folders.length === 1) return folders[0];
  const reply = await pickOne({
    title,
    at: { step: 0, total: 0 },
    placeholder: 'Into which folder?',
    choices: folders.map((value) => ({ label: value.name, description: value.uri.path, value })),
  });
  return 'answer' in reply ? reply.answer : undefined;
}

async function withoutFolder(): Promise<null | undefined> {
  const [open, untitled] = ['Open Folder…', 'Untitled Document'];
  const picked = await window.showInformationMessage(
    'No folder is open for the record to lie in. Open one, or write into an untitled document and save that where you like.',
    open,
    untitled,
  );
  if (picked === open) await commands.executeCommand('workbench.action.files.openFolder');
  return picked === untitled ? null : undefined;
}

async function write(folder: WorkspaceFolder, name: string, text: string, policy: string | undefined): Promise<void> {
  const file = await freeName(name, (one) => exists(Uri.joinPath(folder.uri, one)));
  const uri = Uri.joinPath(folder.uri, file);
  const edit = new WorkspaceEdit();
  const create = (at: Uri, written: string) =>
    edit.createFile(at, { overwrite: false, contents: new TextEncoder().encode(written) });
  if (policy !== undefined) create(Uri.joinPath(folder.uri, policyFile), policy);
  create(uri, text);
  if (!(await workspace.applyEdit(edit))) {
    // What was answered is not to be lost, wherever it can go.
    await showUntitled(text);
    void window.showWarningMessage(
      `${file} could not be written into ${folder.name}: the record is in an untitled document.`,
    );
    return;
  }
  await window.showTextDocument(uri, { preview: false });
  void offerNext(file, uri, name);
}

async function offerNext(file: string, uri: Uri, name: string): Promise<void> {
  const ways = { 'Record Inspection': recordInspectionCommand, 'Show Roof Plan': roofPlanCommand };
  const picked = await window.showInformationMessage(
    `${file} is written. Its remarks say what to measure next.`,
    ...Object.keys(ways),
  );
  const command = picked === undefined ? undefined : ways[picked as keyof typeof ways];
  if (command !== undefined) await commands.executeCommand(command, { uri: uri.toString(), name });
}

async function showUntitled(content: string): Promise<void> {
  await window.showTextDocument(await workspace.openTextDocument({ language: 'rig', content }));
}

async function exists(uri: Uri): Promise<boolean> {
  try {
    await workspace.fs.stat(uri);
    return true;
  } catch (error) {
    if (error instanceof FileSystemError && error.code === 'FileNotFound') return false;
    throw error;
  }
}
