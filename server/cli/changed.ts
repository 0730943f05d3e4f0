// `--changed-since`: the files that a change since a revision can have given other findings.
import { patternIn, patternsIn } from '../../language/resolve/claims.ts';
import { folderOf, resolvePath } from '../../language/resolve/paths.ts';
import type { Project } from '../../language/resolve/project.ts';
import { dependenciesOf } from '../dependencies.ts';
import type { DiskFiles } from '../files.ts';
import { commitOf, parts, type Repository, repositoryAround } from '../git.ts';

/**
 * The paths that differ from a revision: committed since, staged, only in the working tree, or new and not ignored. Of a
 * file that was renamed both names.
 */
export function changedSince(roots: readonly string[], revision: string): ReadonlySet<string> {
  const changed = new Set<string>();
  for (const folder of roots) {
    const repository = repositoryAround(folder);
    for (const path of pathsSince(repository, commitOf(repository, revision)))
      changed.add(`${repository.root === '/' ? '' : repository.root}/${path}`);
  }
  return changed;
}

function pathsSince({ run }: Repository, commit: string): readonly string[] {
  return [
    ...parts(run(['diff', '--name-only', '-z', '--no-renames', '--no-ext-diff', '--ignore-submodules', commit, '--'])),
    ...parts(run(['ls-files', '--others', '--exclude-standard', '-z'])),
  ];
}

/**
 * Those of some files that changed, or that depend on something that changed: what they use, claim and list, also where it is
 * gone, and photos and papers that they name.
 */
export function affectedBy(
  changed: ReadonlySet<string>,
  files: readonly string[],
  project: Project,
  disk: DiskFiles,
): readonly string[] {
  const gone = [...changed].filter((path) => path.endsWith('.rig') && !disk.exists(path));
  const evidence = new Set([...changed].filter((path) => !path.endsWith('.rig')));
  const touched = (file: string) =>
    changed.has(file) || listsOneOf(gone, file, project) || namesOneOf(evidence, file, project);
  // What many files use is looked at once.
  const known = new Map<string, boolean>();
  const isTouched = (file: string) => {
    const told = known.get(file) ?? touched(file);
    known.set(file, told);
    return told;
  };
  const rigs = new Map<string, boolean>();
  /** Whether what a file depends on was touched, its fleets aside. */
  const isAffected = (path: string): boolean => {
    const told = rigs.get(path) ?? [...dependenciesOf(project, disk, path).paths].some(isTouched);
    rigs.set(path, told);
    project.release(path);
    return told;
  };
  return files.filter((path) => {
    const { lists } = dependenciesOf(project, disk, path);
    return isAffected(path) || [...lists].some(isAffected);
  });
}

/** Whether a file claims or lists, by pattern, a file that is not there any more. */
function listsOneOf(gone: readonly string[], file: string, project: Project): boolean {
  if (gone.length === 0) return false;
  return (project.records(file)?.declarations ?? []).flatMap(patternsIn).some((written) => {
    const { fits } = patternIn(file, written);
    return gone.some(fits);
  });
}

function namesOneOf(evidence: ReadonlySet<string>, file: string, project: Project): boolean {
  if (evidence.size === 0) return false;
  const quoted = (project.text(file) ?? '').matchAll(/"([^"\n]+)"/g);
  return [...quoted].some(([, written]) => evidence.has(resolvePath(folderOf(file), written as string)));
}
