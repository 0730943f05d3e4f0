import { type CancellationToken, commands, ProgressLocation, Uri, window, workspace } from 'vscode';
import { type Delivery, deliver } from '../language/documents/delivery.ts';
import {
  type DocumentFile,
  type DocumentsReply,
  papersAsk,
  type Target,
  writeArgumentSchema,
} from '../language/protocol/index.ts';
import { askAboutEdited } from './edited-files.ts';
import type { LanguageServer } from './language-server.ts';
import { outputFolderProblem } from './output-folder.ts';
import { outputFolderSetting } from './settings.ts';
import { mayWriteFiles } from './trust.ts';
import { folderAt, homeOf } from './workspace-folder.ts';

/** What one of the writing commands writes. */
export interface Wanted {
  /** In the words of messages: `estimate and schedule`. */
  readonly what: string;
  readonly only?: 'sheets';
  /** Shows the first of the written papers, and names ways to the others. */
  shows(names: readonly string[], folder: Uri): Promise<Ways>;
}

/** Buttons of a message, each with what it does. */
export type Ways = Readonly<Record<string, () => Thenable<unknown>>>;

/**
 * A command that writes papers. From a code lens it gets the file and the rig; from the palette it takes the open file.
 * Whatever goes wrong is said in a message with a way out; nothing is thrown.
 */
export async function write(server: LanguageServer, wanted: Wanted, argument: unknown): Promise<void> {
  const asked = writeArgumentSchema.safeParse(argument);
  const editor = window.activeTextEditor?.document;
  const uri = asked.success ? Uri.parse(asked.data.uri) : editor?.languageId === 'rig' ? editor.uri : undefined;
  if (uri === undefined) {
    void window.showInformationMessage(`Open the .rig file whose ${wanted.what} you want, then run this again.`);
    return;
  }
  if (!(await mayWriteFiles())) return;
  const setting = outputFolderSetting(uri);
  const wrong = outputFolderProblem(setting);
  if (wrong !== undefined) {
    await offer('error', wrong, {
      'Open Settings': () => commands.executeCommand('workbench.action.openSettings', 'rigseam.outputFolder'),
    });
    return;
  }
  const name = asked.success ? asked.data.name : undefined;
  try {
    const folder = Uri.joinPath(homeOf(uri), setting);
    const files = await documentsOf(server, wanted, uri, folder, name === undefined ? undefined : [name]);
    if (files === undefined) return;
    const delivery = await deliver(files, folderAt(folder), askAboutEdited);
    if (delivery !== undefined) await report(wanted, delivery, folder);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    await offer('error', `Not written: ${wanted.what}. ${why}`, {
      'Restart Language Server': () => commands.executeCommand('rigseam.restart'),
    });
  }
}

/** The papers to write, after asking which rig is meant where the file holds several; undefined when there are none. */
async function documentsOf(
  server: LanguageServer,
  wanted: Wanted,
  uri: Uri,
  folder: Uri,
  names: readonly string[] | undefined,
): Promise<readonly DocumentFile[] | undefined> {
  const { what, only } = wanted;
  const request = { uri: uri.toString(), folder: folder.toString(), ...(names && { names }), ...(only && { only }) };
  const reply = await withProgress(what, async (token) => server.ask(papersAsk, request, token));
  if (reply === undefined) return undefined;
  if (reply.kind === 'choose') {
    const chosen = await choose(what, reply.targets);
    return chosen && documentsOf(server, wanted, uri, folder, chosen);
  }
  if (reply.problems.length > 0) await showProblems(reply.files.length, reply.problems);
  if (reply.notes) void window.showInformationMessage(reply.notes.join(' '));
  return reply.files.length > 0 ? reply.files : undefined;
}

/** Shows progress that can be cancelled; undefined when it was. */
async function withProgress(
  what: string,
  work: (token: CancellationToken) => Promise<DocumentsReply>,
): Promise<DocumentsReply | undefined> {
  return window.withProgress(
    { location: ProgressLocation.Notification, title: `Writing ${what}`, cancellable: true },
    async (_, token) => {
      try {
        const reply = await work(token);
        return token.isCancellationRequested ? undefined : reply;
      } catch (error) {
        if (token.isCancellationRequested) return undefined;
        throw error;
      }
    },
  );
}

async function choose(what: string, targets: readonly Target[]): Promise<readonly string[] | undefined> {
  const all = { label: `All ${targets.length}`, description: '', names: targets.map((target) => target.name) };
  const each = targets.map(({ name, kind }) => ({ label: name, description: kind, names: [name] }));
  const picked = await window.showQuickPick([all, ...each], {
    title: `Write ${what}`,
    placeHolder: 'Of which rig or fleet?',
  });
  return picked?.names;
}

async function showProblems(files: number, problems: readonly string[]): Promise<void> {
  const shown = problems.slice(0, 3).join(' ');
  const more = problems.length > 3 ? ` And ${problems.length - 3} more.` : '';
  const beginning = files > 0 ? 'Not everything could be written.' : 'Nothing was written.';
  const message = offer(files > 0 ? 'warning' : 'error', `${beginning} ${shown}${more}`, {
    'Show Problems': () => commands.executeCommand('workbench.actions.view.problems'),
  });
  // Where there is something to write the message must not hold it up.
  if (files === 0) await message;
}

/** Shows the first paper and says what was done. */
async function report(wanted: Wanted, delivery: Delivery, folder: Uri): Promise<void> {
  const ways = await wanted.shows([...delivery.written, ...delivery.unchanged, ...delivery.kept], folder);
  const counts = [
    `${delivery.written.length} written`,
    delivery.unchanged.length > 0 ? `${delivery.unchanged.length} already up to date` : '',
    delivery.kept.length > 0 ? `${delivery.kept.length} kept as edited` : '',
  ];
  const what = `${wanted.what[0]?.toUpperCase()}${wanted.what.slice(1)}`;
  void offer(
    'information',
    `${what} in ${workspace.asRelativePath(folder, false)}: ${counts.filter(Boolean).join(', ')}.`,
    ways,
  );
}

/** A message with buttons, each doing what it says. */
async function offer(kind: 'information' | 'warning' | 'error', message: string, ways: Ways): Promise<void> {
  const show = {
    information: window.showInformationMessage,
    warning: window.showWarningMessage,
    error: window.showErrorMessage,
  }[kind];
  const picked = await show(message, ...Object.keys(ways));
  if (picked !== undefined) await ways[picked]?.();
}
