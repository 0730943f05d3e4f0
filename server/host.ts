// What the server needs of the place that it runs in: a Node process (main.ts) or a worker of a browser.
import type { Clock } from './clock.ts';
import type { Disk } from './disk.ts';

export interface Host {
  readonly clock: Clock;
  readonly disk: Disk;
  /** The text of any file, a paper that was written before say; undefined where there is none or it cannot be read. */
  textAt(path: string): Promise<string | undefined>;
}
