// The files for the engine: texts of open editors before those on disk, folders listed once.
import { folderOf } from '../language/resolve/paths.ts';
import type { Files } from '../language/resolve/project.ts';
import { type Disk, rigFilesBelow } from './disk.ts';

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

/** Whether a path is a folder or lies in it. */
export const isBelow = (folder: string, path: string): boolean => path === folder || path.startsWith(prefixOf(folder));

const prefixOf = (folder: string) => (folder.endsWith('/') ? folder : `${folder}/`);

/** Files over a disk. `startRoots` bound what may be read. */
export function diskFiles(disk: Disk, startRoots: readonly string[]): DiskFiles {
  let roots = startRoots;
  const overlays = new Map<string, string>();
  /** What lies below a folder, sorted. Only folders that were asked for are walked: a root may be a whole home folder. */
  const listings = new Map<string, string[]>();

  const inside = (path: string) => roots.some((root) => isBelow(root, path));
  const listingAround = (folder: string): readonly string[] => {
    // Up from the folder, not over the listings: there is one for each rig that keeps its records beside it.
    for (let at = folder; ; at = folderOf(at)) {
      const listed = listings.get(at) ?? listings.get(`${at}/`);
      if (listed) return listed;
      if (at === '' || at === folderOf(at)) break;
    }
    const paths = rigFilesBelow(disk, folder);
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
      // Not there, or a folder, or not readable: the checker says so at the line that names it.
      return inside(path) ? disk.read(path) : undefined;
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
    beside: (folder) => disk.names?.(folder) ?? [],
    inside,
    exists: (path) => overlays.has(path) || disk.exists(path),
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
