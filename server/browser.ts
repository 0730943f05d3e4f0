// The language server in a worker of a browser, spoken to over its message port. It has no disk: the client hands over files
// and the code of the solver.
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import { solverAsk } from '../language/protocol/index.ts';
import { systemClock } from './clock.ts';
import { mirrorDisk } from './disk-mirror.ts';
import { textFromClient } from './from-client.ts';
import { startServer } from './server.ts';
import { solverCodeFrom } from './solver/highs.ts';

/** The worker's own end of its message port. */
const port = globalThis as unknown as ConstructorParameters<typeof BrowserMessageReader>[0];
const connection = createConnection(new BrowserMessageReader(port), new BrowserMessageWriter(port));

solverCodeFrom(async () => {
  const { code } = solverAsk.reply.parse(await connection.sendRequest(solverAsk.method, {}));
  return code ?? undefined;
});
const mirror = mirrorDisk();
startServer(connection, { clock: systemClock, disk: mirror, mirror, textAt: textFromClient(connection) });
