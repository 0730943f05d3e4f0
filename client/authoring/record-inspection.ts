import { Range, Selection, TextEditorRevealType, Uri, WorkspaceEdit, window, workspace } from 'vscode';
import { inspectionLines, type SaidInspection } from '../../language/authoring/inspection-block.ts';
import {
  calendarAddressSchema,
  calendarSubjectsAsk,
  inspectionAsk,
  type RigAddress,
  roofSpotAsk,
  type WalkReply,
  walkAsk,
} from '../../language/protocol/index.ts';
import type { LanguageServer } from '../language-server.ts';
import { pickOne, typed } from './inputs.ts';
import { problemIn } from './read-answer.ts';
import { besides, goTo, isWaiting, itemAt, type Round, restIsSound, say, startRound, takeBack } from './said-so-far.ts';
import { askAt, askBeside } from './station.ts';
import { throughSteps } from './steps.ts';

const title = 'Record Inspection';

/**
 * The command "Record Inspection": walks the seams of a rig in the order of the inspection sheet and writes what was said as
 * one change, which can be undone, behind the last thing that happened.
 */
export async function recordInspection(server: LanguageServer, argument: unknown): Promise<void> {
  const asked = calendarAddressSchema.safeParse(argument);
  try {
    const rig = asked.success ? asked.data : await chosenRig(server);
    if (rig === undefined) return;
    const walk = await server.ask(walkAsk, rig);
    if (walk === null || walk.stations.length === 0) {
      void window.showInformationMessage(`${rig.name} has no seams yet: write its roof and what stands on it first.`);
      return;
    }
    const heading = await askHeading(server, walk);
    const said = heading && (await goRound(server, walk));
    if (said) await writeOrKeep(server, rig, walk, { ...heading, ...said });
  } catch (error) {
    void window.showErrorMessage(
      `The inspection was not written: ${error instanceof Error ? error.message : String(error)}`,
    );
  }
}

/** The rig at the cursor, the only one of the file or of the workspace, or a chosen one. */
async function chosenRig(server: LanguageServer): Promise<RigAddress | undefined> {
  const editor = window.activeTextEditor;
  const uri = editor?.document.languageId === 'rig' ? editor.document.uri.toString() : undefined;
  if (editor && uri !== undefined) {
    const { line, character } = editor.selection.active;
    const { rig } = await server.ask(roofSpotAsk, { uri, position: { line, character } });
    if (rig) return rig;
  }
  const inFile = uri === undefined ? [] : await rigsOf(server, { uri });
  const rigs = inFile.length > 0 ? inFile : await rigsOf(server, {});
  if (rigs.length === 0)
    void window.showInformationMessage('No rig was found in this workspace: run "Rigseam: New Rig Record" first.');
  if (rigs.length <= 1) return rigs[0];
  const reply = await pickOne({
    title,
    at: { step: 0, total: 0 },
    placeholder: 'Which rig was inspected?',
    choices: rigs.map((value) => ({
      label: value.name,
      description: workspace.asRelativePath(Uri.parse(value.uri)),
      value,
    })),
  });
  return 'answer' in reply ? reply.answer : undefined;
}

const rigsOf = async (server: LanguageServer, of: { uri?: string }): Promise<readonly RigAddress[]> =>
  (await server.ask(calendarSubjectsAsk, of))
    .filter(({ kind }) => kind === 'rig')
    .map(({ uri, name }) => ({ uri, name }));

/** Who looked, and when. */
function askHeading(server: LanguageServer, walk: WalkReply): Promise<{ by: string; date: string } | undefined> {
  const titled = `${title}: ${walk.name}`;
  return throughSteps(
    () => [
      async ({ by }, at) => {
        const reply = await typed({
          title: titled,
          at,
          prompt: 'Who looked? Empty: nobody is named.',
          placeholder: 'K. Osei',
          value: by,
        });
        return 'answer' in reply ? { by: reply.answer } : undefined;
      },
      async ({ date }, at) => {
        const reply = await typed({
          title: titled,
          at,
          prompt: 'On which day?',
          placeholder: walk.date,
          value: date,
          problem: problemIn(server, 'day'),
        });
        return 'answer' in reply ? { date: reply.answer } : undefined;
      },
    ],
    { by: walk.people[0] ?? '', date: walk.date },
  );
}

type Said = Pick<SaidInspection, 'said' | 'restIsSound'>;

