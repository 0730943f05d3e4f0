// The bundled server as a process of its own, spoken to as an editor does.
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll, expect, test } from 'vitest';
import {
  createProtocolConnection,
  IPCMessageReader,
  IPCMessageWriter,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';
import { startEditor } from './editor.ts';

const out = mkdtempSync(join(tmpdir(), 'rigseam-bundle-'));
const bundle = join(out, 'server.mjs');

beforeAll(async () => {
  await build({
    entryPoints: ['server/main.ts'],
    outfile: bundle,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node22',
    mainFields: ['module', 'main'],
    loader: { '.rig': 'text', '.wasm': 'binary' },
    logLevel: 'error',
    banner: {
      js: "import { createRequire as __createRequire } from 'node:module'; const require = __createRequire(import.meta.url);",
    },
  });
});
afterAll(() => rmSync(out, { recursive: true, force: true }));

const overIpc = () => {
  const child = spawn(process.execPath, [bundle, '--node-ipc'], { stdio: ['ignore', 'pipe', 'pipe', 'ipc'] });
  return over(child, createProtocolConnection(new IPCMessageReader(child), new IPCMessageWriter(child)));
};
const overStdio = () => {
  const child = spawn(process.execPath, [bundle, '--stdio'], { stdio: ['pipe', 'pipe', 'pipe'] });
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
