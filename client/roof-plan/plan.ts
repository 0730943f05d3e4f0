// One plan in its panel: what it shows, and what a person does there.
import { type ExtensionContext, Range, Uri, ViewColumn, type WebviewPanel, window } from 'vscode';
import { type RigAddress, type RoofPlan, roofLineAsk, roofPlanAsk } from '../../language/protocol/index.ts';
import type { LanguageServer } from '../language-server.ts';
import { pageText } from '../page-text.ts';
import { type FromPage, fromPageSchema, type Kept, type ToPage } from './messages.ts';
import { nextNote } from './note.ts';
import { printPlan, savePlan } from './paper.ts';
import { style } from './style.ts';

export interface Plan {
  /** What it shows may have changed. */
  refresh(): void;
  /** The seams that the cursor speaks of. */
  light(items: readonly string[]): void;
  reveal(): void;
}

/** Fills a panel with the plan of a rig and keeps it filled until it is closed. */
export function planIn(
  panel: WebviewPanel,
  kept: Kept,
  server: LanguageServer,
  context: ExtensionContext,
  script: Uri,
): Plan {
  const rig = { uri: kept.uri, name: kept.name };
  let { by } = kept;
  let shown: { readonly plan?: RoofPlan; readonly note: string } = { note: '' };
  let lit: readonly string[] = [];
  let asked: 'not' | 'once' | 'again' = 'not';
  let isReady = false;

  const post = (message: ToPage) => void panel.webview.postMessage(message);
  const tell = () => {
    if (isReady) post({ kind: 'show', rig, by, lit, ...shown });
  };
  const ask = async () => {
    try {
      shown = nextNote(shown.plan, await server.ask(roofPlanAsk, rig), rig.name);
    } catch {
      // Until the next server runs: it says itself why it does not.
      shown = { ...shown, note: shown.plan ? 'This is the plan from before: the language server is not running.' : '' };
    }
    tell();
  };
  const refresh = async () => {
    if (asked !== 'not') {
      asked = 'again';
      return;
    }
    do {
      asked = 'once';
      await ask();
    } while (isAskedAgain());
    asked = 'not';
  };
  const isAskedAgain = () => asked === 'again';

  const act = async (done: FromPage): Promise<void> => {
    switch (done.kind) {
      case 'ready':
        isReady = true;
        tell();
        return;
      case 'by':
        by = done.by;
        tell();
        return;
      case 'go':
        return goToLine(server, { ...rig, item: done.item });
      case 'save':
        return savePlan(server, { ...rig, by });
      case 'print':
        return printPlan(server, { ...rig, by }, context, post);
    }
  };
  panel.webview.onDidReceiveMessage(async (message: unknown) => {
    const done = fromPageSchema.safeParse(message);
    if (!done.success) return;
    try {
      await act(done.data);
    } catch (error) {
      void window.showErrorMessage(`The roof plan: ${error instanceof Error ? error.message : String(error)}`);
    }
  });
  panel.webview.html = pageText({
    title: panel.title,
    style,
    script: panel.webview.asWebviewUri(script).toString(),
  });
  void refresh();

  return {
    refresh: () => void refresh(),
    light(items) {
      if (items.join('\n') === lit.join('\n')) return;
      lit = items;
      tell();
    },
    reveal: () => panel.reveal(undefined, true),
  };
}

async function goToLine(server: LanguageServer, seam: RigAddress & { readonly item: string }): Promise<void> {
  const place = await server.ask(roofLineAsk, seam);
  if (place === null) return;
  // Only the cursor: a selection to the end of a long line would scroll it aside.
  const { line, character } = place.range.start;
  const uri = Uri.parse(place.uri);
  const beside = window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri.toString());
  await window.showTextDocument(uri, {
    viewColumn: beside?.viewColumn ?? ViewColumn.One,
    selection: new Range(line, character, line, character),
  });
}
