import { type Disposable, type ExtensionContext, workspace } from 'vscode';
import {
  type CancellationToken,
  LanguageClient,
  type LanguageClientOptions,
  State,
  TransportKind,
} from 'vscode-languageclient/node';
import { type Ask, type Status, statusMethod, statusSchema } from '../language/protocol/index.ts';
import { section, serverSettings } from './settings.ts';

/** The language server as the rest of the extension sees it. */
export interface LanguageServer extends Disposable {
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
  const module = context.asAbsolutePath('dist/server.js');
  const watchers = [
    workspace.createFileSystemWatcher('**/*.rig', false, false, true),
    // A deleted folder is told as one event for the folder, which no pattern with an extension would see.
    workspace.createFileSystemWatcher('**/*', true, true, false),
  ];
  let client: LanguageClient | undefined;

  const options = (): LanguageClientOptions => ({
    documentSelector: [{ scheme: 'file', language: 'rig' }],
    synchronize: { fileEvents: watchers },
    initializationOptions: serverSettings(),
    diagnosticCollectionName: section,
    outputChannelName: 'Rigseam',
  });

  const onSettings = workspace.onDidChangeConfiguration((change) => {
    if (!change.affectsConfiguration(section) || !client?.isRunning()) return;
    // The same shape as in the start options, so that the server knows one kind of settings only.
    void client.sendNotification('workspace/didChangeConfiguration', { settings: { [section]: serverSettings() } });
  });

  const stop = async () => {
    const old = client;
    client = undefined;
    onStatus(undefined);
    // A server that crashed or never came up has nothing left to stop; that is no reason not to start the next.
    await old?.dispose().catch(() => undefined);
  };

  return {
    async restart() {
      await stop();
      const next = new LanguageClient(
        section,
        'Rigseam',
        {
          run: { module, transport: TransportKind.ipc },
          debug: { module, transport: TransportKind.ipc, options: { execArgv: ['--nolazy', '--inspect=6010'] } },
        },
        options(),
      );
      client = next;
      next.onNotification(statusMethod, (params: unknown) => {
        const status = statusSchema.safeParse(params);
        if (status.success && client === next) onStatus(status.data);
      });
      next.onDidChangeState(({ newState }) => {
        // A server that has gone knows nothing any more; what it said last would be stale.
        if (newState === State.Stopped && client === next) onStatus(undefined);
      });
      await next.start();
    },
    async ask({ method, reply }, params, token) {
      if (!client?.isRunning()) throw new Error('The language server is not running.');
      return reply.parse(await client.sendRequest(method, params, token));
    },
    dispose() {
      for (const watcher of watchers) watcher.dispose();
      onSettings.dispose();
      void stop();
    },
  };
}
