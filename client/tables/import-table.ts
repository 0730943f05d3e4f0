import {
  Diagnostic,
  type DiagnosticCollection,
  DiagnosticSeverity,
  type Disposable,
  languages,
  Range,
  Uri,
  window,
  workspace,
} from 'vscode';
import { calendarSubjectsAsk, importTableAsk } from '../../language/protocol/index.ts';
import { type TableKind, tableKinds } from '../../language/tables/kinds.ts';
import { pickOne } from '../authoring/inputs.ts';
import type { LanguageServer } from '../language-server.ts';
import { mayWriteFiles } from '../trust.ts';
import { applied, counted } from './apply.ts';

const title = 'Import Table';
let found: DiagnosticCollection | undefined;

const about: Readonly<Record<TableKind, string>> = {
  rigs: 'rig, like, under, group, unit, vin, built, in-service, acquired, kept-until, day-rate, length, width, membrane',
  seams: 'rig, kind, name, size, at, on, wide, length, of, more, note, sealed, sealant, taped, tape',
  inspections: 'rig, date, by, item, stretch, condition, defect, moisture, note',
};

/**
 * The command "Import Table": reads a table of the workspace into records, as one edit, after the editor has shown what would
 * change. What is wrong with a row stands among the problems, at its cell.
 */
export async function importTable(server: LanguageServer): Promise<void> {
  if (!(await mayWriteFiles())) return;
  try {
    const kind = await pickKind(title, 'What does the table hold?');
    const table = kind && (await pickTable());
    const folder = table && (kind === 'rigs' ? await pickFolder(server, table) : Uri.joinPath(table, '..'));
    if (!kind || !table || !folder) return;
    const document = await workspace.openTextDocument(table);
    const reply = await server.ask(importTableAsk, { kind, text: document.getText(), folder: folder.toString() });
    show(table, reply.problems);
    const errors = reply.problems.filter((problem) => problem.kind === 'error').length;
    const sum = `${counted(reply.added, 'row')} new, ${reply.there} already there.`;
    const problems =
      reply.problems.length > 0 ? ` ${counted(reply.problems.length, 'problem')}: see the Problems panel.` : '';
    if (errors > 0) void window.showWarningMessage(`${sum}${problems}`);
    else void window.showInformationMessage(`${sum}${problems}`);
    if (reply.changes.length > 0) await applied(reply.changes, `Rigseam: ${workspace.asRelativePath(table)}`, table);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    void window.showErrorMessage(`The table was not imported: ${why}`);
  }
}

export async function pickKind(of: string, placeholder: string): Promise<TableKind | undefined> {
  const reply = await pickOne({
    title: of,
    at: { step: 0, total: 0 },
    placeholder,
    choices: tableKinds.map((value) => ({ label: value, detail: `Columns: ${about[value]}`, value })),
  });
  return 'answer' in reply ? reply.answer : undefined;
}

/** A table of the workspace, the one in front first, or another. */
async function pickTable(): Promise<Uri | undefined> {
  const active = window.activeTextEditor?.document.uri;
  const tables = await workspace.findFiles('**/*.csv', undefined, 500);
  const sorted = tables.sort((a, b) => Number(b.path === active?.path) - Number(a.path === active?.path));
  const reply = await pickOne<Uri | 'other'>({
    title,
    at: { step: 0, total: 0 },
    placeholder: 'Which table? CSV, with the names of its columns in the first row.',
    choices: [
      ...sorted.map((value) => ({ label: workspace.asRelativePath(value), value })),
      { label: '$(folder-opened) Another file …', value: 'other' as const },
    ],
  });
  if (!('answer' in reply)) return undefined;
  if (reply.answer !== 'other') return reply.answer;
  const [chosen] = (await window.showOpenDialog({ title, filters: { Tables: ['csv'] } })) ?? [];
  return chosen;
}

/** Where new rigs go: where others are, or beside the table. */
async function pickFolder(server: LanguageServer, table: Uri): Promise<Uri | undefined> {
  const subjects = await server.ask(calendarSubjectsAsk, {});
  const folders = new Map<string, Uri>();
  for (const uri of [...subjects.filter(({ kind }) => kind === 'rig').map(({ uri }) => Uri.parse(uri)), table]) {
    const folder = Uri.joinPath(uri, '..');
    folders.set(folder.toString(), folder);
  }
  if (folders.size === 1) return [...folders.values()][0];
  const reply = await pickOne({
    title,
    at: { step: 0, total: 0 },
    placeholder: 'Where do the files of new rigs go?',
    choices: [...folders.values()].map((value) => ({ label: workspace.asRelativePath(value), value })),
  });
  return 'answer' in reply ? reply.answer : undefined;
}

/** Until the table is imported again, or edited. */
function show(
  table: Uri,
  problems: readonly { range: { start: Place; end: Place }; kind: 'error' | 'differs'; message: string }[],
): void {
  found ??= languages.createDiagnosticCollection('rigseam-import');
  found.set(
    table,
    problems.map(({ range: { start, end }, kind, message }) => {
      const severity = kind === 'error' ? DiagnosticSeverity.Error : DiagnosticSeverity.Warning;
      const at = new Range(start.line, start.character, end.line, end.character);
      return Object.assign(new Diagnostic(at, message, severity), { source: 'rigseam' });
    }),
  );
}
interface Place {
  readonly line: number;
  readonly character: number;
}

/** What was said of a table goes when it is edited: its places are no longer right. */
export const forgetImports = (): Disposable =>
  workspace.onDidChangeTextDocument(({ document }) => found?.delete(document.uri));
