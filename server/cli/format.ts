// `rigseam format`: files brought into form, or the list of those that are not.
import { readFileSync } from 'node:fs';
import { dirname, relative } from 'node:path';
import { edited, type Formatting, format } from '../../language/format/index.ts';
import { diskFailure } from '../disk-failure.ts';
import { sweep, writeWhole } from '../whole-file.ts';
import { type Asked, Misuse } from './paths.ts';
import { positions } from './text.ts';

export interface FormatResult {
  /** One line a file that changes, one for each place that is left as it stands, and a sum. */
  readonly text: string;
  /** Files that were changed, or would be. */
  readonly changed: readonly string[];
  /** Something was not understood and left alone. */
  readonly damaged: boolean;
}

/** Formats files. Writes only those that change, each in one step; `check` writes nothing. */
export function formatFiles({ files, from }: Asked, { check }: { readonly check: boolean }): FormatResult {
  const lines: string[] = [];
  const changed: string[] = [];
  let damaged = false;
  if (!check) for (const folder of new Set(files.map((path) => dirname(path)))) sweep(folder, Date.now());
  for (const path of files) {
    const name = relative(from, path) || path;
    const bytes = bytesOf(path, name);
    if (!bytes) continue;
    const text = utf8(bytes, name);
    const formatting = format(text);
    if (formatting.edits.length > 0) {
      if (!check) writeWhole(path, edited(text, formatting.edits));
      changed.push(name);
      lines.push(`${check ? 'would change' : 'changed'}  ${name}`);
    }
    for (const line of leftText(text, formatting, name)) lines.push(line);
    damaged ||= formatting.left.length > 0;
  }
  const count = `${files.length} ${files.length === 1 ? 'file' : 'files'}`;
  lines.push(`${count}: ${changed.length} ${check ? 'would change' : 'changed'}.`);
  return { text: `${lines.join('\n')}\n`, changed, damaged };
}

/** Formats what comes in; `left` says, a line each, what was left as it stands. */
export function formatText(bytes: Uint8Array): {
  readonly text: string;
  readonly changed: boolean;
  readonly left: readonly string[];
} {
  const text = utf8(bytes, 'The text');
  const formatting = format(text);
  return {
    text: edited(text, formatting.edits),
    changed: formatting.edits.length > 0,
    left: leftText(text, formatting, '-'),
  };
}

function leftText(text: string, { left }: Formatting, name: string): string[] {
  const rangeOf = positions(text);
  return left.map(({ at, why }) => {
    const { line, character } = rangeOf(at).start;
    return `${name}:${line + 1}:${character + 1}  left as it stands: ${why}`;
  });
}

/** The text of bytes, its mark of byte order kept. Bytes that are no text would not survive being written. */
function utf8(bytes: Uint8Array, name: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new Misuse(`${name} is no plain UTF-8 text: nothing was changed in it.`);
  }
}

/** The bytes of a file; undefined where it has gone since it was listed. */
function bytesOf(path: string, name: string): Uint8Array | undefined {
  try {
    return readFileSync(path);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
    throw diskFailure(name, 'read', error);
  }
}
