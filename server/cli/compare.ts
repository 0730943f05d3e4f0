// `rigseam compare`: what changed between two git revisions, or since one, in records and in what follows from them.
import { existsSync } from 'node:fs';
import { dirname } from 'node:path';
import { type Comparison, compareProjects, type Side } from '../../language/compare/index.ts';
import { createProject } from '../../language/resolve/project.ts';
import type { Dates } from '../../language/resolve/types.ts';
import { enginePath, isFolder } from '../disk-node.ts';
import { type DiskFiles, isBelow } from '../files.ts';
import { commitOf, type Repository, repositoryAround } from '../git.ts';
import { type Blobs, filesAtCommit, filesNow } from '../revision.ts';
import { loadLinearPrograms } from '../solver/highs.ts';
import { Misuse } from './paths.ts';

export interface CompareOptions {
  readonly from: string;
  /** The working tree, if it is missing. */
  readonly to?: string;
}

/** Compares files and folders, which may be gone from the working tree, at two revisions of the repository around them. */
export async function compareRevisions(
  written: readonly string[],
  dates: Dates,
  { from, to }: CompareOptions,
): Promise<Comparison> {
  const paths = written.map(enginePath);
  const repository = oneRepository(paths);
  const blobs: Blobs = new Map();
  const before = filesAtCommit(repository, commitOf(repository, from), blobs);
  const after = to === undefined ? filesNow(repository) : filesAtCommit(repository, commitOf(repository, to), blobs);
  const sides = { before: sideOf(before, paths, repository), after: sideOf(after, paths, repository) };
  for (const [i, path] of paths.entries())
    if (![sides.before, sides.after].some((side) => side.paths.some((one) => isBelow(path, one))))
      throw new Misuse(`There is no \`.rig\` file in \`${written[i]}\`, neither before nor after.`);
  const listsFleets = [...sides.before.paths.map(before.read), ...sides.after.paths.map(after.read)].some(
    (text) => text !== undefined && /\bfleet\b/.test(text),
  );
  const lp = listsFleets ? await loadLinearPrograms() : undefined;
  return compareProjects(sides.before, sides.after, {
    from,
    to: to ?? 'the working tree',
    dates,
    fileName: (path) => path.slice(repository.root === '/' ? 1 : repository.root.length + 1),
    ...(lp && { lp }),
  });
}

function sideOf(files: DiskFiles, paths: readonly string[], { root }: Repository): Side {
  const chosen = files.under(root).filter((file) => paths.some((path) => isBelow(path, file)));
  return { project: createProject(files), files, paths: chosen };
}

/** The repository around all paths. A path may be gone: then it is the one around the nearest folder that is there. */
function oneRepository(paths: readonly string[]): Repository {
  const repositories = paths.map((path) => {
    let folder = path;
    while (!existsSync(folder) || !isFolder(folder)) folder = enginePath(dirname(folder));
    return repositoryAround(folder);
  });
  const [first] = repositories;
  if (!first) throw new Misuse('Name files or folders.');
  if (repositories.some(({ root }) => root !== first.root))
    throw new Misuse('What is compared lies in several repositories: compare them one by one.');
  return first;
}
