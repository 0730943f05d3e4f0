// An editor for tests: speaks the protocol to a real server, in this process or in one of its own.
import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { Duplex } from 'node:stream';
import { pathToFileURL } from 'node:url';
import {
  type ClientCapabilities,
  createConnection,
  createProtocolConnection,
  type Diagnostic,
  FileChangeType,
  type InitializeResult,
  type Position,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  type Range,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { GivenSettings, Status } from '../../language/protocol/index.ts';
import type { Clock } from '../../server/clock.ts';
import { nodeHost } from '../../server/node-host.ts';
import { startServer } from '../../server/server.ts';
import { untilQuiet } from './quiet.ts';

export const today = '2026-11-25';

export interface Publish {
  readonly path: string;
  readonly version?: number;
  readonly diagnostics: readonly Diagnostic[];
}

export interface Editor {
  readonly connection: ProtocolConnection;
  readonly initialized: InitializeResult;
  readonly folder: string;
  /** What was published, in order. */
  readonly published: Publish[];
  readonly statuses: Status[];
  readonly asked: string[];
  uri(path: string): string;
  /** Opens a file, with the text on disk unless another is given. */
  open(path: string, text?: string): Promise<void>;
  /** Replaces the first occurrence of some text in an open file. */
  replace(path: string, from: string, to: string): Promise<void>;
  text(path: string): string;
  close(path: string): Promise<void>;
  write(path: string, text: string): void;
  /** Writes files and lets the watchers say so. */
  save(files: Readonly<Record<string, string>>, type?: FileChangeType): Promise<void>;
  remove(path: string): Promise<void>;
  configure(settings: GivenSettings): Promise<void>;
  /** The next midnight comes. */
  day(today: string): void;
  request<R>(method: string, path: string, params?: object): Promise<R>;
  positionOf(path: string, text: string, offset?: number): Position;
  /** What the editor shows in a file now: severity, rule and the text that it stands at. */
  shown(path: string): { readonly rule: string; readonly at: string; readonly message: string }[];
  diagnostics(path: string): readonly Diagnostic[];
  /** Waits until something holds. */
  until(holds: () => boolean, what?: string): Promise<void>;
  /** Waits until nothing has been said for a while and the server is not busy. */
  quiet(): Promise<void>;
  stop(): Promise<void>;
}

interface Start {
  readonly files?: Readonly<Record<string, string>>;
  readonly settings?: GivenSettings;
  readonly capabilities?: ClientCapabilities;
  /** Folders of the workspace, inside the temporary folder; the folder itself unless given. */
  readonly folders?: readonly string[];
  /** A connection to another process. */
  readonly connect?: (folder: string) => { readonly connection: ProtocolConnection; readonly stop: () => void };
}

const wait = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

export async function startEditor(start: Start = {}): Promise<Editor> {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'rigseam-')));
  const pathIn = (path: string) => join(folder, path);
  const uri = (path: string) => pathToFileURL(pathIn(path)).toString();
  const pathFrom = (of: string) => decodeURIComponent(of.replace(`${pathToFileURL(folder)}/`, ''));
  const write = (path: string, text: string) => {
    mkdirSync(dirname(pathIn(path)), { recursive: true });
    writeFileSync(pathIn(path), text);
  };
  for (const [path, text] of Object.entries(start.files ?? {})) write(path, text);

  const calendar = testClock();
  const { connection, stop } = start.connect?.(folder) ?? inProcess(calendar);
  const published: Publish[] = [];
  const statuses: Status[] = [];
  const asked: string[] = [];
  const current = new Map<string, readonly Diagnostic[]>();
  let said = 0;
  connection.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
    said++;
    const path = pathFrom(params.uri);
    published.push({
      path,
      ...(params.version === undefined ? {} : { version: params.version }),
      diagnostics: params.diagnostics,
    });
    current.set(path, params.diagnostics);
  });
  connection.onNotification('rigseam/status', (status: Status) => {
    said++;
    statuses.push(status);
  });
  for (const method of [
    'workspace/inlayHint/refresh',
    'workspace/codeLens/refresh',
    'client/registerCapability',
    'window/workDoneProgress/create',
  ]) {
    connection.onRequest(method, () => {
      asked.push(method);
      return null;
    });
  }
  connection.listen();
  const initialized = await connection.sendRequest<InitializeResult>('initialize', {
    processId: process.pid,
    rootUri: null,
    capabilities: start.capabilities ?? {
      workspace: {
        workspaceFolders: true,
        didChangeWatchedFiles: { dynamicRegistration: true },
        inlayHint: { refreshSupport: true },
        codeLens: { refreshSupport: true },
      },
      window: { workDoneProgress: true },
    },
    initializationOptions: { asOf: '', inlayHints: true, codeLens: true, ...start.settings },
    workspaceFolders: (start.folders ?? ['']).map((path) => ({
      name: path,
      uri: pathToFileURL(pathIn(path)).toString(),
    })),
  });
  await connection.sendNotification('initialized', {});

  const documents = new Map<string, TextDocument>();
  const documentOf = (path: string) => {
    const document = documents.get(path);
    if (!document) throw new Error(`${path} is not open in the test's editor`);
    return document;
  };
  const change = async (path: string, range: Range, text: string) => {
    const old = documentOf(path);
    const next = TextDocument.update(
      TextDocument.create(old.uri, 'rig', old.version, old.getText()),
      [{ range, text }],
      old.version + 1,
    );
    documents.set(path, next);
    await connection.sendNotification('textDocument/didChange', {
      textDocument: { uri: old.uri, version: next.version },
      contentChanges: [{ range, text }],
    });
  };
  const changesOnDisk = (changes: readonly { path: string; type: FileChangeType }[]) =>
    connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: changes.map(({ path, type }) => ({ uri: uri(path), type })),
    });

  const editor: Editor = {
    connection,
    initialized,
    folder,
    published,
    statuses,
    asked,
    uri,
    write,
    text: (path) => documentOf(path).getText(),
    async open(path, text) {
      const { readFileSync } = await import('node:fs');
      const document = TextDocument.create(uri(path), 'rig', 1, text ?? readFileSync(pathIn(path), 'utf8'));
      documents.set(path, document);
      await connection.sendNotification('textDocument/didOpen', {
        textDocument: { uri: document.uri, languageId: 'rig', version: 1, text: document.getText() },
      });
    },
    replace(path, from, to) {
      const document = documentOf(path);
      const at = document.getText().indexOf(from);
      if (at < 0) throw new Error(`\`${from}\` does not stand in ${path}`);
      return change(path, { start: document.positionAt(at), end: document.positionAt(at + from.length) }, to);
    },
    async close(path) {
      documents.delete(path);
      await connection.sendNotification('textDocument/didClose', { textDocument: { uri: uri(path) } });
    },
    async save(files, type = FileChangeType.Changed) {
      for (const [path, text] of Object.entries(files)) write(path, text);
      await changesOnDisk(Object.keys(files).map((path) => ({ path, type })));
    },
    async remove(path) {
      rmSync(pathIn(path), { recursive: true });
      await changesOnDisk([{ path, type: FileChangeType.Deleted }]);
    },
    configure: (settings) =>
      connection.sendNotification('workspace/didChangeConfiguration', {
        settings: { rigseam: { asOf: '', inlayHints: true, codeLens: true, ...settings } },
      }),
    day: (next) => calendar.set(next),
    request: (method, path, params = {}) =>
      connection.sendRequest(method, { textDocument: { uri: uri(path) }, ...params }),
    positionOf(path, text, offset = 0) {
      const document = documentOf(path);
      const at = document.getText().indexOf(text);
      if (at < 0) throw new Error(`\`${text}\` does not stand in ${path}`);
      return document.positionAt(at + offset);
    },
    shown: (path) =>
      (current.get(path) ?? []).map(({ code, range, message }) => ({
        rule: String(code),
        at: documents.get(path)?.getText(range) ?? '',
        message: String(message),
      })),
    diagnostics: (path) => current.get(path) ?? [],
    async until(holds, what = 'what the test waits for') {
      for (const end = Date.now() + 10_000; !holds(); ) {
        if (Date.now() > end) throw new Error(`${what} did not come`);
        await wait(5);
      }
    },
    async quiet() {
      await editor.until(() => statuses.at(-1)?.busy === false, 'an idle server');
      await untilQuiet(() => said);
    },
    async stop() {
      await connection.sendRequest('shutdown');
      connection.dispose();
      stop();
      rmSync(folder, { recursive: true, force: true });
    },
  };
  return editor;
}

/** A server in this process, at a pace for tests. */
export function inProcess(clock: Clock): { readonly connection: ProtocolConnection; readonly stop: () => void } {
  const [here, there] = duplexPair();
  const quick = { dependants: 20, progress: 0, status: 20, refresh: 20 };
  const connection = createConnection(new StreamMessageReader(there), new StreamMessageWriter(there));
  startServer(connection, nodeHost(connection, clock), quick);
  return {
    connection: createProtocolConnection(new StreamMessageReader(here), new StreamMessageWriter(here)),
    stop: () => {
      here.destroy();
      there.destroy();
    },
  };
}

function duplexPair(): [Duplex, Duplex] {
  const make = (other: () => Duplex) =>
    new Duplex({
      read() {},
      write(chunk, _encoding, done) {
        other().push(chunk);
        done();
      },
    });
  const a: Duplex = make(() => b);
  const b: Duplex = make(() => a);
  return [a, b];
}

export function testClock(): Clock & { set(day: string): void } {
  let now = today;
  const listeners: (() => void)[] = [];
  return {
    today: () => now,
    onNewDay(listener) {
      listeners.push(listener);
      return () => undefined;
    },
    set(day) {
      now = day;
      for (const listener of listeners) listener();
    },
  };
}
