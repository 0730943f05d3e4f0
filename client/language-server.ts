import { type Disposable, type Event, EventEmitter, type ExtensionContext, Uri, workspace } from 'vscode';
import { type CancellationToken, type LanguageClientOptions, State } from 'vscode-languageclient';
import {
  type Ask,
  filesAsk,
  type Status,
  staleMethod,
  statusMethod,
  statusSchema,
  textAsk,
} from '../language/protocol/index.ts';
import { mirrorTo, needsMirror, textOf } from './mirror.ts';
import { type Connected, connect } from './place.ts';
import { section, serverSettings } from './settings.ts';

/** The language server as the rest of the extension sees it. */
export interface LanguageServer extends Disposable {
  /** What was asked before may have another answer now: texts have changed, or another server runs. */
  readonly onStale: Event<void>;
  /** Starts it, or starts it anew: also after a crash, when a client of the library's own could not be used again. */
  restart(): Promise<void>;
  /** Asks the server. Rejects when it is not running, fails, answers what it must not, or the token is cancelled. */
  ask<P, R>(kind: Ask<P, R>, params: P, token?: CancellationToken): Promise<R>;
}

/** Makes the connection to the language server; nothing runs before `restart`. */
export function languageServer(
  context: ExtensionContext,
  onStatus: (status: Status | undefined) => void,
): LanguageServer {
  const watchers = [
    workspace.createFileSystemWatcher('**/*.{rig,csv,ics}', false, false, true),
    // A deleted folder is told as one event for the folder, which no pattern with an extension would see.
    workspace.createFileSystemWatcher('**/*', true, true, false),
  ];
  const stale = new EventEmitter<void>();
  let now: Connected | undefined;
  let served = '';

  const options = (): LanguageClientOptions => ({
    documentSelector: schemes().map((scheme) => ({ scheme, language: 'rig' })),
    synchronize: { fileEvents: watchers },
    initializationOptions: { ...serverSettings(), mirror: needsMirror() },
    diagnosticCollectionName: section,
    outputChannelName: 'Rigseam',
  });

  const onSettings = workspace.onDidChangeConfiguration((change) => {
    const client = now?.client;
    if (!change.affectsConfiguration(section) || !client?.isRunning()) return;
    // The same shape as in the start options, so that the server knows one kind of settings only.
    void client.sendNotification('workspace/didChangeConfiguration', { settings: { [section]: serverSettings() } });
  });

  const stop = async () => {
    const old = now;
    now = undefined;
    onStatus(undefined);
    // A server that crashed or never came up has nothing left to stop; that is no reason not to start the next.
    await old?.client.dispose().catch(() => undefined);
    old?.end();
  };

  const restart = async () => {
    await stop();
    served = schemes().join();
    const next = await connect(context, options());
    now = next;
    const { client } = next;
    client.onNotification(statusMethod, (params: unknown) => {
      const status = statusSchema.safeParse(params);
      if (status.success && now === next) onStatus(status.data);
    });
    client.onNotification(staleMethod, () => stale.fire());
    client.onRequest(textAsk.method, async (params: unknown) => ({
      text: (await textOf(Uri.parse(textAsk.params.parse(params).uri))) ?? null,
    }));
    client.onDidChangeState(({ newState }) => {
      // A server that has gone knows nothing any more; what it said last would be stale.
      if (newState === State.Stopped && now === next) onStatus(undefined);
    });
    await client.start();
    stale.fire();
    void mirror.fill();
  };

  const ask = async <P, R>({ method, reply }: Ask<P, R>, params: P, token?: CancellationToken): Promise<R> => {
    if (!now?.client.isRunning()) throw new Error('The language server is not running.');
    return reply.parse(await now.client.sendRequest(method, params, token));
  };
  const mirror = mirrorTo((slice) => ask(filesAsk, slice));
  const onFolders = workspace.onDidChangeWorkspaceFolders(() => {
    // Which documents are served is settled at the start.
    if (schemes().join() !== served) void restart().catch(() => undefined);
  });

  return {
    onStale: stale.event,
    restart,
    ask,
    dispose() {
      for (const each of [stale, ...watchers, onSettings, onFolders, mirror]) each.dispose();
      void stop();
    },
  };
}

/** Where documents may lie: also on the file systems of the workspace's folders, but not in past states of them. */
const schemes = (): string[] => [
  ...new Set(['file', 'untitled', ...(workspace.workspaceFolders ?? []).map(({ uri }) => uri.scheme)]),
];
