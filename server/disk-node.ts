// The file system of this machine.
import { type Dirent, existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, resolve, sep } from 'node:path';
import { skippedFolders } from '../language/protocol/index.ts';
import type { Disk } from './disk.ts';

/** A path of this machine as the engine writes it: absolute, forward slashes. */
export function enginePath(path: string): string {
  const absolute = resolve(path);
  return sep === '\\' ? absolute.replaceAll('\\', '/') : absolute;
}

export const nodeDisk: Disk = {
  read(path) {
    try {
      const text = readFileSync(path, 'utf8');
      // Editors take the mark of byte order off: so columns are counted alike.
      return text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
    } catch {
      return undefined;
    }
  },
  exists: existsSync,
  walk,
  rootOf(folder) {
    for (let at = resolve(folder); ; at = dirname(at)) {
      if (existsSync(join(at, '.git'))) return enginePath(at);
      if (dirname(at) === at) return enginePath(folder);
    }
  },
};

function* walk(folder: string): Generator<string[]> {
  let entries: Dirent[];
  try {
    entries = readdirSync(folder, { withFileTypes: true });
  } catch {
    return;
  }
  const inner = (name: string) => `${folder === '/' ? '' : folder}/${name}`;
  yield entries.flatMap((entry) => (entry.isFile() && entry.name.endsWith('.rig') ? [inner(entry.name)] : []));
  for (const entry of entries)
    if (entry.isDirectory() && !skippedFolders.has(entry.name)) yield* walk(inner(entry.name));
}

export const isFolder = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;
