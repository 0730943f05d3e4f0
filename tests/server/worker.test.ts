// The packed bundles as they run in a browser: in a world without Node. (tests/editor/scenarios/browser.ts runs them in a real
// one.)
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { CompletionItem, CompletionList } from 'vscode-languageserver';
import { filesAsk, papersAsk, solverAsk } from '../../language/protocol/index.ts';
import { readFolder } from '../project/workspace.ts';
import { type Bundles, bundled } from './bundle.ts';
import { startEditor } from './editor.ts';
import { runInWorker, workerServer } from './worker-world.ts';

let bundles: Bundles;
beforeAll(() => {
  bundles = bundled();
});
afterAll(() => bundles.remove());

test('the server says what is wrong, offers what may stand there, and writes papers with and without a solver', async () => {
  const served = workerServer(bundles.server);
  let code: Uint8Array | null = null;
  served.connection.onRequest(solverAsk.method, () => ({ code }));
  const editor = await startEditor({ connect: () => served });
  const files = readFolder('examples/fleet');
  const texts = Object.entries(files).map(([path, text]) => ({ uri: editor.uri(path), text }));
  await editor.connection.sendRequest(filesAsk.method, { texts, names: [], gone: [], more: false });
  await editor.quiet();
  await editor.open('rigs/fell.rig', files['rigs/fell.rig'] as string);
  await editor.quiet();
  expect(editor.diagnostics('rigs/fell.rig').filter(({ severity }) => severity === 1)).toEqual([]);
  await editor.replace('rigs/fell.rig', 'YardWipe, DeckLap', 'YardWipe, DeckLp');
  await editor.until(() => editor.shown('rigs/fell.rig').some(({ at }) => at === 'DeckLp'));
  const offered = await editor.request<CompletionList | CompletionItem[]>('textDocument/completion', 'rigs/fell.rig', {
    position: editor.positionOf('rigs/fell.rig', 'DeckLp', 'Deck'.length),
  });
  expect((Array.isArray(offered) ? offered : offered.items).map(({ label }) => label)).toContain('DeckLap');
  await editor.replace('rigs/fell.rig', 'DeckLp', 'DeckLap');

  const papers = async () => {
    const uri = editor.uri('yard/fleet.rig');
    const reply = papersAsk.reply.parse(await editor.connection.sendRequest(papersAsk.method, { uri }));
    if (reply.kind !== 'documents') throw new Error('a fleet is the only target of its file');
    return reply;
  };
  const without = await papers();
  expect(without.problems).toEqual([]);
  expect(without.files.map(({ name }) => name)).toContain('Highmeadow.estimate.xlsx');
  expect(without.notes?.join()).toMatch(/less is proven/);
  code = readFileSync(join(dirname(bundles.server), 'highs.wasm'));
  expect((await papers()).notes).toBeUndefined();
  await editor.stop();
});

test('the extension needs nothing but the editor to be loaded', () => {
  const asked = new Set<string>();
  // A plain function may be extended, called, and asked for anything.
  function nothing() {}
  const anything: unknown = new Proxy(nothing, { get: () => anything, apply: () => anything });
  const module: { exports: Record<string, unknown> } = { exports: {} };
  runInWorker(bundles.client, {
    module,
    exports: module.exports,
    require: (name: string) => {
      asked.add(name);
      return anything;
    },
  });
  expect([...asked]).toEqual(['vscode']);
  expect(typeof module.exports.activate).toBe('function');
});
