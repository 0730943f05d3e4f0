// What the server needs of a file system, and nothing more: a real one (disk-node.ts) or the copy of one that lies with the
// client (disk-mirror.ts). Paths are the engine's: absolute, with forward slashes.

/** Reading is synchronous, for so is the engine. */
export interface Disk {
  /** The text of a file; undefined where there is none or it cannot be read. */
  read(path: string): string | undefined;
  /** Whether there is such a file or folder. */
  exists(path: string): boolean;
  /**
   * The `.rig` files in a folder and below it, one step a folder, so that a walk can be done a little at a time. Links are
   * not followed; a folder that cannot be read holds none.
   */
  walk(folder: string): Iterable<readonly string[]>;
  /** The names of the files in a folder, sorted; absent where nobody can tell. */
  names?(folder: string): readonly string[];
  /** The folder that bounds what the files of a folder may use: the nearest repository around it, else the folder itself. */
  rootOf(folder: string): string;
}

/** Files and folders that came or changed, and those that went, each with everything in it. */
export interface DiskChanges {
  readonly written: readonly string[];
  readonly gone: readonly string[];
}

/** The `.rig` files in a folder and below it, sorted. */
export function rigFilesBelow(disk: Disk, folder: string): string[] {
  return [...disk.walk(folder)].flat().sort();
}

/** Each path on the disk that it lies on. */
export function diskPerPath(diskOf: (path: string) => Disk): Disk {
  return {
    read: (path) => diskOf(path).read(path),
    exists: (path) => diskOf(path).exists(path),
    walk: (folder) => diskOf(folder).walk(folder),
    names: (folder) => diskOf(folder).names?.(folder) ?? [],
    rootOf: (folder) => diskOf(folder).rootOf(folder),
  };
}
