// What the light bulb offers beside the fixes of findings: a plan recorded as done, a rule accepted for a while.
import { afterEach, describe, expect, test } from 'vitest';
import type { CodeAction, WorkspaceEdit } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { type Editor, startEditor } from './editor.ts';

let editor: Editor;
afterEach(() => editor.stop());

const own = `rig Teal {
  roof         20 ft by 8 ft  epdm
  edge         curbside, roadside
  opening      vent  14 in by 14 in  at 8 ft, 4 ft  of abs
  found        2026-05-01 all with unknown
  stripped     2026-11-20 vent

  # what is planned
  seal         vent with GenericSolventLap
  strip        curbside, roadside after 2026-11-01
  tape         curbside after 2027-05-01
  inspect      before 2027-01-31
}
`;
const start = async (files: Record<string, string>) => {
  editor = await startEditor({ files });
  for (const path of Object.keys(files)) await editor.open(path);
  await editor.quiet();
};
const actionsAt = async (path: string, text: string) => {
  const position = editor.positionOf(path, text);
  return (
    (await editor.request<CodeAction[] | null>('textDocument/codeAction', path, {
      range: { start: position, end: position },
      context: { diagnostics: [] },
    })) ?? []
  );
};
const applied = (path: string, edit: WorkspaceEdit | undefined) =>
  TextDocument.applyEdits(
    TextDocument.create('', 'rig', 0, editor.text(path)),
    edit?.changes?.[editor.uri(path)] ?? [],
  );
const doneAt = async (path: string, text: string) =>
  (await actionsAt(path, text)).find(({ title }) => title === 'Record as done today');
const errorsIn = (path: string) => editor.diagnostics(path).filter(({ severity }) => severity === 1);

describe('a planned line is recorded as done', () => {
  test('without a first day it becomes the record', async () => {
    await start({ 'teal.rig': own });
    const action = await doneAt('teal.rig', 'seal         vent');
    expect(action?.kind).toBe('refactor.rewrite');
    const after = applied('teal.rig', action?.edit);
    expect(after).toContain('  stripped     2026-11-20 vent\n  sealed       2026-11-25 vent with GenericSolventLap\n');
    expect(after).not.toContain('  seal         vent');
    await editor.replace('teal.rig', editor.text('teal.rig'), after);
    await editor.quiet();
    expect(errorsIn('teal.rig')).toEqual([]);
  });

  test('with a first day that is past its line stays, and is done', async () => {
    await start({ 'teal.rig': own });
    const after = applied('teal.rig', (await doneAt('teal.rig', 'strip        curbside'))?.edit);
    expect(after).toContain('  stripped     2026-11-25 curbside, roadside\n');
    expect(after).toContain('  strip        curbside, roadside after 2026-11-01\n');
    await editor.replace('teal.rig', editor.text('teal.rig'), after);
    await editor.quiet();
    expect(await doneAt('teal.rig', 'strip        curbside')).toBeUndefined();
  });

  test('of a plan that is partly done what is left', async () => {
    const partly = own.replace('\n\n  # what', '\n  stripped     2026-11-21 curbside\n\n  # what');
    await start({ 'teal.rig': partly });
    const after = applied('teal.rig', (await doneAt('teal.rig', 'strip        curbside'))?.edit);
    expect(after).toContain('  stripped     2026-11-25 roadside\n');
  });

  test('an earlier day than planned: the plan has become the record', async () => {
    await start({ 'teal.rig': own });
    const after = applied('teal.rig', (await doneAt('teal.rig', 'tape         curbside'))?.edit);
    expect(after).toContain('  taped        2026-11-25 curbside\n');
    expect(after).not.toContain('tape         curbside');
  });

  test('into the history where the newest records stand', async () => {
    const history = 'history Teal {\n  washed     2026-11-22\n}\n';
    await start({ 'teal.rig': own.replace('{\n', '{\n  records      "teal/*.rig"\n'), 'teal/2026.rig': history });
    const edit = (await doneAt('teal.rig', 'seal         vent'))?.edit;
    expect(applied('teal/2026.rig', edit)).toBe(
      'history Teal {\n  washed     2026-11-22\n  sealed     2026-11-25 vent with GenericSolventLap\n}\n',
    );
    expect(applied('teal.rig', edit)).not.toContain('seal         vent');
  });

  test('not an inspection, whose findings only a person knows, and nowhere else', async () => {
    await start({ 'teal.rig': own });
    expect(await doneAt('teal.rig', 'inspect      before')).toBeUndefined();
    expect(await doneAt('teal.rig', 'edge         curbside')).toBeUndefined();
  });
});

describe('a rule is accepted for a while', () => {
  const old = own.replace('2026-11-20 vent', '2026-05-02 vent').replace(/ {2}seal .*\n/, '');

  test('the line silences the finding, and has a reason to be written', async () => {
    await start({ 'teal.rig': old });
    const finding = editor.diagnostics('teal.rig').find(({ code }) => code === 'left-bare');
    expect(finding).toBeDefined();
    const actions = await actionsAt('teal.rig', 'vent\n\n');
    const accept = actions.find(({ title }) => title.startsWith('Accept `left-bare`'));
    expect(accept?.isPreferred).toBeUndefined();
    const after = applied('teal.rig', accept?.edit);
    expect(after).toMatch(/ {2}accept {7}left-bare on vent until 2027-02-25 because ".+"\n\}\n$/);
    await editor.replace('teal.rig', editor.text('teal.rig'), after);
    await editor.quiet();
    expect(editor.diagnostics('teal.rig').map(({ code }) => code)).not.toContain('left-bare');
    expect(errorsIn('teal.rig')).toEqual([]);
  });

  test('not what could not be read', async () => {
    await start({ 'teal.rig': own.replace('20 ft by 8 ft', '20 ft by 8') });
    const actions = await actionsAt('teal.rig', '8  epdm');
    expect(actions.filter(({ title }) => title.startsWith('Accept '))).toEqual([]);
  });
});

test('what needs a person is offered, not preferred, and no part of mending all', async () => {
  await start({ 'teal.rig': 'rig Teal {\n  roof 20 ft by 8 ft epdm\n  qqqqqq one\n  wwwwww two\n}\n' });
  const [remark] = (await actionsAt('teal.rig', 'qqqqqq')).filter(({ title }) => title.includes('remark'));
  expect(remark).toBeDefined();
  expect(remark?.isPreferred).toBeUndefined();
  expect((await actionsAt('teal.rig', 'qqqqqq')).some(({ title }) => title.startsWith('Mend all'))).toBe(false);
});
