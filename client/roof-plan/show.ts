import { Uri, window } from 'vscode';
import { type RigAddress, roofPlanArgumentSchema, roofSpotAsk } from '../../language/protocol/index.ts';
import type { LanguageServer } from '../language-server.ts';
import type { RoofPlans } from './panels.ts';

/** The command "Show Roof Plan": of the rig of a lens, else of the rig at the cursor, the only one of the file, or a chosen one. */
export async function showRoofPlan(server: LanguageServer, plans: RoofPlans, argument: unknown): Promise<void> {
  const asked = roofPlanArgumentSchema.safeParse(argument);
  try {
    const rig = asked.success ? asked.data : await rigHere(server);
    if (rig) plans.show(rig, asked.success ? asked.data.item : undefined);
  } catch (error) {
    void window.showErrorMessage(
      `The roof plan cannot be shown: ${error instanceof Error ? error.message : String(error)}`,
    );
  }
}

async function rigHere(server: LanguageServer): Promise<RigAddress | undefined> {
  const editor = window.activeTextEditor;
  if (editor?.document.languageId !== 'rig') {
    void window.showInformationMessage('Open the .rig file whose roof you want to see, then run this again.');
    return undefined;
  }
  const uri = editor.document.uri.toString();
  const { line, character } = editor.selection.active;
  const { rig, rigs } = await server.ask(roofSpotAsk, { uri, position: { line, character } });
  if (rig) return rig;
  if (rigs.length === 0) {
    void window.showInformationMessage('This file declares no rig: put the cursor into a rig or into its records.');
    return undefined;
  }
  const name =
    rigs.length === 1 ? rigs[0] : await window.showQuickPick([...rigs], { title: 'Roof plan of which rig?' });
  return name === undefined ? undefined : { uri: Uri.parse(uri).toString(), name };
}
