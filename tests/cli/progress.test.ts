import { expect, it } from 'vitest';
import { progressOn } from '../../server/cli/progress.ts';

/** A terminal that keeps what is written, and a clock that goes on 60 ms at each look. */
function told(isTTY: boolean, environment: Readonly<Record<string, string>>): string {
  let written = '';
  let time = 0;
  const terminal = {
    isTTY,
    write(text: string) {
      written += text;
    },
  };
  const progress = progressOn(terminal, environment, () => {
    time += 60;
    return time;
  });
  for (let done = 0; done < 10; done++) progress.tell(done, 10);
  progress.end();
  return written;
}

it('writes over one line of a terminal, and takes it away at the end', () => {
  const text = told(true, {});
  expect(text).toContain('of 10 files');
  expect(text.endsWith('\r\u001B[2K')).toBe(true);
  expect(text).not.toContain('\n');
  expect(told(true, { CI: 'false' })).toBe(text);
});

it('is silent in CI, and where nobody looks', () => {
  expect(told(true, { CI: 'true' })).toBe('');
  expect(told(false, {})).toBe('');
});
