// A check as the command line runs it: in threads where they pay, with what was found before where a folder for it is named.
import type { Dates } from '../../language/resolve/types.ts';
import { throwAwaySoon } from '../node-memory.ts';
import { type Checked, checked, type Tell, together } from './check.ts';
import { checkedWithKept } from './check-kept.ts';
import { type Judged, judging } from './judging.ts';
import { judgeInThreads, threadsFor } from './judging-threads.ts';
import { type Asked, diskOf } from './paths.ts';

export interface Run {
  /** The program, which calls `serveJudging` when it is started as a thread. */
  readonly script: string;
  readonly tell: Tell;
  readonly warn: (message: string) => void;
  /** As many as pay, if it is missing. */
  readonly threads?: number;
  /** The folder of what was found before. */
  readonly cache?: string;
  /** Paths that changed: only files that this can have given other findings are checked. */
  readonly changed?: ReadonlySet<string>;
}

export async function runCheck(asked: Asked, dates: Dates, run: Run): Promise<Checked> {
  const { script, tell, warn, cache, changed } = run;
  if (changed) return checked(asked, dates, { changed, tell });
  const judge = (paths: readonly string[]) => judgeAll(paths, asked, dates, run);
  if (cache !== undefined) return checkedWithKept(asked, dates, { folder: cache, script, judge, warn });
  const judged = await judge(asked.files);
  return together(asked, dates, judging(diskOf(asked), dates).project, judged);
}

async function judgeAll(
  paths: readonly string[],
  { roots }: Asked,
  dates: Dates,
  { script, tell, threads = threadsFor(paths.length) }: Run,
): Promise<readonly Judged[]> {
  throwAwaySoon();
  if (threads > 1) return judgeInThreads(script, paths, { roots, dates }, threads, tell);
  const { judge } = judging(diskOf({ roots }), dates);
  return paths.map((path, done) => {
    tell(done, paths.length);
    return judge(path);
  });
}
