import { type ExtensionContext, Uri, workspace } from 'vscode';
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  LanguageClient,
  type LanguageClientOptions,
} from 'vscode-languageclient/browser';
import { solverAsk } from '../language/protocol/index.ts';
import type { Connected } from './place.ts';
import { section } from './settings.ts';

/** What is used of a worker: the types of a web page, where its own is, are not ours. */
interface WorkerPort {
  onerror: ((event: { readonly message?: string; preventDefault(): void }) => void) | null;
  terminate(): void;
}
declare const Worker: new (url: string) => WorkerPort;

/** The language server in a worker. */
export async function connectTo(context: ExtensionContext, options: LanguageClientOptions): Promise<Connected> {
  const packed = (name: string) => workspace.fs.readFile(Uri.joinPath(context.extensionUri, 'dist', name));
  // A worker may only be started from where the page comes from; where the extension lies is often somewhere else.
  const url = URL.createObjectURL(new Blob([new Uint8Array(await packed('server.cjs'))], { type: 'text/javascript' }));
  const worker = new Worker(url);
  const failed = new Promise<never>((_, reject) => {
    worker.onerror = (event) => {
      event.preventDefault();
      reject(new Error(event.message ?? 'its worker could not be started.'));
    };
  });
  failed.catch(() => undefined); // after the start nobody waits for it
  const transports = { reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) };
  const client = new LanguageClient(section, 'Rigseam', async () => transports, options);
  client.onRequest(solverAsk.method, async () => ({
    code: await packed('highs.wasm').then(
      (bytes) => new Uint8Array(bytes),
      () => null,
    ),
  }));
  const start = client.start.bind(client);
  client.start = () => Promise.race([start(), failed]);
  return {
    client,
    end() {
      worker.terminate();
      URL.revokeObjectURL(url);
    },
  };
}
