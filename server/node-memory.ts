// How soon the memory of a process is looked through for what nobody needs any more.
import { setFlagsFromString } from 'node:v8';

/**
 * Of what is read of a file next to nothing lives on, so that looking for what does costs milliseconds: done more often than
 * by default, it keeps a process that reads many thousand files a third smaller.
 */
export const throwAwaySoon = (): void => setFlagsFromString('--heap-growing-percent=20');
