// Checks closed files a little at a time, so that a request never waits for them.
import type { Session } from './session.ts';
import { nextTurn } from './turn.ts';

export interface Progress {
  begin(): void;
  report(done: number, of: number): void;
  end(): void;
}

export interface Background {
  /** Closed files are stale: they are checked once nobody types any more. */
  wake(): void;
  /** The folders of the workspace have changed: finds their files and checks them, at once. */
  discover(): void;
  /** Settles once the files of the folders are found; checked they may be later. */
  found(): Promise<void>;
  readonly busy: boolean;
  stop(): void;
}

/** How long one slice of work may hold up a request, in milliseconds. */
const slice = 10;
/** In milliseconds. */
export interface BackgroundPace {
  /** Typing goes on for a while: the dependants of what is typed in wait for a pause. */
  readonly dependants: number;
  /** Work that is done sooner shows no progress. */
  readonly progress: number;
}

/** `settled` is called whenever nothing is stale any more. */
export function backgroundChecks(
  session: Session,
  progress: Progress,
  pace: BackgroundPace,
  settled: () => void,
): Background {
  let timer: NodeJS.Timeout | undefined;
  let running = false;
  let stopped = false;
  let steps: Iterator<void> | undefined;

  const closed = function* () {
    for (const path of session.stale) if (!session.isOpen(path)) yield path;
  };
  /** Does one piece of work; false when there is none. */
  const step = (): boolean => {
    if (steps) {
      if (!steps.next().done) return true;
      steps = undefined;
    }
    for (const path of closed()) {
      session.check(path);
      return true;
    }
    return false;
  };

  const run = async () => {
    if (running) return;
    running = true;
    const started = performance.now();
    let [done, shown] = [0, false];
    for (let more = true; more && !stopped; ) {
      const from = performance.now();
      while (more && performance.now() - from < slice) {
        more = step();
        done++;
      }
      if (!shown && more && performance.now() - started > pace.progress) {
        shown = true;
        progress.begin();
      }
      if (shown) progress.report(done, done + session.stale.size);
      await nextTurn();
    }
    running = false;
    if (shown) progress.end();
    if (stopped) return;
    // What became stale while the last slice gave way to a request woke nobody.
    if (!closed().next().done) {
      runAfter(pace.dependants);
      return;
    }
    session.checkTogether();
    settled();
  };
  const runAfter = (delay: number) => {
    clearTimeout(timer);
    timer = setTimeout(() => void run(), delay);
  };

  return {
    wake() {
      if (!running) runAfter(pace.dependants);
    },
    discover() {
      steps = session.discover()[Symbol.iterator]();
      runAfter(0);
    },
    async found() {
      while (steps !== undefined && !stopped) await nextTurn();
    },
    get busy() {
      return running || steps !== undefined;
    },
    stop() {
      stopped = true;
      clearTimeout(timer);
    },
  };
}
