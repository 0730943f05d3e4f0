// An editor whose workspace lies on a file system that only it knows: it hands its files over to the server.
import { setTimeout as wait } from 'node:timers/promises';
import type {
  Diagnostic,
  FileChangeType,
  ProtocolConnection,
  PublishDiagnosticsParams,
} from 'vscode-languageserver/node';
import { filesAsk, type Status, statusMethod, textAsk } from '../../language/protocol/index.ts';
import { inProcess, testClock } from './editor.ts';
import { untilQuiet } from './quiet.ts';

export const folderUri = 'vault://a%2Bb@host/some%20rigs';
export const uriIn = (path: string) => `${folderUri}/${path}`;

const nothing = { texts: [], names: [], gone: [] };

export interface VirtualEditor {
  readonly connection: ProtocolConnection;
  /** What was published, in order. */
  readonly published: PublishDiagnosticsParams[];
  /** What the server asked to read. */
  readonly asked: string[];
  diagnostics(path: string): readonly Diagnostic[];
  /** Hands over files, a slice of so many at a time; undefined holds back the last word. */
  handOver(files: Readonly<Record<string, string>>, names?: readonly string[], last?: boolean): Promise<void>;
  /** Tells that a file or a folder has gone. */
  drop(path: string): Promise<void>;
  open(path: string, text: string): Promise<void>;
  watched(path: string, type: FileChangeType): Promise<void>;
  until(holds: () => boolean, what: string): Promise<void>;
  quiet(): Promise<void>;
  stop(): Promise<void>;
}

/** `texts` are files that can be read one by one, papers say. */
export async function startVirtualEditor(texts: Readonly<Record<string, string>> = {}): Promise<VirtualEditor> {
  const { connection, stop } = inProcess(testClock());
  const published: PublishDiagnosticsParams[] = [];
  const asked: string[] = [];
  const current = new Map<string, readonly Diagnostic[]>();
  let busy = true;
  let said = 0;
  connection.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
    said++;
    published.push(params);
    current.set(decodeURIComponent(params.uri), params.diagnostics);
  });
  connection.onNotification(statusMethod, (status: Status) => {
    said++;
    busy = status.busy;
  });
  connection.onRequest(textAsk.method, (params: unknown) => {
    const { uri } = textAsk.params.parse(params);
    const path = decodeURIComponent(uri).replace(`${decodeURIComponent(folderUri)}/`, '');
    asked.push(path);
    return { text: texts[path] ?? null };
  });
  connection.onRequest('client/registerCapability', () => null);
  connection.onRequest('window/workDoneProgress/create', () => null);
  connection.listen();
  await connection.sendRequest('initialize', {
    processId: process.pid,
    rootUri: null,
    capabilities: { workspace: { workspaceFolders: true } },
    initializationOptions: { mirror: true },
    workspaceFolders: [{ name: 'vault', uri: folderUri }],
  });
  await connection.sendNotification('initialized', {});

  const editor: VirtualEditor = {
    connection,
    published,
    asked,
    diagnostics: (path) => current.get(decodeURIComponent(uriIn(path))) ?? [],
    async handOver(files, names = [], last = true) {
      const waiting = Object.entries(files).map(([path, text]) => ({ uri: uriIn(path), text }));
      while (waiting.length > 0)
        await connection.sendRequest(filesAsk.method, { ...nothing, texts: waiting.splice(0, 3), more: true });
      await connection.sendRequest(filesAsk.method, { ...nothing, names: names.map(uriIn), more: !last });
    },
    async drop(path) {
      await connection.sendRequest(filesAsk.method, { ...nothing, gone: [uriIn(path)], more: false });
    },
    async open(path, text) {
      await connection.sendNotification('textDocument/didOpen', {
        textDocument: { uri: uriIn(path), languageId: 'rig', version: 1, text },
      });
    },
    async watched(path, type) {
      await connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: uriIn(path), type }] });
    },
    async until(holds, what) {
      for (const end = performance.now() + 10_000; !holds(); await wait(5))
        if (performance.now() > end) throw new Error(`${what} did not come`);
    },
    async quiet() {
      await editor.until(() => !busy, 'an idle server');
      await untilQuiet(() => said);
    },
    async stop() {
      await connection.sendRequest('shutdown');
      connection.dispose();
      stop();
    },
  };
  return editor;
}
