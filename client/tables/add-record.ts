import { Uri, window, workspace } from 'vscode';
import { addRecordAsk, calendarSubjectsAsk, type RigAddress, recordProblemAsk } from '../../language/protocol/index.ts';
import { pickMany, typed } from '../authoring/inputs.ts';
import { throughSteps } from '../authoring/steps.ts';
import type { LanguageServer } from '../language-server.ts';
import { mayWriteFiles } from '../trust.ts';
import { applied, counted } from './apply.ts';

const title = 'Add Record to Many Rigs';

/**
 * The command "Add Record to Many Rigs": asks which rigs and what happened, or is planned, and writes it to all of them as one
 * edit, after the editor has shown what would change.
 */
export async function addRecordToRigs(server: LanguageServer): Promise<void> {
  if (!(await mayWriteFiles())) return;
  try {
    const subjects = await server.ask(calendarSubjectsAsk, {});
    const rigs = subjects.flatMap(({ kind, uri, name }) => (kind === 'rig' ? [{ uri, name }] : []));
    if (rigs.length === 0) {
      void window.showInformationMessage('No rig was found in this workspace: run "Rigseam: New Rig Record" first.');
      return;
    }
    const said = await questions(server, rigs);
    if (said) await write(server, said.rigs, said.text);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    void window.showErrorMessage(`The record was not added: ${why}`);
  }
}

interface Answers {
  readonly rigs: readonly RigAddress[];
  readonly text: string;
}

function questions(server: LanguageServer, rigs: readonly RigAddress[]): Promise<Answers | undefined> {
  return throughSteps<Answers>(
    () => [
      async (before, at) => {
        const reply = await pickMany({
          title,
          at,
          placeholder: 'Which rigs? Type to narrow the list.',
          choices: rigs.map((value) => ({
            label: value.name,
            description: workspace.asRelativePath(Uri.parse(value.uri)),
            value,
            picked: before.rigs.includes(value),
          })),
        });
        return 'answer' in reply && reply.answer.length > 0 ? { rigs: reply.answer } : undefined;
      },
      async ({ text, rigs: picked }, at) => {
        const reply = await typed({
          title: `${title}: ${counted(picked.length, 'rig')}`,
          at,
          prompt: 'A record or a plan, as it is written in a rig.',
          placeholder: 'sealed 2026-05-02 all with GreyLap',
          value: text,
          problem: async (typedText) => (await server.ask(recordProblemAsk, { text: typedText })).problem ?? undefined,
        });
        return 'answer' in reply ? { text: reply.answer } : undefined;
      },
    ],
    { rigs: [], text: '' },
  );
}

async function write(server: LanguageServer, rigs: readonly RigAddress[], text: string): Promise<void> {
  const { changes, refused, there } = await server.ask(addRecordAsk, { rigs, text });
  const left = refused.map(({ name, why }) => `${name}: ${why}`).join(' ');
  if (refused.length > 0) void window.showWarningMessage(`Left out of ${counted(refused.length, 'rig')}. ${left}`);
  const [first] = changes;
  if (first) await applied(changes, `Rigseam: ${text}`, Uri.parse(first.uri));
  else if (there.length > 0)
    void window.showInformationMessage(`${counted(there.length, 'rig has', 'rigs have')} this record already.`);
}
