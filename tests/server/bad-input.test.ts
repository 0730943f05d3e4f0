// Texts that no one writes on purpose: each is answered, soon, and the server goes on.
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Editor, startEditor } from './editor.ts';

let editor: Editor;
beforeAll(async () => {
  editor = await startEditor({ files: { 'good.rig': 'model Good {\n  roof 20 ft by 8 ft epdm\n}\n' } });
});
afterAll(() => editor.stop());

const requests = [
  'textDocument/documentSymbol',
  'textDocument/foldingRange',
  'textDocument/codeLens',
  'textDocument/documentLink',
] as const;
const atCursor = ['textDocument/hover', 'textDocument/completion', 'textDocument/definition'] as const;

test.each<[string, string, string | undefined]>([
  ['nothing', '', undefined],
  ['a text that is too large', `# ${'x'.repeat(98)}\n`.repeat(50_000), 'file-too-large'],
  ['bytes', 'rig \0\u0001\u0002 {}', 'not-text'],
  ['ten thousand braces', 'rig X {'.repeat(10_000), 'nested-too-deep'],
  ['closing braces', '}'.repeat(2000), 'stray-brace'],
  ['a circle of `like`', 'model A like B\nmodel B like A\n', 'like-circle'],
  ['a use that leaves the workspace', 'use "../../../etc/hosts.rig"\n', 'use-leaves-workspace'],
  ['a file that uses itself', 'use "bad.rig"\n', 'use-circle'],
  ['30 February', 'rig X {\n  washed 2026-02-30\n}\n', 'wrong-date'],
  ['marks of a merge', 'rig X {\n<<<<<<< ours\n  washed 2026-02-20\n=======\n>>>>>>> theirs\n}\n', 'merge-conflict'],
  ['a date of another country', 'rig X {\n  washed 4/18/2026\n}\n', 'not-understood'],
  ['inch marks', "model X {\n  roof 20' by 8' epdm\n}\n", 'not-understood'],
  ['half a surrogate', 'rig \ud800 {\n}\n', undefined],
])('%s', async (_what, text, rule) => {
  const begun = Date.now();
  await editor.open('bad.rig', text);
  if (rule === undefined) await editor.quiet();
  else await editor.until(() => editor.shown('bad.rig').some((one) => one.rule === rule), rule);
  const range = { start: { line: 0, character: 0 }, end: { line: 10_000, character: 0 } };
  for (const method of requests) await editor.request(method, 'bad.rig');
  await editor.request('textDocument/inlayHint', 'bad.rig', { range });
  await editor.request('textDocument/codeAction', 'bad.rig', { range, context: { diagnostics: [] } });
  for (const method of atCursor) await editor.request(method, 'bad.rig', { position: { line: 1, character: 3 } });
  await editor.close('bad.rig');
  await editor.until(() => editor.diagnostics('bad.rig').length === 0);
  expect(Date.now() - begun).toBeLessThan(8000);
});

test('a yard in one file, whose fleet lists that very file', async () => {
  const yard = 'rig Teal {\n  edge curbsid\n}\nfleet Small {\n  rigs "*.rig"\n}\n';
  await editor.open('yard.rig', yard);
  await editor.until(() => editor.shown('yard.rig').some(({ rule }) => rule === 'unknown-word'));
  await editor.close('yard.rig');
});
