import type { ExtensionContext } from 'vscode';
import { LanguageClient, type LanguageClientOptions, TransportKind } from 'vscode-languageclient/node';
import type { Connected } from './place.ts';
import { section } from './settings.ts';

/** The language server as a process of its own. */
export function connectTo(context: ExtensionContext, options: LanguageClientOptions): Connected {
  const module = context.asAbsolutePath('dist/server.cjs');
  const client = new LanguageClient(
    section,
    'Rigseam',
    {
      run: { module, transport: TransportKind.ipc },
      debug: { module, transport: TransportKind.ipc, options: { execArgv: ['--nolazy', '--inspect=6010'] } },
    },
    options,
  );
  return { client, end: () => undefined };
}