/** Goes round until the last seam, the rest, or a stop; undefined when nothing is to be written. */
async function goRound(server: LanguageServer, walk: WalkReply): Promise<Said | undefined> {
  let round = startRound(walk.stations.map(({ item }) => item));
  for (;;) {
    const station = walk.stations[round.index];
    if (station === undefined || itemAt(round) === undefined) return { said: round.said, restIsSound: false };
    const reply = await askAt(walk, round, station);
    if ('left' in reply && reply.left === 'back') {
      round = goTo(round, round.index - 1);
      continue;
    }
    const move = 'answer' in reply ? reply.answer : ({ kind: 'stop' } as const);
    switch (move.kind) {
      case 'say':
        round = say(round, move.seen);
        break;
      case 'wet':
        round = besides(round, { wet: !round.beside.wet });
        break;
      case 'beside': {
        const more = await askBeside(server, walk, round, station, move.field);
        if (more) round = besides(round, more);
        break;
      }
      case 'next':
        round = goTo(round, round.index + 1);
        break;
      case 'take-back':
        round = takeBack(round);
        break;
      case 'rest':
        return { said: restIsSound(round).said, restIsSound: true };
      case 'stop': {
        const stop = await askStop(walk, round);
        if (stop === 'write') return { said: round.said, restIsSound: false };
        if (stop === 'throw-away') return undefined;
      }
    }
  }
}

async function askStop(walk: WalkReply, round: Round): Promise<'write' | 'go-on' | 'throw-away'> {
  const spoken = new Set(round.said.map(({ item }) => item)).size;
  if (spoken === 0 && !isWaiting(round)) return 'throw-away';
  const waiting = isWaiting(round) ? ` What stands beside ${itemAt(round)} has no word yet and is left out.` : '';
  const write = {
    label: '$(save) Write what was said so far',
    detail: `${spoken} of ${round.items.length} seams; the others stay as they were.${waiting}`,
    value: 'write' as const,
  };
  const reply = await pickOne<'write' | 'go-on' | 'throw-away'>({
    title: `${title}: ${walk.name}`,
    at: { step: 0, total: 0 },
    placeholder: 'Stop here?',
    choices: [
      ...(spoken > 0 ? [write] : []),
      { label: '$(arrow-right) Go on', detail: `At ${itemAt(round)}.`, value: 'go-on' },
      { label: '$(trash) Write nothing', detail: 'What was said is lost.', value: 'throw-away' },
    ],
  });
  return 'answer' in reply ? reply.answer : 'go-on';
}

/** What was said is not to be lost: where it cannot be written it stands in an untitled document. */
async function writeOrKeep(
  server: LanguageServer,
  rig: RigAddress,
  walk: WalkReply,
  inspection: SaidInspection,
): Promise<void> {
  try {
    await write(server, rig, inspection);
  } catch (error) {
    const form = { indent: '', dateAt: 'inspected'.length + 1, innerIndent: '  ' };
    const lines = inspectionLines(
      inspection,
      walk.stations.map(({ item }) => item),
      form,
    );
    const content = `history ${rig.name} {\n${lines.map((line) => `  ${line}\n`).join('')}}\n`;
    await window.showTextDocument(await workspace.openTextDocument({ language: 'rig', content }));
    const why = error instanceof Error ? error.message : String(error);
    void window.showWarningMessage(`Not written into the record (${why}): what was said is in an untitled document.`);
  }
}

/** One change of one document, shown; saving it is left to the person, like any other typing. */
async function write(server: LanguageServer, rig: RigAddress, inspection: SaidInspection): Promise<void> {
  for (let tries = 0; tries < 5; tries++) {
    const first = await server.ask(inspectionAsk, { ...rig, inspection });
    if (first === null) throw new Error(`${rig.name} is not there any more.`);
    const document = await workspace.openTextDocument(Uri.parse(first.uri));
    const { version } = document;
    // Once more now that it is open: what the server says is of the text that is changed.
    const change = await server.ask(inspectionAsk, { ...rig, inspection });
    if (change === null || change.uri !== first.uri || document.version !== version) continue;
    const { start, end } = change.range;
    const edit = new WorkspaceEdit();
    edit.replace(document.uri, new Range(start.line, start.character, end.line, end.character), change.newText);
    if (!(await workspace.applyEdit(edit)))
      throw new Error(`${workspace.asRelativePath(document.uri)} cannot be edited.`);
    const editor = await window.showTextDocument(document, { preview: false });
    const lines = change.newText.split('\n').length;
    editor.revealRange(new Range(start.line, 0, start.line + lines, 0), TextEditorRevealType.InCenterIfOutsideViewport);
    editor.selection = new Selection(start.line + 1, 0, start.line + 1, 0);
    return;
  }
  throw new Error('its text keeps changing.');
}
