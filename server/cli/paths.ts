// What the command line was asked about: files, folders, and the workspace around them.
import { existsSync } from 'node:fs';
import { dirname } from 'node:path';
import { rigFilesBelow } from '../disk.ts';
import { enginePath, isFolder, nodeDisk, strictDisk } from '../disk-node.ts';
import { type DiskFiles, diskFiles } from '../files.ts';
import { Misuse } from '../misuse.ts';

export { Misuse };

export interface Asked {
  /** The folder that paths are printed from. */
  readonly from: string;
  readonly roots: readonly string[];
  readonly files: readonly string[];
  /** The folders that were named, with all that lies in them. */
  readonly folders: readonly string[];
  /** A folder was named, so that what lies in it can be seen as a whole. */
  readonly whole: boolean;
}

/** What lies in a folder that cannot be listed is left out, and not in silence. */
const telling = strictDisk(({ message }) => console.error(`rigseam: ${message} What lies in it is left out.`));

/** Files and folders as named on the command line, seen from the current folder. */
export function asked(paths: readonly string[], from: string): Asked {
  const files = new Set<string>();
  const roots = new Set<string>();
  const folders = new Set<string>();
  for (const written of paths) {
    const path = enginePath(written);
    if (!existsSync(path)) throw new Misuse(`There is no file or folder \`${written}\`.`);
    const folder = isFolder(path);
    roots.add(workspaceOf(folder ? path : enginePath(dirname(path)), from));
    if (folder) {
      folders.add(path);
      for (const file of rigFilesBelow(telling, path)) files.add(file);
    } else if (!path.endsWith('.rig')) throw new Misuse(`\`${written}\` is no \`.rig\` file.`);
    else files.add(path);
  }
  if (files.size === 0) throw new Misuse(`There is no \`.rig\` file in ${paths.map((p) => `\`${p}\``).join(', ')}.`);
  return { from, roots: [...roots], files: [...files].sort(), folders: [...folders].sort(), whole: folders.size > 0 };
}

/** Folders that may be empty or not there yet, and the `.rig` files in them. */
export function askedOrEmpty(folders: readonly string[], from: string): Asked {
  const paths = folders.map(enginePath);
  const files = new Set(paths.flatMap((path) => (existsSync(path) ? rigFilesBelow(disk, path) : [])));
  const roots = new Set(paths.map((path) => workspaceOf(path, from)));
  return { from, roots: [...roots], files: [...files].sort(), folders: [...paths].sort(), whole: true };
}

/** The repository around a folder; without one the current folder where it holds the folder, else the folder itself. */
function workspaceOf(folder: string, from: string): string {
  const root = nodeDisk.rootOf(folder);
  if (root !== folder || existsSync(`${folder}/.git`)) return root;
  const current = enginePath(from);
  return folder === current || folder.startsWith(`${current}/`) ? current : folder;
}

/** Where patterns are followed, a folder that cannot be listed was told of before, or is none that was asked for. */
const disk = strictDisk(() => undefined);

export const diskOf = (what: Pick<Asked, 'roots'>): DiskFiles => diskFiles(disk, what.roots);
