// A text that lines are put into and changed in, counting them as people do.

export interface Page {
  /** Puts lines before the last one, which closes the block; gives the number of the first of them, from 1. */
  add(...lines: readonly string[]): number;
  /** Changes the last line that matches and gives its number; undefined where none does. */
  change(pattern: RegExp, to: string): number | undefined;
  /** Takes out the last line that matches and gives the number that it had. */
  cut(pattern: RegExp): number | undefined;
  /** The number of the last line that matches. */
  find(pattern: RegExp): number | undefined;
  text(): string;
}

export function pageOf(text: string): Page {
  const lines = text.replace(/\n$/, '').split('\n');
  const last = (pattern: RegExp) => lines.findLastIndex((line) => pattern.test(line));
  const number = (index: number) => (index < 0 ? undefined : index + 1);
  return {
    add(...more) {
      lines.splice(-1, 0, ...more);
      return lines.length - more.length;
    },
    change(pattern, to) {
      const at = last(pattern);
      if (at >= 0) lines[at] = (lines[at] as string).replace(pattern, to);
      return number(at);
    },
    cut(pattern) {
      const at = last(pattern);
      if (at >= 0) lines.splice(at, 1);
      return number(at);
    },
    find: (pattern) => number(last(pattern)),
    text: () => `${lines.join('\n')}\n`,
  };
}
