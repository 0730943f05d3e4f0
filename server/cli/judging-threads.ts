// Many files are judged by several threads: paths go in, what the files say comes out, never records.
import { availableParallelism } from 'node:os';
import { type MessagePort, Worker } from 'node:worker_threads';
import type { Dates } from '../../language/resolve/types.ts';
import { type Judged, judging } from './judging.ts';
import { type Asked, diskOf } from './paths.ts';

/** What a thread is told when it begins. */
interface Task {
  readonly roots: Asked['roots'];
  readonly dates: Dates;
}

/** So many files at a time: neighbours share what they claim, and the last one to end has little left. */
const portion = 64;
/** Fewer files a thread are judged sooner than one has started. */
const worthAThread = 500;
/** Each wants room of its own. */
const mostThreads = 4;

/** In megabytes; a thread holds little, and what is young for long is mostly dead. */
const room = { maxYoungGenerationSizeMb: 48 };

/** How many threads some files are worth; 1 stands for none beside the one that asks. */
export function threadsFor(files: number): number {
  return Math.max(1, Math.min(availableParallelism(), mostThreads, Math.floor(files / worthAThread)));
}

/**
 * Judges files in threads of a script that calls {@link serveJudging}. The order of the result is that of the paths. Fails as
 * the first thread that fails does.
 */
export async function judgeInThreads(
  script: string,
  paths: readonly string[],
  task: Task,
  threads: number,
  tell: (done: number, total: number) => void,
): Promise<readonly Judged[]> {
  const portions: (readonly Judged[])[] = [];
  const total = Math.ceil(paths.length / portion);
  let next = 0;
  let done = 0;
  const workers = Array.from({ length: threads }, () => new Worker(script, { workerData: task, resourceLimits: room }));
  try {
    await Promise.all(
      workers.map(
        (worker) =>
          new Promise<void>((resolve, reject) => {
            const hand = () => {
              if (next === total) return resolve();
              const number = next++;
              worker.postMessage({ number, paths: paths.slice(number * portion, (number + 1) * portion) });
            };
            worker.on('message', ({ number, judged }: { number: number; judged: readonly Judged[] }) => {
              portions[number] = judged;
              done += judged.length;
              tell(done, paths.length);
              hand();
            });
            worker.on('error', reject);
            worker.on('exit', (code) => reject(new Error(`a thread that checks files ended with code ${code}`)));
            hand();
          }),
      ),
    );
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
  return portions.flat();
}

/** The other side: judges what it is handed until nobody hands it any more. */
export function serveJudging(port: MessagePort, { roots, dates }: Task): void {
  const { judge } = judging(diskOf({ roots }), dates);
  port.on('message', ({ number, paths }: { number: number; paths: readonly string[] }) => {
    port.postMessage({ number, judged: paths.map(judge) });
  });
}
