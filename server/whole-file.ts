// Files written in one step: whoever looks, and whenever the process is killed, finds the old text or the new one, never a half.
import {
  accessSync,
  chmodSync,
  closeSync,
  constants,
  existsSync,
  openSync,
  readdirSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { diskFailure } from './disk-failure.ts';

/** What a file is called until it is whole. It ends in nothing that anyone reads. */
const unfinished = /^\.rigseam-\d+-\d+\.tmp$/;
let count = 0;

/**
 * Writes a file beside its place and then moves it there. A link stays a link, permissions stay what they were, and a file that
 * may not be written is left alone. When something fails, what stood there stays, nothing is left beside it, and the error
 * names the path.
 */
export function writeWhole(path: string, content: string | Uint8Array): void {
  inOneStep(path, (beside) => writeFileSync(beside, content, { flag: 'wx' }));
}

/** The same of a text that comes in parts and is too long to be held as a whole. */
export function writeWholeInParts(path: string, parts: Iterable<string>): void {
  inOneStep(path, (beside) => {
    const file = openSync(beside, 'wx');
    try {
      for (const part of parts)
        for (let bytes = Buffer.from(part); bytes.length > 0; ) bytes = bytes.subarray(writeSync(file, bytes));
    } finally {
      closeSync(file);
    }
  });
}

function inOneStep(path: string, write: (beside: string) => void): void {
  let beside: string | undefined;
  try {
    const target = existsSync(path) ? realpathSync(path) : path;
    const mode = statSync(target, { throwIfNoEntry: false })?.mode;
    if (mode !== undefined) accessSync(target, constants.W_OK);
    beside = join(dirname(target), `.rigseam-${process.pid}-${count++}.tmp`);
    write(beside);
    if (mode !== undefined) chmodSync(beside, mode);
    renameSync(beside, target);
  } catch (error) {
    if (beside) discard(beside);
    throw diskFailure(path, 'written', error);
  }
}

function discard(path: string): void {
  try {
    rmSync(path, { force: true });
  } catch {
    // A folder that takes no file gives none away either; the first error is the one to tell.
  }
}

/** No write takes as long, in milliseconds: what is older was left by a process that was killed. */
const abandoned = 60 * 60 * 1000;

/** Removes what killed processes left unfinished in a folder. `now` is the time in milliseconds since 1970. */
export function sweep(folder: string, now: number): void {
  let names: string[];
  try {
    names = readdirSync(folder);
  } catch {
    return;
  }
  for (const name of names) {
    if (!unfinished.test(name)) continue;
    const path = join(folder, name);
    try {
      if (now - statSync(path).mtimeMs > abandoned) rmSync(path);
    } catch {
      // Another process was faster, or may and we may not.
    }
  }
}
