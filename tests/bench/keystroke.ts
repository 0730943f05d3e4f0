// From a keystroke to its diagnostics, over the Language Server Protocol, on a 250-line and a 2,000-line record; beside the
// peer: the same records as YAML with a JSON Schema in yaml-language-server. Both servers are real processes over stdio.
import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { createProtocolConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-languageserver/node';
import { rigOf, rigText, rigYaml, sharedRig, yamlSchema } from './records.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const require = createRequire(import.meta.url);

interface Case {
  readonly name: string;
  readonly command: readonly string[];
  readonly languageId: string;
  readonly file: string;
  readonly text: string;
  readonly folder: string;
  /** Where a character is put in and taken out again: behind this text. */
  readonly behind: string;
  readonly typed: string;
  readonly settings?: Readonly<Record<string, unknown>>;
}

/** Milliseconds from sending each change to the diagnostics that speak of its outcome. */
async function time(one: Case, strokes: number): Promise<number[]> {
  const child = spawn(process.execPath, one.command, { stdio: ['pipe', 'pipe', 'ignore'] });
  const connection = createProtocolConnection(
    new StreamMessageReader(child.stdout),
    new StreamMessageWriter(child.stdin),
  );
  const uri = pathToFileURL(one.file).href;
  let heard: ((count: number) => void) | undefined;
  connection.onNotification('textDocument/publishDiagnostics', (params: { uri: string; diagnostics: unknown[] }) => {
    if (params.uri === uri) heard?.(params.diagnostics.length);
  });
  connection.onRequest('workspace/configuration', (params: { items: { section?: string }[] }) =>
    params.items.map(({ section }) => one.settings?.[section ?? ''] ?? null),
  );
  connection.onRequest('client/registerCapability', () => null);
  connection.onRequest('window/workDoneProgress/create', () => null);
  connection.listen();
  try {
    await connection.sendRequest('initialize', {
      processId: process.pid,
      rootUri: pathToFileURL(one.folder).href,
      workspaceFolders: [{ uri: pathToFileURL(one.folder).href, name: 'bench' }],
      capabilities: {
        textDocument: { publishDiagnostics: { versionSupport: true } },
        workspace: { configuration: true, workspaceFolders: true },
      },
      initializationOptions: {},
    });
    await connection.sendNotification('initialized', {});
    await connection.sendNotification('workspace/didChangeConfiguration', { settings: one.settings ?? {} });
    const at = one.text.indexOf(one.behind, one.text.length >> 1) + one.behind.length;
    const line = one.text.slice(0, at).split('\n').length - 1;
    const character = at - one.text.lastIndexOf('\n', at - 1) - 1;
    const first = new Promise<number>((done) => {
      heard = done;
    });
    await connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri, languageId: one.languageId, version: 1, text: one.text },
    });
    const clean = await first;
    const times: number[] = [];
    for (let i = 0; i < strokes; i++) {
      const put = i % 2 === 0;
      const start = performance.now();
      // Putting the character in makes a finding more, taking it out makes it go: so each answer is told from a stale one.
      const answer = new Promise<void>((done, failed) => {
        const timer = setTimeout(() => failed(new Error(`${one.name}: no diagnostics within 20 s`)), 20_000);
        heard = (count) => {
          if (put ? count <= clean : count > clean) return;
          clearTimeout(timer);
          done();
        };
      });
      await connection.sendNotification('textDocument/didChange', {
        textDocument: { uri, version: i + 2 },
        contentChanges: [
          {
            range: { start: { line, character }, end: { line, character: character + (put ? 0 : one.typed.length) } },
            text: put ? one.typed : '',
          },
        ],
      });
      await answer;
      times.push(performance.now() - start);
      await new Promise((done) => setTimeout(done, 30));
    }
    return times.slice(4);
  } finally {
    connection.dispose();
    child.kill();
  }
}

const quantile = (values: readonly number[], q: number) =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(q * values.length))] as number;

export async function keystroke(strokes = 44): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'rigseam-bench-'));
  try {
    for (const part of ['rigs', 'yard', 'yaml']) mkdirSync(join(folder, part), { recursive: true });
    for (const [path, text] of Object.entries(sharedRig)) writeFileSync(join(folder, path), text);
    writeFileSync(join(folder, 'schema.json'), JSON.stringify(yamlSchema));
    console.log('\nKeystroke to diagnostics over the protocol');
    for (const [lines, years, perYear] of [
      [250, 20, 1],
      [2000, 20, 8],
    ] as const) {
      const rig = rigOf(lines, years, perYear);
      const [text, yaml] = [rigText(rig), rigYaml(rig)];
      const [rigFile, yamlFile] = [join(folder, 'rigs', `${rig.name}.rig`), join(folder, 'yaml', `${rig.name}.yaml`)];
      writeFileSync(rigFile, text);
      writeFileSync(yamlFile, yaml);
      const peerPath = join(dirname(require.resolve('yaml-language-server/package.json')), 'bin/yaml-language-server');
      const mine = await time(
        {
          name: 'rigseam',
          command: [join(root, 'dist/server.cjs'), '--stdio'],
          languageId: 'rig',
          file: rigFile,
          text,
          folder,
          behind: ' hairline',
          typed: 'x',
        },
        strokes,
      );
      const peer = await time(
        {
          name: 'yaml-language-server',
          command: [peerPath, '--stdio'],
          languageId: 'yaml',
          file: yamlFile,
          text: yaml,
          folder,
          behind: 'condition: hairline',
          typed: 'x',
          settings: {
            yaml: {
              schemas: { [pathToFileURL(join(folder, 'schema.json')).href]: '*.yaml' },
              validate: true,
              schemaStore: { enable: false },
            },
          },
        },
        Math.min(strokes, 24),
      );
      const row = (name: string, times: readonly number[], count: number) =>
        console.log(
          `  ${name.padEnd(22)} ${String(count).padStart(5)} lines   p50 ${quantile(times, 0.5).toFixed(1).padStart(6)} ms   p95 ${quantile(times, 0.95).toFixed(1).padStart(6)} ms`,
        );
      row('rigseam', mine, text.split('\n').length);
      row('yaml-language-server', peer, yaml.split('\n').length);
      console.log(
        `  p50: ${(quantile(peer, 0.5) / quantile(mine, 0.5)).toFixed(1)} times as fast as the peer on the same records`,
      );
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
