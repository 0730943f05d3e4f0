// An edit of a file that many others use: how long until its own diagnostics come, and those of the last that uses it.
import { heard, placeOf, type Talk } from './talk.ts';

export interface SharedFile {
  readonly file: string;
  readonly text: string;
  /** What it declares and the dependants name. */
  readonly name: string;
}

/**
 * A name gets two more characters and its own form back: every file that names it has one finding more, then one less, and the
 * file itself too. Milliseconds, in the order of the edits; `dependants` are URIs.
 */
export async function sharedEdit(
  talk: Talk,
  { file, text, name }: SharedFile,
  dependants: ReadonlySet<string>,
  rounds: number,
  patience = 60_000,
) {
  const at = placeOf(text, text.indexOf(name) + name.length);
  const [own, last]: [number[], number[]] = [[], []];
  const first = heard(talk, file, () => true);
  await talk.open(file, 'rig', text);
  await first;
  await talk.quiet();
  for (let i = 0; i < rounds; i++) {
    for (const put of [true, false]) {
      // The mark that the language does not use speaks of the file itself; the new name of all the others.
      const waiting = new Set(dependants);
      let done = 0;
      const all = new Promise<void>((finished, failed) => {
        const timer = setTimeout(
          () => failed(new Error(`${waiting.size} dependants were not told within ${patience / 1000} s`)),
          patience,
        );
        const stop = talk.listen((uri) => {
          if (!waiting.delete(uri) || waiting.size > 0) return;
          clearTimeout(timer);
          stop();
          done = performance.now();
          finished();
        });
      });
      const mine = heard(talk, file, ({ length }) => (put ? length > 0 : length === 0), patience);
      const start = performance.now();
      await talk.change(file, at, put ? 0 : 2, put ? 'x%' : '');
      own.push((await mine) - start);
      await all;
      last.push(done - start);
      await talk.quiet(200);
    }
  }
  return { own, last, files: dependants.size };
}
