// A Node process as the place that the server runs in: this machine's files, and through the client what lies elsewhere.
import type { Connection } from 'vscode-languageserver';
import { isVirtual } from './addresses.ts';
import { type Clock, systemClock } from './clock.ts';
import { diskPerPath } from './disk.ts';
import { mirrorDisk } from './disk-mirror.ts';
import { nodeDisk } from './disk-node.ts';
import { textFromClient } from './from-client.ts';
import { commitOf, repositoryAround } from './git.ts';
import type { Host, Revisions } from './host.ts';
import { filesAtCommit, filesNow } from './revision.ts';
import { textAt } from './written-before.ts';

export function nodeHost(connection: Connection, clock: Clock = systemClock): Host {
  const mirror = mirrorDisk();
  const fromClient = textFromClient(connection);
  return {
    clock,
    disk: diskPerPath((path) => (isVirtual(path) ? mirror : nodeDisk)),
    mirror,
    textAt: (path) => (isVirtual(path) ? fromClient(path) : textAt(path)),
    revisions,
  };
}

const revisions: Revisions = {
  around(folder) {
    const repository = repositoryAround(folder);
    return {
      root: repository.root,
      at: (revision) => filesAtCommit(repository, commitOf(repository, revision), new Map()),
      now: (typed) => filesNow(repository, typed),
    };
  },
};
