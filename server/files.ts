// The file system for the engine: texts of open editors before those on disk, folders listed once.
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, resolve, sep } from 'node:path';
import type { Files } from '../language/resolve/project.ts';

/** Folders that hold no records. */
const skipped = new Set(['node_modules', '.git', '.hg', '.svn']);

/** The files below some root folders. Paths are absolute, with forward slashes. */
export interface DiskFiles extends Files {
  readonly roots: readonly string[];
  exists(path: string): boolean;
  /** Puts the text of an open editor before that on disk; undefined takes it away. */
  overlay(path: string, text: string | undefined): void;
  /** A file has appeared on disk. */
  appeared(path: string): void;
  /** A file has gone from the disk, or a folder with everything in it. */
  gone(path: string): void;
  /** Forgets all listings. */
  relist(): void;
  setRoots(roots: readonly string[]): void;
}

/** A path as the engine writes it: absolute, forward slashes. */
export function enginePath(path: string): string {
  const absolute = resolve(path);
  return sep === '\\' ? absolute.replaceAll('\\', '/') : absolute;
}

/** The folder that bounds what a file may use: the nearest one above that holds a repository, else the folder given. */
export function workspaceRoot(folder: string): string {
  for (let at = resolve(folder); ; at = dirname(at)) {
    if (existsSync(join(at, '.git'))) return enginePath(at);
    if (dirname(at) === at) return enginePath(folder);
  }
}

/** Whether a path is a folder or lies in it. */
export const isBelow = (folder: string, path: string): boolean => path === folder || path.startsWith(prefixOf(folder));

const prefixOf = (folder: string) => (folder.endsWith('/') ? folder : `${folder}/`);

export function diskFiles(startRoots: readonly string[]): DiskFiles {
  let roots = startRoots;
  const overlays = new Map<string, string>();
  /** What lies below a folder, sorted. Only folders that were asked for are walked: a root may be a whole home folder. */
  const listings = new Map<string, string[]>();

  const inside = (path: string) => roots.some((root) => isBelow(root, path));
  const listingAround = (folder: string): readonly string[] => {
    for (const [listed, paths] of listings) if (isBelow(listed, folder)) return paths;
    const paths = rigFilesBelow(folder);
    listings.set(folder, paths);
    return paths;
  };

  return {
    get roots() {
      return roots;
    },
    read(path) {
      const open = overlays.get(path);
      if (open !== undefined) return open;
      if (!inside(path)) return undefined;
      try {
        return readFileSync(path, 'utf8');
      } catch {
        return undefined; // not there, or a folder, or not readable: the checker says so at the line that names it
      }
    },
    under(folder) {
      const prefix = prefixOf(folder);
      const paths = listingAround(folder);
      const start = firstNotBefore(paths, prefix);
      let end = start;
      while (end < paths.length && (paths[end] as string).startsWith(prefix)) end++;
      const found = paths.slice(start, end);
      const unsaved = [...overlays.keys()].filter(
        (path) => path.startsWith(prefix) && path.endsWith('.rig') && !found.includes(path),
      );
      return unsaved.length === 0 ? found : [...found, ...unsaved].sort();
    },
    inside,
    exists: (path) => overlays.has(path) || existsSync(path),
    overlay(path, text) {
      if (text === undefined) overlays.delete(path);
      else overlays.set(path, text);
    },
    appeared(path) {
      for (const [folder, paths] of listings) {
        if (!isBelow(folder, path)) continue;
        const place = firstNotBefore(paths, path);
        if (paths[place] !== path) paths.splice(place, 0, path);
      }
    },
    gone(path) {
      for (const [folder, paths] of listings) {
        if (isBelow(path, folder)) listings.delete(folder);
        else if (isBelow(folder, path))
          listings.set(
            folder,
            paths.filter((listed) => !isBelow(path, listed)),
          );
      }
    },
    relist: () => listings.clear(),
    setRoots(next) {
      roots = next;
      listings.clear();
    },
  };
}

/** The first place of a sorted list that is not before a text. */
function firstNotBefore(sorted: readonly string[], text: string): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] as string) < text) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The `.rig` files in a folder and below it. Links are not followed; a folder that cannot be read holds none. */
export function rigFilesBelow(folder: string): string[] {
  return [...walkRigFiles(folder)].flat().sort();
}

/** Walks a folder and what is below it, one step a folder, so that a walk can be done a little at a time. */
export function* walkRigFiles(folder: string): Generator<string[]> {
  let entries: import('node:fs').Dirent[];
  try {
    entries = readdirSync(folder, { withFileTypes: true });
  } catch {
    return;
  }
  const inner = (name: string) => `${folder === '/' ? '' : folder}/${name}`;
  yield entries.flatMap((entry) => (entry.isFile() && entry.name.endsWith('.rig') ? [inner(entry.name)] : []));
  for (const entry of entries)
    if (entry.isDirectory() && !skipped.has(entry.name)) yield* walkRigFiles(inner(entry.name));
}

export const isFolder = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;
