// Changes of many files at once, as the editor asks for them: edits that make of the texts what was promised.
import { afterEach, expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import {
  type Ask,
  addRecordAsk,
  exportTableAsk,
  type FileChange,
  importTableAsk,
  recordProblemAsk,
} from '../../language/protocol/index.ts';
import { type Editor, startEditor } from './editor.ts';

let editor: Editor | undefined;
afterEach(async () => {
  await editor?.stop();
  editor = undefined;
});
const rig = (name: string) => `rig ${name} like Alder {\n  unit         "${name}-1"\n}\n`;
const files = {
  'models.rig': 'model Alder {\n  roof         18 ft by 8 ft  epdm\n  cap          front\n}\n',
  'rigs/heron.rig': `use "../models.rig"\n${rig('Heron')}`,
  'rigs/teal.rig': `use "../models.rig"\n${rig('Teal')}rig Tern { roof 18 ft by 8 ft epdm }`,
};
async function started() {
  editor = await startEditor({ files });
  await editor.quiet();
  return editor;
}
const ask = <P, R>(at: Editor, { method, reply }: Ask<P, R>, params: P): Promise<R> =>
  at.connection.sendRequest(method, params).then((given) => reply.parse(given));

/** The texts as an editor has them after the changes. */
function made(at: Editor, changes: readonly FileChange[]): Record<string, string> {
  return Object.fromEntries(
    changes.map(({ uri, text, edits }) => {
      const path = uri.slice(at.uri('').length).replace(/^\//, '');
      const before = files[path as keyof typeof files] ?? '';
      return [path, text ?? TextDocument.applyEdits(TextDocument.create(uri, 'rig', 0, before), [...edits])];
    }),
  );
}

test('one record goes to the picked rigs, also with what is typed and not saved', async () => {
  const at = await started();
  await at.open('rigs/heron.rig');
  await at.replace('rigs/heron.rig', '"Heron-1"', '"Heron-1"   # typed');
  const rigs = [
    { uri: at.uri('rigs/heron.rig'), name: 'Heron' },
    { uri: at.uri('rigs/teal.rig'), name: 'Tern' },
  ];
  const reply = await ask(at, addRecordAsk, { rigs, text: 'washed 2026-05-02' });
  expect(reply.refused).toEqual([]);
  expect(reply.changes.map(({ edits }) => edits.map(({ newText }) => newText))).toEqual([
    ['\n  washed    2026-05-02\n'],
    ['rig Tern {\n  roof         18 ft by 8 ft  epdm\n  washed    2026-05-02\n}'],
  ]);
});

test('a record is read while it is typed', async () => {
  const at = await started();
  expect((await ask(at, recordProblemAsk, { text: 'washd 2026-05-02' })).problem).toContain('did you mean');
  expect(await ask(at, recordProblemAsk, { text: 'washed 2026-05-02' })).toEqual({ problem: null });
});

test('a table makes new rigs that use what declares their model, and tells what is wrong at its cell', async () => {
  const at = await started();
  const text = 'rig,like,unit\nWren,Alder,9\nHeron,,7\nBad name,,\n';
  const reply = await ask(at, importTableAsk, { kind: 'rigs', text, folder: at.uri('rigs') });
  expect(made(at, reply.changes)).toEqual({
    'rigs/wren.rig': 'use "../models.rig"\n\nrig Wren like Alder {\n  unit         "9"\n}\n',
  });
  expect(reply.problems.map(({ kind, range: { start } }) => [kind, start.line, start.character])).toEqual([
    ['differs', 2, 7],
    ['error', 3, 0],
  ]);
});

test('a table of all rigs is written', async () => {
  const at = await started();
  const { table, rows } = await ask(at, exportTableAsk, { kind: 'rigs' });
  expect(rows).toBe(3);
  expect(table).toContain('\r\nHeron,Alder,,,Heron-1,');
});
