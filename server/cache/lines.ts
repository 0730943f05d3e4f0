// A file of lines that each carry a sum over themselves: what is cut short or damaged is left out, not believed.
import { randomUUID } from 'node:crypto';
import { closeSync, openSync, readFileSync, renameSync, rmSync, writeSync } from 'node:fs';
import { sha256 } from './fingerprints.ts';

const digits = 16;
const sumOf = (line: string) => sha256(line).slice(0, digits);

/** Writes lines so that at every moment the old file or the new one stands there, whole. Throws what the file system throws. */
export function writeLines(path: string, lines: Iterable<string>): void {
  const draft = `${path}.${randomUUID()}.draft`;
  try {
    const file = openSync(draft, 'wx');
    try {
      let heap: string[] = [];
      let size = 0;
      const flush = () => {
        let bytes = Buffer.from(heap.join(''));
        while (bytes.length > 0) bytes = bytes.subarray(writeSync(file, bytes));
        heap = [];
        size = 0;
      };
      for (const line of lines) {
        heap.push(`${sumOf(line)} ${line}\n`);
        size += line.length;
        if (size > 1 << 20) flush();
      }
      flush();
    } finally {
      closeSync(file);
    }
    renameSync(draft, path);
  } catch (error) {
    rmSync(draft, { force: true });
    throw error;
  }
}

/** The lines of a file that are what they were when they were written; undefined for those that are not, or for no file. */
export function readLines(path: string): readonly (string | undefined)[] {
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch {
    return [];
  }
  return text.split('\n').flatMap((whole) => {
    if (whole === '') return [];
    const line = whole.slice(digits + 1);
    return [whole.slice(0, digits) === sumOf(line) ? line : undefined];
  });
}
