// The plans of roofs that are shown beside the text: one panel for each rig, which stays with its rig.
import {
  type Disposable,
  type ExtensionContext,
  type TextEditor,
  Uri,
  ViewColumn,
  type WebviewPanel,
  window,
} from 'vscode';
import { type RigAddress, roofSpotAsk } from '../../language/protocol/index.ts';
import type { LanguageServer } from '../language-server.ts';
import { type Kept, keptSchema } from './messages.ts';
import { type Plan, planIn } from './plan.ts';

/** The kind of the panels; the manifest wakes the extension for those that were open before a restart. */
const panelKind = 'rigseam.roofPlan';

/** How long the cursor rests before its seam lights up, in milliseconds: not on every key that is held. */
const rest = 60;

export interface RoofPlans extends Disposable {
  /** Shows the plan of a rig beside the text, or brings it forward. */
  show(rig: RigAddress, item?: string): void;
}

/** Keeps all plans in step with the texts and their cursors. */
export function roofPlans(context: ExtensionContext, server: LanguageServer): RoofPlans {
  const open = new Map<string, Plan>();
  const scripts = Uri.joinPath(context.extensionUri, 'dist');
  const options = { enableScripts: true, localResourceRoots: [scripts] };
  let timer: ReturnType<typeof setTimeout> | undefined;

  const begin = (panel: WebviewPanel, kept: Kept): Plan => {
    panel.webview.options = options;
    panel.iconPath = Uri.joinPath(context.extensionUri, 'client', 'icon.png');
    const plan = planIn(panel, kept, server, context, Uri.joinPath(scripts, 'roof-plan.js'));
    open.set(keyOf(kept), plan);
    panel.onDidDispose(() => {
      if (open.get(keyOf(kept)) === plan) open.delete(keyOf(kept));
    });
    follow(window.activeTextEditor);
    return plan;
  };

  const follow = (editor: TextEditor | undefined) => {
    if (editor?.document.languageId !== 'rig' || open.size === 0) return;
    clearTimeout(timer);
    timer = setTimeout(() => void light(editor).catch(() => undefined), rest);
  };
  /** Lights up what the cursor speaks of. Rejects while no server runs: the next move of the cursor asks again. */
  const light = async ({ document, selection }: TextEditor) => {
    const { line, character } = selection.active;
    const { rig, items } = await server.ask(roofSpotAsk, {
      uri: document.uri.toString(),
      position: { line, character },
    });
    for (const [key, plan] of open) plan.light(rig && keyOf(rig) === key ? items : []);
  };

  const listeners = [
    window.onDidChangeTextEditorSelection(({ textEditor }) => follow(textEditor)),
    window.onDidChangeActiveTextEditor(follow),
    server.onStale(() => {
      for (const plan of open.values()) plan.refresh();
      follow(window.activeTextEditor);
    }),
    window.registerWebviewPanelSerializer(panelKind, {
      async deserializeWebviewPanel(panel, state) {
        const kept = keptSchema.safeParse(state);
        if (kept.success && !open.has(keyOf(kept.data))) begin(panel, kept.data);
        else panel.dispose();
      },
    }),
  ];

  return {
    show(rig, item) {
      const plan =
        open.get(keyOf(rig)) ??
        begin(
          window.createWebviewPanel(
            panelKind,
            `Roof of ${rig.name}`,
            { viewColumn: ViewColumn.Beside, preserveFocus: true },
            options,
          ),
          { uri: rig.uri, name: rig.name, by: 'condition' },
        );
      plan.reveal();
      if (item !== undefined) plan.light([item]);
    },
    dispose() {
      clearTimeout(timer);
      for (const each of listeners) each.dispose();
    },
  };
}

const keyOf = ({ uri, name }: RigAddress): string => `${Uri.parse(uri).toString()}\n${name}`;
