// Where this extension runs: in a process of the desktop or of a remote machine, or in a worker of a browser.
import type { ExtensionContext } from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';

/** Whether it runs in a browser: there is no disk then, and no process to start. */
export const inBrowser = 'importScripts' in globalThis;

/** A server that is there, and the client that speaks to it; neither has said anything yet. */
export interface Connected {
  readonly client: BaseLanguageClient;
  /** Ends what the client cannot end itself. */
  end(): void;
}

/** Brings up the language server in the way that this place allows. Only the half that is used is ever run. */
export async function connect(context: ExtensionContext, options: LanguageClientOptions): Promise<Connected> {
  const place = inBrowser ? await import('./server-worker.ts') : await import('./server-process.ts');
  return place.connectTo(context, options);
}
