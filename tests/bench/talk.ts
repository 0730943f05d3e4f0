// A language server as a process of its own, spoken to over stdio as an editor would; it hears when diagnostics come.
import { spawn } from 'node:child_process';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import {
  createProtocolConnection,
  type Diagnostic,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';

const root = fileURLToPath(new URL('../..', import.meta.url));
const require = createRequire(import.meta.url);

/** Our server, as packed. */
export const ourServer = [join(root, 'dist/server.cjs'), '--stdio'];
/** The peer: a server for YAML with a JSON Schema. */
export const yamlServer = [
  join(dirname(require.resolve('yaml-language-server/package.json')), 'bin/yaml-language-server'),
  '--stdio',
];
export const yamlSettings = (folder: string) => ({
  yaml: {
    schemas: { [pathToFileURL(join(folder, 'schema.json')).href]: '*.yaml' },
    validate: true,
    completion: true,
    hover: true,
    schemaStore: { enable: false },
  },
});

export interface Place {
  readonly line: number;
  readonly character: number;
}

/** The position of an offset. */
export function placeOf(text: string, offset: number): Place {
  const before = text.slice(0, offset);
  return { line: before.split('\n').length - 1, character: offset - before.lastIndexOf('\n') - 1 };
}

export interface Talk {
  /** Calls back for every publish until told to stop. */
  listen(heard: (uri: string, diagnostics: readonly Diagnostic[]) => void): () => void;
  open(file: string, languageId: string, text: string): Promise<void>;
  /** Replaces `length` characters of one line by a text. */
  change(file: string, at: Place, length: number, text: string): Promise<void>;
  request<R>(method: string, file: string, params?: object): Promise<R>;
  /** Resolves when no diagnostics came for a while, in milliseconds. */
  quiet(forLong?: number): Promise<void>;
  stop(): void;
  /** The server's process. */
  readonly pid: number | undefined;
}

export const uriOf = (file: string): string => pathToFileURL(file).href;

export async function startTalk(
  command: readonly string[],
  folder: string,
  settings: Readonly<Record<string, unknown>> = {},
): Promise<Talk> {
  const child = spawn(process.execPath, command, { stdio: ['pipe', 'pipe', 'ignore'] });
  const connection = createProtocolConnection(
    new StreamMessageReader(child.stdout),
    new StreamMessageWriter(child.stdin),
  );
  const listeners = new Set<(uri: string, diagnostics: readonly Diagnostic[]) => void>();
  let lastSaid = performance.now();
  connection.onNotification(
    'textDocument/publishDiagnostics',
    ({ uri, diagnostics }: { uri: string; diagnostics: readonly Diagnostic[] }) => {
      lastSaid = performance.now();
      for (const heard of listeners) heard(uri, diagnostics);
    },
  );
  connection.onRequest('workspace/configuration', (params: { items: { section?: string }[] }) =>
    params.items.map(({ section }) => settings[section ?? ''] ?? null),
  );
  connection.onRequest('client/registerCapability', () => null);
  connection.onRequest('window/workDoneProgress/create', () => null);
  connection.listen();
  await connection.sendRequest('initialize', {
    processId: process.pid,
    rootUri: uriOf(folder),
    workspaceFolders: [{ uri: uriOf(folder), name: 'bench' }],
    capabilities: {
      textDocument: { publishDiagnostics: { versionSupport: true }, hover: { contentFormat: ['markdown'] } },
      workspace: { configuration: true, workspaceFolders: true },
    },
    initializationOptions: {},
  });
  await connection.sendNotification('initialized', {});
  await connection.sendNotification('workspace/didChangeConfiguration', { settings });
  const versions = new Map<string, number>();
  return {
    listen(heard) {
      listeners.add(heard);
      return () => void listeners.delete(heard);
    },
    async open(file, languageId, text) {
      versions.set(file, 1);
      await connection.sendNotification('textDocument/didOpen', {
        textDocument: { uri: uriOf(file), languageId, version: 1, text },
      });
    },
    async change(file, at, length, text) {
      const version = (versions.get(file) ?? 0) + 1;
      versions.set(file, version);
      await connection.sendNotification('textDocument/didChange', {
        textDocument: { uri: uriOf(file), version },
        contentChanges: [{ range: { start: at, end: { ...at, character: at.character + length } }, text }],
      });
    },
    request: (method, file, params = {}) =>
      connection.sendRequest(method, { textDocument: { uri: uriOf(file) }, ...params }),
    async quiet(forLong = 600) {
      lastSaid = performance.now();
      while (performance.now() - lastSaid < forLong) await new Promise((done) => setTimeout(done, 20));
    },
    pid: child.pid,
    stop() {
      connection.dispose();
      child.kill();
    },
  };
}

/** Resolves when diagnostics of a file come that satisfy a condition; rejects after a while, in milliseconds. */
export function heard(
  talk: Talk,
  file: string,
  holds: (diagnostics: readonly Diagnostic[]) => boolean,
  patience = 30_000,
): Promise<number> {
  return new Promise((done, failed) => {
    const timer = setTimeout(
      () => failed(new Error(`nothing that was waited for came of ${file} within ${patience / 1000} s`)),
      patience,
    );
    const stop = talk.listen((uri, diagnostics) => {
      if (uri !== uriOf(file) || !holds(diagnostics)) return;
      clearTimeout(timer);
      stop();
      done(performance.now());
    });
  });
}

export const quantile = (values: readonly number[], q: number): number =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(q * values.length))] as number;

export const pause = (milliseconds: number) => new Promise((done) => setTimeout(done, milliseconds));
