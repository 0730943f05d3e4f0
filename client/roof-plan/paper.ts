// The plan on a disk and on paper.
import { type ExtensionContext, env, UIKind, Uri, window, workspace } from 'vscode';
import { type RigAddress, type RoofPlanBy, roofPaperAsk } from '../../language/protocol/index.ts';
import type { LanguageServer } from '../language-server.ts';
import { outputFolderProblem } from '../output-folder.ts';
import { outputFolderSetting } from '../settings.ts';
import { mayWriteFiles } from '../trust.ts';
import { homeOf } from '../workspace-folder.ts';
import type { Download } from './messages.ts';

type Wanted = RigAddress & { readonly by: RoofPlanBy };

/** Saves the picture where a person says; the same as among the papers. */
export async function savePlan(server: LanguageServer, wanted: Wanted): Promise<void> {
  if (!(await mayWriteFiles())) return;
  const { name, text } = await paperOf(server, wanted, 'svg');
  const target = await window.showSaveDialog({
    title: 'Save Roof Plan',
    defaultUri: Uri.joinPath(await folderOf(Uri.parse(wanted.uri)), name),
    filters: { Picture: ['svg'] },
  });
  if (target === undefined) return;
  await workspace.fs.writeFile(target, new TextEncoder().encode(text));
  void window.showInformationMessage(`Saved ${workspace.asRelativePath(target, false)}.`);
}

/** Where the papers are, if there are any: dialogs begin only in a folder that is there. */
async function folderOf(file: Uri): Promise<Uri> {
  const [home, setting] = [homeOf(file), outputFolderSetting(file)];
  if (outputFolderProblem(setting) !== undefined) return home;
  const papers = Uri.joinPath(home, setting);
  const isThere = await workspace.fs.stat(papers).then(
    () => true,
    () => false,
  );
  return isThere ? papers : home;
}

/**
 * Prints by way of a browser, for a panel of the editor cannot print. On the desktop the page is opened there; where the
 * editor itself runs in a browser, or its files lie on another machine, that browser saves the page.
 */
export async function printPlan(
  server: LanguageServer,
  wanted: Wanted,
  { globalStorageUri }: ExtensionContext,
  download: (file: Download) => void,
): Promise<void> {
  const { name, text } = await paperOf(server, wanted, 'page');
  if (env.uiKind === UIKind.Desktop && env.remoteName === undefined) {
    const page = Uri.joinPath(globalStorageUri, name);
    await workspace.fs.writeFile(page, new TextEncoder().encode(text));
    if (await env.openExternal(page)) return;
  }
  download({ kind: 'download', name, text });
  void window.showInformationMessage(`${name} is downloaded: open it in a browser and print it from there.`);
}

async function paperOf(server: LanguageServer, { uri, name, by }: Wanted, form: 'svg' | 'page') {
  const paper = await server.ask(roofPaperAsk, { uri, name, by, form });
  if (paper === null) throw new Error(`the file has no rig \`${name}\` now.`);
  return paper;
}
