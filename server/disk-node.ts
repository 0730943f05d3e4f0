// The file system of this machine.
import { type Dirent, existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, resolve, sep } from 'node:path';
import { skippedFolders } from '../language/protocol/index.ts';
import type { Disk } from './disk.ts';
import { diskFailure } from './disk-failure.ts';

/** A path of this machine as the engine writes it: absolute, forward slashes. */
export function enginePath(path: string): string {
  const absolute = resolve(path);
  return sep === '\\' ? absolute.replaceAll('\\', '/') : absolute;
}

function textOf(path: string): string {
  const text = readFileSync(path, 'utf8');
  // Editors take the mark of byte order off: so columns are counted alike.
  return text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
}

export const nodeDisk: Disk = {
  read(path) {
    try {
      return textOf(path);
    } catch {
      return undefined;
    }
  },
  exists: existsSync,
  walk: (folder) => walk(folder),
  names(folder) {
    try {
      const entries = readdirSync(folder, { withFileTypes: true });
      return entries.flatMap((entry) => (entry.isFile() ? [entry.name] : [])).sort();
    } catch {
      return [];
    }
  },
  rootOf(folder) {
    for (let at = resolve(folder); ; at = dirname(at)) {
      if (existsSync(join(at, '.git'))) return enginePath(at);
      if (dirname(at) === at) return enginePath(folder);
    }
  },
};

/** What the disk says of a file that is there and keeps to itself, or of itself. */
const refusals = new Set(['EACCES', 'EPERM', 'EMFILE', 'ENFILE', 'EIO', 'EBUSY', 'ENOMEM']);
const isRefusal = (error: unknown) => refusals.has((error as NodeJS.ErrnoException).code ?? '');

/**
 * The file system for who must not say that nothing was found where nothing was seen: a file that is there and cannot be read
 * throws, naming the path. `unread` is told of a folder that cannot be listed.
 */
export const strictDisk = (unread: (failure: Error) => void): Disk => ({
  ...nodeDisk,
  read(path) {
    try {
      return textOf(path);
    } catch (error) {
      if (isRefusal(error)) throw diskFailure(path, 'read', error);
      return undefined;
    }
  },
  walk: (folder) => walk(folder, unread),
});

function* walk(folder: string, unread: (failure: Error) => void = () => undefined): Generator<string[]> {
  let entries: Dirent[];
  try {
    entries = readdirSync(folder, { withFileTypes: true });
  } catch (error) {
    if (isRefusal(error)) unread(diskFailure(folder, 'read', error));
    return;
  }
  const inner = (name: string) => `${folder === '/' ? '' : folder}/${name}`;
  yield entries.flatMap((entry) => (entry.isFile() && entry.name.endsWith('.rig') ? [inner(entry.name)] : []));
  for (const entry of entries)
    if (entry.isDirectory() && !skippedFolders.has(entry.name)) yield* walk(inner(entry.name), unread);
}

export const isFolder = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;
