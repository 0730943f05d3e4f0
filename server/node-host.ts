// A Node process as the place that the server runs in: this machine's files, and through the client what lies elsewhere.
import type { Connection } from 'vscode-languageserver';
import { isVirtual } from './addresses.ts';
import { type Clock, systemClock } from './clock.ts';
import { diskPerPath } from './disk.ts';
import { mirrorDisk } from './disk-mirror.ts';
import { nodeDisk } from './disk-node.ts';
import { textFromClient } from './from-client.ts';
import type { Host } from './host.ts';
import { textAt } from './written-before.ts';

export function nodeHost(connection: Connection, clock: Clock = systemClock): Host {
  const mirror = mirrorDisk();
  const fromClient = textFromClient(connection);
  return {
    clock,
    disk: diskPerPath((path) => (isVirtual(path) ? mirror : nodeDisk)),
    mirror,
    textAt: (path) => (isVirtual(path) ? fromClient(path) : textAt(path)),
  };
}
