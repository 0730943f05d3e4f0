// The bundled server as a process of its own, spoken to as an editor does.
import { type ChildProcess, spawn } from 'node:child_process';
import { rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import {
  createProtocolConnection,
  IPCMessageReader,
  IPCMessageWriter,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';
import { papersAsk } from '../../language/protocol/index.ts';
import { readFolder } from '../project/workspace.ts';
import { type Bundles, bundled } from './bundle.ts';
import { startEditor } from './editor.ts';

let bundles: Bundles;
beforeAll(() => {
  bundles = bundled();
});
afterAll(() => bundles.remove());

const overIpc = () => {
  const child = spawn(process.execPath, [bundles.server, '--node-ipc'], { stdio: ['ignore', 'pipe', 'pipe', 'ipc'] });
  return over(child, createProtocolConnection(new IPCMessageReader(child), new IPCMessageWriter(child)));
};
const overStdio = () => {
  const child = spawn(process.execPath, [bundles.server, '--stdio'], { stdio: ['pipe', 'pipe', 'pipe'] });
  const { stdin, stdout } = child;
  if (!stdin || !stdout) throw new Error('the server has no streams');
  return over(child, createProtocolConnection(new StreamMessageReader(stdout), new StreamMessageWriter(stdin)));
};
const over = (child: ChildProcess, connection: ReturnType<typeof createProtocolConnection>) => {
  const ended = new Promise<number | null>((resolve) => child.once('exit', resolve));
  return { connection, ended, stop: () => void child.kill() };
};

test.each([
  ['node-ipc', overIpc],
  ['stdio', overStdio],
])('over %s: opens a file, says what is wrong, and ends when told to', async (_how, connect) => {
  const served = connect();
  const editor = await startEditor({
    files: { 'a.rig': 'rig Teal {\n  roof 20 ft by 8 ft epdm\n  edge curbsid\n}\n' },
    connect: () => served,
  });
  await editor.open('a.rig');
  await editor.until(() => editor.shown('a.rig').length > 0);
  expect(editor.shown('a.rig')).toMatchObject([{ rule: 'unknown-word', at: 'curbsid' }]);
  await editor.connection.sendRequest('shutdown');
  await editor.connection.sendNotification('exit');
  expect(await served.ended).toBe(0);
  rmSync(editor.folder, { recursive: true, force: true });
});

test('the papers of a fleet come with the solver beside the bundle, and say what is lost without it', async () => {
  const papers = async () => {
    const served = overStdio();
    const editor = await startEditor({ files: readFolder('examples/fleet'), connect: () => served });
    const uri = editor.uri('yard/fleet.rig');
    const reply = papersAsk.reply.parse(await editor.connection.sendRequest(papersAsk.method, { uri }));
    await editor.stop();
    if (reply.kind !== 'documents') throw new Error('a fleet is the only target of its file');
    return reply;
  };
  const proven = await papers();
  expect(proven).toMatchObject({ problems: [] });
  expect(proven.notes).toBeUndefined();
  rmSync(join(dirname(bundles.server), 'highs.wasm'));
  const without = await papers();
  expect(without.files.map(({ name }) => name)).toEqual(proven.files.map(({ name }) => name));
  expect(without.notes?.join()).toMatch(/Highmeadow.*less is proven/);
});
