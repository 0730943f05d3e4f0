import { commands, type ExtensionContext, window } from 'vscode';
import {
  addRecordCommand,
  calendarCommand,
  exportTableCommand,
  goToCommand,
  importTableCommand,
  newRigCommand,
  recordInspectionCommand,
  roofPlanCommand,
  writeCommand,
  writeSheetsCommand,
} from '../language/protocol/index.ts';
import { setAsOf } from './as-of.ts';
import { newRig } from './authoring/new-rig.ts';
import { recordInspection } from './authoring/record-inspection.ts';
import { calendars } from './calendar/panels.ts';
import { showCalendar } from './calendar/show.ts';
import { comparisons } from './compare.ts';
import { explainRule } from './explain-rule.ts';
import { goTo } from './go-to.ts';
import { type LanguageServer, languageServer } from './language-server.ts';
import { allPapers, sheets } from './papers.ts';
import { roofPlans } from './roof-plan/panels.ts';
import { showRoofPlan } from './roof-plan/show.ts';
import { statusBar } from './status.ts';
import { addRecordToRigs } from './tables/add-record.ts';
import { exportTable } from './tables/export-table.ts';
import { forgetImports, importTable } from './tables/import-table.ts';
import { followTables } from './tables/open-tables.ts';
import { write } from './write.ts';

/** Called by the editor when the first rig file is opened, or when a workspace holds one. */
export async function activate(context: ExtensionContext): Promise<void> {
  const status = statusBar();
  const server = languageServer(context, status.show);
  const plans = roofPlans(context, server);
  const months = calendars(context, server);
  context.subscriptions.push(
    status,
    server,
    plans,
    months,
    followTables(server),
    forgetImports(),
    commands.registerCommand(writeCommand, (argument?: unknown) => write(server, allPapers, argument)),
    commands.registerCommand(writeSheetsCommand, (argument?: unknown) => write(server, sheets, argument)),
    commands.registerCommand(goToCommand, (argument?: unknown) => goTo(argument)),
    commands.registerCommand(roofPlanCommand, (argument?: unknown) => showRoofPlan(server, plans, argument)),
    commands.registerCommand(calendarCommand, (argument?: unknown) => showCalendar(server, months, argument)),
    commands.registerCommand(newRigCommand, () => newRig(server)),
    commands.registerCommand(recordInspectionCommand, (argument?: unknown) => recordInspection(server, argument)),
    commands.registerCommand('rigseam.compare', comparisons(context, server)),
    commands.registerCommand(addRecordCommand, () => addRecordToRigs(server)),
    commands.registerCommand(importTableCommand, () => importTable(server)),
    commands.registerCommand(exportTableCommand, () => exportTable(server)),
    commands.registerCommand('rigseam.setAsOf', setAsOf),
    commands.registerCommand('rigseam.explainRule', (rule?: unknown) => explainRule(server, rule)),
    commands.registerCommand('rigseam.restart', () => start(server)),
  );
  await commands.executeCommand('setContext', 'rigseam.active', true);
  await start(server);
}

async function start(server: LanguageServer): Promise<void> {
  try {
    await server.restart();
  } catch (error) {
    void sayNotStarted(server, error);
  }
}

async function sayNotStarted(server: LanguageServer, error: unknown): Promise<void> {
  const why = error instanceof Error ? error.message : String(error);
  const again = 'Try Again';
  const picked = await window.showErrorMessage(`The Rigseam language server did not start: ${why}`, again);
  if (picked === again) await start(server);
}
