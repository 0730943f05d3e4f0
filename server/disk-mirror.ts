// A copy in memory of folders that only the client can read, as it hands them over.

import { skippedFolders } from '../language/protocol/index.ts';
import { folderOf } from '../language/resolve/paths.ts';
import type { Disk } from './disk.ts';

export interface Mirror extends Disk {
  /** Takes in the texts of `.rig` files, tables and calendars and the names of others. */
  put(texts: Iterable<readonly [path: string, text: string]>, names: Iterable<string>): void;
  /** Forgets a file, or a folder with everything in it. */
  drop(path: string): void;
}

export function mirrorDisk(): Mirror {
  const texts = new Map<string, string>();
  /** The names in each folder that is known. */
  const folders = new Map<string, Set<string>>();

  const add = (path: string): void => {
    const folder = folderOf(path);
    const names = folders.get(folder);
    if (names) {
      names.add(nameOf(path));
      return;
    }
    folders.set(folder, new Set([nameOf(path)]));
    if (folder !== '') add(folder);
  };
  const drop = (path: string): void => {
    for (const name of folders.get(path) ?? []) drop(`${path}/${name}`);
    folders.delete(path);
    texts.delete(path);
    folders.get(folderOf(path))?.delete(nameOf(path));
  };
  function* walk(folder: string): Generator<string[]> {
    const paths = [...(folders.get(folder) ?? [])].map((name) => ({ name, path: `${folder}/${name}` }));
    if (paths.length === 0) return;
    yield paths.flatMap(({ path }) => (texts.has(path) && path.endsWith('.rig') ? [path] : []));
    for (const { name, path } of paths) if (folders.has(path) && !skippedFolders.has(name)) yield* walk(path);
  }

  return {
    read: (path) => texts.get(path),
    exists: (path) => folders.has(path) || (folders.get(folderOf(path))?.has(nameOf(path)) ?? false),
    walk: (folder) => walk(withoutSlash(folder)),
    names: (folder) =>
      [...(folders.get(withoutSlash(folder)) ?? [])].filter((name) => !folders.has(`${folder}/${name}`)).sort(),
    // Nothing is known of what lies above a folder of the workspace.
    rootOf: withoutSlash,
    drop,
    put(files, names) {
      for (const [path, text] of files) {
        texts.set(path, text);
        add(path);
      }
      for (const name of names) add(name);
    },
  };
}

const nameOf = (path: string) => path.slice(path.lastIndexOf('/') + 1);
const withoutSlash = (folder: string) => (folder.endsWith('/') ? folder.slice(0, -1) : folder);
