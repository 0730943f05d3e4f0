// When a server has nothing more to say.
import { setTimeout as wait } from 'node:timers/promises';

/**
 * Turns of 10 ms without a word, longer than anything that a server at the pace of the tests still waits for. Turns are counted,
 * not time: where the process stands still, the timers of a server in it stand still as well.
 */
const quietTurns = 15;

/** Waits until nothing has been said for a while; `said` counts what was. */
export async function untilQuiet(said: () => number): Promise<void> {
  for (let calm = 0, before = said(); calm < quietTurns; calm++) {
    await wait(10);
    if (said() !== before) calm = 0;
    before = said();
  }
}
