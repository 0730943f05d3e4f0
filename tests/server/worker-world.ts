// A bundle in a world that has what a worker of a browser has, and nothing of Node.
import { readFileSync } from 'node:fs';
import { createContext, runInContext } from 'node:vm';
import {
  AbstractMessageReader,
  AbstractMessageWriter,
  createProtocolConnection,
  Emitter,
  type Message,
  type ProtocolConnection,
} from 'vscode-languageserver/node';

/** The names that code outside of any place may use; the language's own come with each world. */
const web = () => ({
  ...{ setTimeout, clearTimeout, setInterval, clearInterval, queueMicrotask, structuredClone },
  ...{ TextDecoder, TextEncoder, URL, MessageChannel, performance, console, atob, btoa, Blob },
  Uint8Array, // in a browser, bytes that come over a port are of the worker's own kind
  addEventListener: () => undefined,
  importScripts: () => undefined,
});

/** Runs a bundle there; `more` are further names. Returns the world. */
export function runInWorker(bundle: string, more: Readonly<Record<string, unknown>> = {}): Record<string, unknown> {
  const world = createContext({ ...web(), ...more });
  runInContext(readFileSync(bundle, 'utf8'), world, { filename: bundle });
  return world;
}

class Reader extends AbstractMessageReader {
  readonly received = new Emitter<Message>();
  listen = this.received.event;
}

class Writer extends AbstractMessageWriter {
  private readonly send: (message: Message) => void;
  constructor(send: (message: Message) => void) {
    super();
    this.send = send;
  }
  write(message: Message): Promise<void> {
    this.send(structuredClone(message));
    return Promise.resolve();
  }
  end(): void {}
}

/** A server in a worker, and a connection over its message port. */
export function workerServer(bundle: string): { readonly connection: ProtocolConnection; readonly stop: () => void } {
  const reader = new Reader();
  let stopped = false;
  const world = runInWorker(bundle, {
    postMessage: (message: Message) => {
      const copy = structuredClone(message);
      setImmediate(() => {
        if (!stopped) reader.received.fire(copy);
      });
    },
  });
  const writer = new Writer((message) => {
    setImmediate(() => {
      if (!stopped) (world.onmessage as (event: { data: Message }) => void)({ data: message });
    });
  });
  return {
    connection: createProtocolConnection(reader, writer),
    stop: () => {
      stopped = true;
    },
  };
}
