import { commands, languages, type QuickPickItem, Uri, window, workspace } from 'vscode';
import { rulePageUri, rulesAsk } from '../language/protocol/index.ts';
import type { LanguageServer } from './language-server.ts';
import { section } from './settings.ts';

/** The command "Explain Rule": the page of a rule, chosen from those that speak at the cursor, then all others. */
export async function explainRule(server: LanguageServer, argument: unknown): Promise<void> {
  const rule = typeof argument === 'string' ? argument : await chosen(server);
  if (rule === undefined) return;
  const page = Uri.parse(rulePageUri(rule));
  try {
    await commands.executeCommand('markdown.showPreview', page);
  } catch {
    // An editor without a preview of Markdown shows the text.
    await window.showTextDocument(await workspace.openTextDocument(page), { preview: true });
  }
}

async function chosen(server: LanguageServer): Promise<string | undefined> {
  const here = rulesAtCursor();
  let rules: Awaited<ReturnType<typeof all>>;
  try {
    rules = await all(server);
  } catch (error) {
    void window.showErrorMessage(`The rules could not be listed: ${error instanceof Error ? error.message : error}`);
    return undefined;
  }
  const items: (QuickPickItem & { readonly rule: string })[] = rules
    .map(({ name, severity, title }) => ({
      rule: name,
      label: name,
      description: here.includes(name) ? `${severity}, at the cursor` : severity,
      detail: title,
    }))
    .sort((a, b) => Number(here.includes(b.rule)) - Number(here.includes(a.rule)));
  const picked = await window.showQuickPick(items, {
    title: 'Explain Rule',
    placeHolder: 'Which rule?',
    matchOnDetail: true,
  });
  return picked?.rule;
}

const all = (server: LanguageServer) => server.ask(rulesAsk, {});

/** The rules that say something about the line of the cursor. */
function rulesAtCursor(): readonly string[] {
  const editor = window.activeTextEditor;
  if (!editor) return [];
  const { line } = editor.selection.active;
  return languages
    .getDiagnostics(editor.document.uri)
    .filter(({ source, range }) => source === section && range.start.line <= line && line <= range.end.line)
    .flatMap(({ code }) => (typeof code === 'object' ? String(code.value) : code === undefined ? [] : String(code)));
}
