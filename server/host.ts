// What the server needs of the place that it runs in: a Node process (main.ts) or a worker of a browser (browser.ts).
import type { Clock } from './clock.ts';
import type { Disk } from './disk.ts';
import type { Mirror } from './disk-mirror.ts';
import type { DiskFiles } from './files.ts';

/** Refusals are of {@link Misuse}, with a message for people. */
export interface Revisions {
  around(folder: string): RevisedFiles;
}

/** A working tree with its past. */
export interface RevisedFiles {
  readonly root: string;
  at(revision: string): DiskFiles;
  /** Now; `typed` gives the text of an open editor, which goes before that on disk. */
  now(typed: (path: string) => string | undefined): DiskFiles;
}

export interface Host {
  readonly clock: Clock;
  /** Everything that can be read; {@link mirror} is among it. */
  readonly disk: Disk;
  /** Takes in what the client hands over. */
  readonly mirror: Mirror;
  /** The text of any file, a paper that was written before say; undefined where there is none or it cannot be read. */
  textAt(path: string): Promise<string | undefined>;
  /** What git knows of the files around a folder; missing where there is no git to ask. */
  readonly revisions?: Revisions;
}
