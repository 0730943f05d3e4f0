// The `.rig` files of a git revision, or of the working tree, as a disk in memory.
import { skippedFolders } from '../language/protocol/index.ts';
import { isBookingsFile } from '../language/tables/bookings.ts';
import { type Disk, rigFilesBelow } from './disk.ts';
import { nodeDisk } from './disk-node.ts';
import { type DiskFiles, diskFiles, isBelow } from './files.ts';
import { parts, type Repository } from './git.ts';

/** Texts by the name that git has for their bytes: what is the same in two revisions is read once. */
export type Blobs = Map<string, string>;

/** The files of a commit, under the paths that they would have in the working tree. Links are not followed. */
export function filesAtCommit(repository: Repository, commit: string, blobs: Blobs): DiskFiles {
  const listed = parts(repository.run(['ls-tree', '-r', '-z', '--full-tree', commit])).flatMap((line) => {
    const [, mode = '', blob = '', name = ''] = /^(\d+) \w+ ([0-9a-f]+)\t(.*)$/s.exec(line) ?? [];
    const skipped = name.split('/').some((part) => skippedFolders.has(part));
    return mode.startsWith('100') && (name.endsWith('.rig') || isBookingsFile(name)) && !skipped
      ? [{ blob, path: under(repository, name) }]
      : [];
  });
  readBlobs(repository, new Set(listed.map(({ blob }) => blob)), blobs);
  return inMemory(repository.root, new Map(listed.map(({ blob, path }) => [path, blobs.get(blob) ?? ''])));
}

/** The files of the working tree as they are now; `typed` gives the text of an open editor, which goes before that on disk. */
export function filesNow(
  { root }: Pick<Repository, 'root'>,
  typed: (path: string) => string | undefined = () => undefined,
): DiskFiles {
  const read = (path: string) => typed(path) ?? nodeDisk.read(path);
  const files = new Map(rigFilesBelow(nodeDisk, root).map((path) => [path, read(path) ?? '']));
  return inMemory(root, files, (path) => (isBookingsFile(path) ? read(path) : undefined));
}

const under = ({ root }: Repository, name: string) => `${root === '/' ? '' : root}/${name}`;

function readBlobs(repository: Repository, wanted: ReadonlySet<string>, blobs: Blobs): void {
  const missing = [...wanted].filter((blob) => !blobs.has(blob));
  if (missing.length === 0) return;
  const printed = repository.run(['cat-file', '--batch'], `${missing.join('\n')}\n`);
  // Each as `NAME blob SIZE`, a line end, the bytes, a line end; `NAME missing` where a partial clone has it not.
  let at = 0;
  for (const blob of missing) {
    const end = printed.indexOf('\n', at);
    const size = Number(printed.toString('latin1', at, end).split(' ')[2]);
    if (!Number.isSafeInteger(size)) throw new Error(`git cannot read ${blob}: the clone has not all of its objects.`);
    // Taken off as the disk does it, so that columns and texts are alike.
    const text = printed.toString('utf8', end + 1, end + 1 + size);
    blobs.set(blob, text.charCodeAt(0) === 0xfeff ? text.slice(1) : text);
    at = end + 1 + size + 1;
  }
}

function inMemory(
  root: string,
  texts: ReadonlyMap<string, string>,
  other: (path: string) => string | undefined = () => undefined,
): DiskFiles {
  const disk: Disk = {
    read: (path) => texts.get(path) ?? other(path),
    exists: (path) => texts.has(path),
    walk: (folder) => [[...texts.keys()].filter((path) => path.endsWith('.rig') && isBelow(folder, path))],
    rootOf: () => root,
  };
  return diskFiles(disk, [root]);
}
