// How far a long run has come: one line on a terminal that is written over, and nothing anywhere else.

export interface Terminal {
  readonly isTTY?: boolean;
  write(text: string): unknown;
}

export interface Progress {
  readonly tell: (done: number, total: number) => void;
  /** Takes the line away. */
  readonly end: () => void;
}

const silent: Progress = { tell: () => undefined, end: () => undefined };

/** The least time between two lines, in milliseconds: the terminal is not what a run waits for. */
const pause = 100;

/**
 * Progress for a person who waits: only where the stream is a terminal, and not in CI (`CI` is set, and not to `false`).
 * `now` is a clock in milliseconds.
 */
export function progressOn(
  terminal: Terminal,
  environment: Readonly<Record<string, string | undefined>>,
  now: () => number,
): Progress {
  const { CI } = environment;
  if (!terminal.isTTY || (CI !== undefined && CI !== '' && CI !== 'false')) return silent;
  let last = now();
  let shown = false;
  return {
    tell(done, total) {
      if (now() - last < pause) return;
      last = now();
      shown = true;
      terminal.write(`\r\u001B[2K${done} of ${total} files`);
    },
    end() {
      if (shown) terminal.write('\r\u001B[2K');
      shown = false;
    },
  };
}
