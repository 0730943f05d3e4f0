// The state behind the language server: which findings stand where, and what has to be checked again after a change.
// Knows nothing of the protocol.
import picomatch from 'picomatch';
import { createProject, type Project } from '../language/resolve/project.ts';
import type { Dates } from '../language/resolve/types.ts';
import { checkFile } from '../language/rules/check.ts';
import type { Finding } from '../language/rules/finding.ts';
import type { DiskFiles } from './files.ts';

interface Checked {
  /** By the file in which they stand. */
  readonly findings: ReadonlyMap<string, readonly Finding[]>;
  readonly dependsOn: ReadonlySet<string>;
  /** Whether a path is one that this file claims or lists. */
  readonly claims: (path: string) => boolean;
}

export interface Workspace {
  readonly project: Project;
  dates: Dates;
  /** Checks one file now. Returns the files whose findings changed. */
  check(path: string): Set<string>;
  /** The files that have to be checked again when these change: themselves and what depends on them. */
  affectedBy(paths: Iterable<string>): Set<string>;
  /** Takes in that texts changed, appeared or went. */
  changed(paths: Iterable<string>): void;
  /** All findings that stand in a file, whichever file's check found them. */
  findingsIn(path: string): readonly Finding[];
  /** Forgets a file that is gone. Returns the files whose findings changed. */
  forget(path: string): Set<string>;
}

export function createWorkspace(files: DiskFiles, dates: Dates, isOpen: (path: string) => boolean): Workspace {
  const project = createProject(files);
  const checked = new Map<string, Checked>();
  /** The files whose checks found something in a file. */
  const findersOf = new Map<string, Set<string>>();

  const keep = (owner: string, next: Checked | undefined): Set<string> => {
    const before = checked.get(owner);
    if (next) checked.set(owner, next);
    else checked.delete(owner);
    for (const path of before?.findings.keys() ?? []) findersOf.get(path)?.delete(owner);
    for (const path of next?.findings.keys() ?? []) {
      const finders = findersOf.get(path);
      if (finders) finders.add(owner);
      else findersOf.set(path, new Set([owner]));
    }
    const touched = new Set([...(before?.findings.keys() ?? []), ...(next?.findings.keys() ?? [])]);
    for (const path of touched)
      if (sameFindings(before?.findings.get(path), next?.findings.get(path))) touched.delete(path);
    return touched;
  };

  const workspace: Workspace = {
    project,
    dates,
    check(path) {
      const findings = new Map<string, Finding[]>();
      for (const finding of checkFile(project, path, workspace.dates, files.exists)) {
        const here = findings.get(finding.file);
        if (here) here.push(finding);
        else findings.set(finding.file, [finding]);
      }
      const patterns = project.patterns(path).map((pattern) => picomatch(pattern, { nobrace: true, noext: true }));
      const dependsOn = project.dependsOn(path);
      // A closed file keeps its findings, not its records.
      for (const file of dependsOn) if (!isOpen(file)) project.release(file);
      return keep(path, { findings, dependsOn, claims: (other) => patterns.some((matches) => matches(other)) });
    },
    affectedBy(paths) {
      const out = new Set(paths);
      const changed = [...out];
      for (const [owner, { dependsOn, claims }] of checked) {
        if (changed.some((path) => dependsOn.has(path) || claims(path))) out.add(owner);
      }
      return out;
    },
    changed: (paths) => project.changed(paths),
    findingsIn(path) {
      const out: Finding[] = [];
      const seen = new Set<string>();
      for (const owner of findersOf.get(path) ?? []) {
        for (const finding of checked.get(owner)?.findings.get(path) ?? []) {
          const key = `${finding.at.join()} ${finding.rule} ${finding.message}`;
          if (!seen.has(key)) out.push(finding);
          seen.add(key);
        }
      }
      return out.sort((a, b) => a.at[0] - b.at[0]);
    },
    forget: (path) => {
      project.changed([path]);
      return keep(path, undefined);
    },
  };
  return workspace;
}

function sameFindings(a: readonly Finding[] | undefined, b: readonly Finding[] | undefined): boolean {
  if (a === b) return true;
  if (!a || !b || a.length !== b.length) return false;
  return a.every((finding, i) => JSON.stringify(finding) === JSON.stringify(b[i]));
}
