// Several files written together: all of them, or none.
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import type { Change } from '../language/authoring/draft.ts';
import { diskFailure } from './disk-failure.ts';
import { writeWhole } from './whole-file.ts';

/**
 * Writes changes, each file in one step. Where one cannot be written, or is not any more what it was when the change was made,
 * those that were written are put back and the error names the path.
 */
export function writeAll(changes: readonly Change[]): void {
  const all = changes.map((change) => ({ ...change, bytes: bytesBefore(change) }));
  const done: typeof all = [];
  try {
    for (const one of all) {
      mkdirSync(dirname(one.path), { recursive: true });
      writeWhole(one.path, (one.bytes?.subarray(0, 3).equals(mark) ? '\uFEFF' : '') + one.after);
      done.push(one);
    }
  } catch (error) {
    for (const { path, bytes } of done.reverse()) {
      if (bytes) writeWhole(path, bytes);
      else rmSync(path, { force: true });
    }
    throw error;
  }
}

const mark = Buffer.from('\uFEFF');

/** What lies there now; undefined where there is nothing and nothing is expected. */
function bytesBefore({ path, before }: Change): Buffer | undefined {
  let bytes: Buffer | undefined;
  try {
    bytes = readFileSync(path);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw diskFailure(path, 'read', error);
  }
  let text: string | undefined;
  try {
    text = bytes && new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Error(`${path} is no plain UTF-8 text: nothing was written.`);
  }
  if (text !== before) throw new Error(`${path} has changed in the meantime: nothing was written. Run it once more.`);
  return bytes;
}
