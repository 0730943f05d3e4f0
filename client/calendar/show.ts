import { Uri, window, workspace } from 'vscode';
import { type CalendarAddress, calendarAddressSchema, calendarSubjectsAsk } from '../../language/protocol/index.ts';
import type { LanguageServer } from '../language-server.ts';
import type { Calendars } from './panels.ts';

/**
 * The command "Show Fleet Calendar": of the fleet or rig of a lens; else of what the open file declares; else of a fleet or
 * a rig of the workspace.
 */
export async function showCalendar(server: LanguageServer, calendars: Calendars, argument: unknown): Promise<void> {
  const asked = calendarAddressSchema.safeParse(argument);
  try {
    const of = asked.success ? asked.data : await chosen(server);
    if (of) calendars.show({ uri: Uri.parse(of.uri).toString(), name: of.name });
  } catch (error) {
    void window.showErrorMessage(
      `The calendar cannot be shown: ${error instanceof Error ? error.message : String(error)}`,
    );
  }
}

async function chosen(server: LanguageServer): Promise<CalendarAddress | undefined> {
  const editor = window.activeTextEditor;
  const uri = editor?.document.languageId === 'rig' ? editor.document.uri.toString() : undefined;
  const here = uri === undefined ? [] : await server.ask(calendarSubjectsAsk, { uri });
  // A file of materials has none: then all of the workspace are offered.
  const subjects = here.length > 0 ? here : await server.ask(calendarSubjectsAsk, {});
  if (subjects.length <= 1) {
    if (subjects[0]) return subjects[0];
    void window.showInformationMessage('No fleet and no rig was found in this workspace: write a rig first.');
    return undefined;
  }
  const picked = await window.showQuickPick(
    subjects.map((subject) => ({
      label: subject.name,
      description: `${subject.kind}, ${workspace.asRelativePath(Uri.parse(subject.uri))}`,
      subject,
    })),
    { title: 'Calendar of which fleet or rig?', matchOnDescription: true },
  );
  return picked?.subject;
}
