// What the commands that change many files have in common: what would be written where, and writing it.
import { relative } from 'node:path';
import { changedLines } from '../../language/authoring/changed-lines.ts';
import type { Change } from '../../language/authoring/draft.ts';
import { writeAll } from '../write-all.ts';

export interface BulkOptions {
  /** Without it nothing is written. */
  readonly write?: true;
  readonly json?: true;
}

/** Writes, if asked to, and says a line for each line that comes or goes, and a sum. */
export function carriedOut(
  changes: readonly Change[],
  from: string,
  { write }: BulkOptions,
): {
  readonly lines: readonly string[];
  readonly files: readonly { readonly file: string; readonly lines: ReturnType<typeof changedLines> }[];
} {
  if (write) writeAll(changes);
  const files = changes.map((change) => ({
    file: relative(from, change.path) || change.path,
    lines: changedLines(change),
  }));
  const lines = files.flatMap((one) => one.lines.map(({ line, sign, text }) => `${one.file}:${line}: ${sign} ${text}`));
  const count = `${changes.length} ${changes.length === 1 ? 'file' : 'files'}`;
  const sum =
    changes.length === 0
      ? 'Nothing is to be written.'
      : write
        ? `${count} written.`
        : `${count} would be written. Nothing was: \`--write\` does it.`;
  return { lines: [...lines, sum], files };
}
