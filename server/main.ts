// The language server as a Node process; the arguments say how it is spoken to (`--node-ipc`, `--stdio`).
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { systemClock } from './clock.ts';
import { nodeDisk } from './disk-node.ts';
import { startServer } from './server.ts';
import { textAt } from './written-before.ts';

startServer(createConnection(ProposedFeatures.all), { clock: systemClock, disk: nodeDisk, textAt });
