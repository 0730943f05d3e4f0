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
  /** All `.rig` files below the roots, sorted. */
  all(): readonly string[];
  /** Forgets the listing: files came or went. */
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

export function diskFiles(startRoots: readonly string[]): DiskFiles {
  let roots = startRoots;
  const overlays = new Map<string, string>();
  let listing: readonly string[] | undefined;

  const list = (): readonly string[] => {
    if (!listing) {
      const found = new Set<string>();
      for (const root of roots) for (const path of rigFilesBelow(root)) found.add(path);
      for (const path of overlays.keys()) if (path.endsWith('.rig') && inside(path)) found.add(path);
      listing = [...found].sort();
    }
    return listing;
  };
  const inside = (path: string) =>
    roots.some((root) => path === root || path.startsWith(root.endsWith('/') ? root : `${root}/`));

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
      const prefix = `${folder}/`;
      const paths = list();
      const start = firstNotBefore(paths, prefix);
      let end = start;
      while (end < paths.length && (paths[end] as string).startsWith(prefix)) end++;
      return paths.slice(start, end);
    },
    inside,
    exists: (path) => overlays.has(path) || existsSync(path),
    overlay(path, text) {
      if (!overlays.has(path) || text === undefined) listing = undefined;
      if (text === undefined) overlays.delete(path);
      else overlays.set(path, text);
    },
    all: list,
    relist: () => {
      listing = undefined;
    },
    setRoots(next) {
      roots = next;
      listing = undefined;
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
  const out: string[] = [];
  const walk = (path: string) => {
    let entries: import('node:fs').Dirent[];
    try {
      entries = readdirSync(path, { withFileTypes: true });
    } catch {
      return;
    }
    for (const entry of entries) {
      const inner = `${path === '/' ? '' : path}/${entry.name}`;
      if (entry.isDirectory()) {
        if (!skipped.has(entry.name)) walk(inner);
      } else if (entry.isFile() && entry.name.endsWith('.rig')) out.push(inner);
    }
  };
  walk(folder);
  return out.sort();
}

export const isFolder = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;
