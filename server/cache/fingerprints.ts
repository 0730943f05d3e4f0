// Whether a file is the one that it was: by its content where it was read, else by whether it is there. What the file system
// says of it (size, times, number) spares reading it again; it is not believed of a file that was just being written.
import { hash } from 'node:crypto';
import { readFileSync, type Stats, statSync } from 'node:fs';
import type { DiskFiles } from '../files.ts';

/** The SHA-256 of the content in hexadecimal digits, or whether there is such a file or folder at all. */
export type Fingerprint = string;
const there: Fingerprint = 'there';
const gone: Fingerprint = 'gone';

/** A file whose fingerprint is known, and what the file system said of it then; missing where that is not to be believed. */
export interface Known {
  readonly path: string;
  readonly fingerprint: Fingerprint;
  readonly stat?: string;
}

/** Clocks of file systems may be as coarse as this, in milliseconds: within it two writings may look like one. */
const coarse = 2000;

export const sha256 = (content: string | Buffer): string => hash('sha256', content, 'hex');

/** Files that remember the fingerprint of each text that was read of them. */
export function fingerprinted(files: DiskFiles): { readonly files: DiskFiles; of(path: string): Fingerprint } {
  const read = new Map<string, Fingerprint>();
  return {
    files: {
      ...files,
      get roots() {
        return files.roots;
      },
      read(path) {
        const text = files.read(path);
        read.set(path, text === undefined ? gone : sha256(text));
        return text;
      },
    },
    of: (path) => read.get(path) ?? (files.exists(path) ? there : gone),
  };
}

/** What the file system says of a path now, if it has not changed since `began` (milliseconds since 1970). */
export function settledStat(path: string, began: number): string | undefined {
  const stat = statSync(path, { throwIfNoEntry: false });
  return stat && Math.max(stat.mtimeMs, stat.ctimeMs) < began - coarse ? written(stat) : undefined;
}

/** Whether a path is as it was; `read` gives the text of a file. */
export function isUnchanged({ path, fingerprint, stat }: Known, read: (path: string) => string | undefined): boolean {
  const now = statSync(path, { throwIfNoEntry: false });
  if (!now) return fingerprint === gone;
  if (fingerprint === there) return true;
  if (stat !== undefined && stat === written(now)) return true;
  if (fingerprint === gone && !now.isFile()) return true;
  const text = read(path);
  return (text === undefined ? gone : sha256(text)) === fingerprint;
}

const written = ({ size, mtimeMs, ctimeMs, ino }: Stats): string => `${size} ${mtimeMs} ${ctimeMs} ${ino}`;

/** The fingerprint of a program: another build may find other things. */
export const programFingerprint = (script: string): Fingerprint => sha256(readFileSync(script));
