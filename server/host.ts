// What the server needs of the place that it runs in: a Node process (main.ts) or a worker of a browser (browser.ts).
import type { Clock } from './clock.ts';
import type { Disk } from './disk.ts';
import type { Mirror } from './disk-mirror.ts';

export interface Host {
  readonly clock: Clock;
  /** Everything that can be read; {@link mirror} is among it. */
  readonly disk: Disk;
  /** Takes in what the client hands over. */
  readonly mirror: Mirror;
  /** The text of any file, a paper that was written before say; undefined where there is none or it cannot be read. */
  textAt(path: string): Promise<string | undefined>;
}
