// The language server as a Node process; the arguments say how it is spoken to (`--node-ipc`, `--stdio`).
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { systemClock } from './clock.ts';
import { startServer } from './server.ts';

startServer(createConnection(ProposedFeatures.all), systemClock);
