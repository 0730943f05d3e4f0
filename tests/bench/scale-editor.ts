// The editor's server in a large workspace: the first findings of the open file, all findings, a keystroke, shared materials.
import { join } from 'node:path';
import type { Sown } from '../generator/sown.ts';
import { keystrokes } from './keystroke.ts';
import { peakOf } from './process.ts';
import { sharedEdit } from './shared-edit.ts';
import { heard, ourServer, quantile, startTalk, type Talk, uriOf } from './talk.ts';

export interface EditorFigures {
  /** Seconds. The first two count from the start of the server's process. */
  readonly first: number;
  readonly all: number;
  readonly own: number;
  readonly last: number;
  /** How many files use the shared materials. */
  readonly dependants: number;
  /** Milliseconds. */
  readonly p50: number;
  readonly p95: number;
  readonly peakMb: number;
}

const materials = 'shop/materials.rig';

export async function inEditor(folder: string, { texts, expected }: Sown, strokes: number): Promise<EditorFigures> {
  const wrong = new Set(expected.map(({ file }) => file));
  const own = [...texts].filter(
    ([path, text]) => !wrong.has(path) && text.includes('\nrig ') && text.includes(' cracked'),
  );
  const [open, typed] = [own[own.length >> 1], own[own.length >> 2]];
  if (!open || !typed) throw new Error('no rig has its records in its own file');
  const start = performance.now();
  const talk = await startTalk(ourServer, folder);
  try {
    const all = told(talk, new Set([...wrong].map((path) => uriOf(join(folder, path)))));
    const file = join(folder, open[0]);
    const first = heard(talk, file, ({ length }) => length > 0, 120_000);
    await talk.open(file, 'rig', open[1].replace(' cracked', ' craked'));
    const firstAt = (await first) - start;
    const allAt = (await all) - start;
    await talk.quiet();
    const times = await keystrokes(
      talk,
      { file: join(folder, typed[0]), languageId: 'rig', text: typed[1], behind: ' cracked' },
      strokes,
    );
    const users = [...texts].filter(
      ([path, text]) => text.includes('GreyLap') && path !== materials && !wrong.has(path),
    );
    const shared = await sharedEdit(
      talk,
      { file: join(folder, materials), text: texts.get(materials) as string, name: 'GreyLap' },
      new Set(users.map(([path]) => uriOf(join(folder, path)))),
      texts.size > 5000 ? 1 : 3,
      300_000,
    );
    return {
      first: firstAt / 1000,
      all: allAt / 1000,
      own: quantile(shared.own, 0.5) / 1000,
      last: quantile(shared.last, 0.5) / 1000,
      dependants: shared.files,
      p50: quantile(times, 0.5),
      p95: quantile(times, 0.95),
      peakMb: peakOf(talk.pid),
    };
  } finally {
    talk.stop();
  }
}

/** Resolves when every one of some files had diagnostics published. */
function told(talk: Talk, uris: Set<string>): Promise<number> {
  return new Promise((done, failed) => {
    const timer = setTimeout(() => failed(new Error(`${uris.size} files were not told of within 300 s`)), 300_000);
    const stop = talk.listen((uri, { length }) => {
      if (length === 0 || !uris.delete(uri) || uris.size > 0) return;
      clearTimeout(timer);
      stop();
      done(performance.now());
    });
  });
}
