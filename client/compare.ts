import {
  commands,
  EventEmitter,
  type ExtensionContext,
  ProgressLocation,
  type TextDocumentContentProvider,
  Uri,
  window,
  workspace,
} from 'vscode';
import { compareAsk } from '../language/protocol/index.ts';
import type { LanguageServer } from './language-server.ts';
import { mayRunGit } from './trust.ts';

/** The scheme of comparisons: texts of the extension that lie on no disk and cannot be edited. */
const scheme = 'rigseam-compare';

/** The command "Compare with HEAD": what the texts as they are now change against a revision, beside the editor. */
export function comparisons(context: ExtensionContext, server: LanguageServer): () => Promise<void> {
  const texts = new Map<string, string>();
  const changed = new EventEmitter<Uri>();
  const provider: TextDocumentContentProvider = {
    onDidChange: changed.event,
    provideTextDocumentContent: (uri) => texts.get(uri.path) ?? '',
  };
  context.subscriptions.push(changed, workspace.registerTextDocumentContentProvider(scheme, provider));

  return async () => {
    const about = subject();
    if (!about) {
      void window.showInformationMessage('There is nothing to compare: open a folder with rig files first.');
      return;
    }
    if (about.scheme !== 'file') {
      void window.showWarningMessage(
        'Revisions are read by git on the machine that holds the files. Here the editor alone knows them: open the folder on the desktop, or call `rigseam compare`.',
      );
      return;
    }
    if (!(await mayRunGit())) return;
    const revision = await window.showInputBox({
      title: 'Compare with which revision?',
      prompt: 'A branch, a tag or a commit. Unsaved text counts as it stands.',
      value: 'HEAD',
      validateInput: (text) => (text.trim() === '' ? 'Name a revision, such as HEAD or main.' : undefined),
    });
    if (revision === undefined) return;
    const markdown = await compared(server, about, revision.trim());
    if (markdown === undefined) return;
    const page = Uri.from({ scheme, path: `/${revision.trim().replace(/[\\/:?#]+/g, '-')} to now.md` });
    texts.set(page.path, markdown);
    changed.fire(page);
    await show(page);
  };
}

/** The file in the editor, else the first folder of the workspace. */
function subject(): Uri | undefined {
  const document = window.activeTextEditor?.document;
  const folder = workspace.workspaceFolders?.[0]?.uri;
  return document?.languageId === 'rig' && !document.isUntitled ? document.uri : folder;
}

async function compared(server: LanguageServer, about: Uri, revision: string): Promise<string | undefined> {
  const options = {
    location: ProgressLocation.Notification,
    title: `Comparing with ${revision}`,
    cancellable: true,
  } as const;
  try {
    const reply = await window.withProgress(options, (_, token) =>
      server.ask(compareAsk, { uri: about.toString(), revision }, token),
    );
    if (reply.kind === 'compared') return reply.markdown;
    void window.showErrorMessage(reply.because);
  } catch (error) {
    const said = error instanceof Error ? error.message : String(error);
    // Whoever called it off knows.
    if (!/called off|cancel/i.test(said)) void window.showErrorMessage(`The comparison failed: ${said}`);
  }
  return undefined;
}

async function show(page: Uri): Promise<void> {
  try {
    await commands.executeCommand('markdown.showPreviewToSide', page);
  } catch {
    // An editor without a preview of Markdown shows the text.
    const document = await workspace.openTextDocument(page);
    await window.showTextDocument(document, { viewColumn: -2, preview: true });
  }
}
