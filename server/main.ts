// The language server as a Node process; the arguments say how it is spoken to (`--node-ipc`, `--stdio`).
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { nodeHost } from './node-host.ts';
import { throwAwaySoon } from './node-memory.ts';
import { startServer } from './server.ts';

throwAwaySoon();
const connection = createConnection(ProposedFeatures.all);
startServer(connection, nodeHost(connection));
