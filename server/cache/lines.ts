// A file of lines that each carry a sum over themselves: what is cut short or damaged is left out, not believed.
import { readFileSync } from 'node:fs';
import { writeWholeInParts } from '../whole-file.ts';
import { sha256 } from './fingerprints.ts';

const digits = 16;
const sumOf = (line: string) => sha256(line).slice(0, digits);

/** Writes lines in one step. Fails with an error that names the path. */
export function writeLines(path: string, lines: Iterable<string>): void {
  writeWholeInParts(path, heaps(lines));
}

/** Some lines at a time: each by itself would be a call of the system. */
function* heaps(lines: Iterable<string>): Generator<string> {
  let heap: string[] = [];
  let size = 0;
  for (const line of lines) {
    heap.push(`${sumOf(line)} ${line}\n`);
    size += line.length;
    if (size <= 1 << 20) continue;
    yield heap.join('');
    heap = [];
    size = 0;
  }
  yield heap.join('');
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
