// Which findings stand where, and what has to be checked again after a change. Knows nothing of the protocol.
import picomatch from 'picomatch';
import type { Declaration } from '../language/records/file.ts';
import { folderOf } from '../language/resolve/paths.ts';
import { createProject, type Project } from '../language/resolve/project.ts';
import type { Dates } from '../language/resolve/types.ts';
import { examined, fleetsExamined, membersOf, unique } from '../language/rules/check.ts';
import type { Finding } from '../language/rules/finding.ts';
import type { Member } from '../language/rules/member.ts';
import { type FileSummary, summaryOf, workspaceFindings } from '../language/rules/workspace.ts';
import { dependenciesOf } from './dependencies.ts';
import { type DiskFiles, isBelow } from './files.ts';

interface Checked {
  /** By the file in which they stand. */
  readonly findings: ReadonlyMap<string, readonly Finding[]>;
  /** Paths whose text or existence the findings depend on; some may not be there. */
  readonly dependsOn: ReadonlySet<string>;
  /** The patterns of the files that this one claims or lists. */
  readonly claims: readonly string[];
  /** The files that its fleets list. */
  readonly lists: ReadonlySet<string>;
  /** What its fleets add to the findings. */
  readonly ofFleets: FleetFindings;
  /** Its rigs as its fleets see them. */
  readonly members: readonly Member[];
  /** What is said of it may change with the date. */
  readonly isDated: boolean;
}

/** Materials and surfaces know no date, and of histories the rigs that read them speak. */
const dated: ReadonlySet<Declaration['kind']> = new Set(['rig', 'model', 'fleet', 'policy', 'group']);

type FleetFindings = ReturnType<typeof fleetsExamined>;
const noFleets: FleetFindings = { findings: [], worked: [] };

export interface Workspace {
  readonly project: Project;
  /** Checks one file now. Returns the files whose findings changed. */
  check(path: string, dates: Dates): ReadonlySet<string>;
  /** Files whose fleets were not judged, since too many of their rigs are to be checked first; to be checked again then. */
  readonly waiting: ReadonlySet<string>;
  /** The dates have changed: the checked files to check again, which are those of which a date can change anything. */
  redated(): readonly string[];
  /** Says what the files say together, after they were checked. Returns the files whose findings changed. */
  checkTogether(): ReadonlySet<string>;
  /** Lets go of the records that checking a file has read: a closed file keeps its findings, not its records. */
  release(path: string): void;
  /** Takes in that texts changed, appeared or went. Returns the files to check again: these and what depends on them. */
  changed(paths: ReadonlySet<string>): Set<string>;
  /** All findings that stand in a file, whichever file's check found them, in order of place. */
  findingsIn(path: string): readonly Finding[];
  /** The files that were checked; those at or below a path, if one is given. */
  checkedFiles(path?: string): string[];
  /** What the findings of files depend on in these folders: photos, say, that nothing else knows. */
  dependedOnBelow(folders: ReadonlySet<string>): string[];
  /** What each file of the workspace declares. */
  readonly summaries: ReadonlyMap<string, FileSummary>;
  /** The files whose rig of that name reads the histories of a file. */
  readersOf(path: string, name: string): string[];
  /** Forgets a file that is gone or no longer ours. Returns the files whose findings changed. */
  forget(path: string): ReadonlySet<string>;
}

/** So many rigs that are not checked yet, a fleet checks on the way; with more of them it waits. */
const fewRigs = 20;

/** The owner of what no single file's check finds. */
const together = '';

/** `isMember`: whether a file counts in what the workspace's files say together. `isOpen`: its records are kept. */
export function createWorkspace(
  files: DiskFiles,
  { isMember, isOpen }: { isMember(path: string): boolean; isOpen(path: string): boolean },
): Workspace {
  const project = createProject(files);
  const checked = new Map<string, Checked>();
  /** The files whose checks found something in a file. */
  const findersOf = new Map<string, Set<string>>();
  const summaries = new Map<string, FileSummary>();
  let summariesChanged = false;
  /** Files whose members are those of the texts and dates of now. */
  const fresh = new Set<string>();
  const waiting = new Set<string>();
  /** Files whose own text may have changed since their fleets were judged. */
  const edited = new Set<string>();

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
  const summarise = (path: string, summary: FileSummary | undefined) => {
    const before = summaries.get(path);
    if (summary) summaries.set(path, summary);
    else summaries.delete(path);
    if (JSON.stringify(before) !== JSON.stringify(summary)) summariesChanged = true;
  };

  const judgeFleets = (path: string, lists: ReadonlySet<string>, dates: Dates): FleetFindings => {
    waiting.delete(path);
    if (lists.size === 0) return noFleets;
    const unknown = [...lists].filter((file) => file !== path && !fresh.has(file));
    if (unknown.length > fewRigs && unknown.some(isMember)) {
      waiting.add(path);
      // What was said of the same text is said until then.
      return (edited.has(path) ? undefined : checked.get(path)?.ofFleets) ?? noFleets;
    }
    edited.delete(path);
    const own = membersOf(project, path, dates);
    return fleetsExamined(project, path, dates, (file) => {
      if (file === path) return own;
      const known = fresh.has(file) ? checked.get(file)?.members : undefined;
      const members = known ?? membersOf(project, file, dates);
      if (!known && !isOpen(file)) project.release(file);
      return members;
    });
  };

  return {
    project,
    waiting,
    redated() {
      const out = [...checked].flatMap(([path, { isDated }]) => (isDated ? [path] : []));
      for (const path of out) fresh.delete(path);
      return out;
    },
    check(path, dates) {
      const looked = new Set<string>();
      const exists = (other: string) => {
        looked.add(other);
        return files.exists(other);
      };
      const { findings: own, silences, members } = examined(project, path, dates, exists);
      const { paths: dependsOn, lists } = dependenciesOf(project, files, path);
      for (const other of looked) dependsOn.add(other);
      const ofFleets = judgeFleets(path, lists, dates);
      // Of a rig that no check of ours looks at, the fleet has to know itself what it depends on.
      for (const file of lists)
        if (!isMember(file)) for (const other of dependenciesOf(project, files, file).paths) dependsOn.add(other);
      const worked = [...silences.worked, ...ofFleets.worked];
      summarise(path, isMember(path) ? summaryOf(project, path, { ...silences, worked }) : undefined);
      fresh.add(path);
      return keep(path, {
        findings: byFile(unique([...own, ...ofFleets.findings])),
        dependsOn,
        claims: project.patterns(path),
        lists,
        ofFleets,
        members,
        isDated: project.records(path)?.declarations.some(({ kind }) => dated.has(kind)) ?? false,
      });
    },
    checkTogether() {
      if (!summariesChanged) return new Set();
      summariesChanged = false;
      const findings = byFile(workspaceFindings(summaries.values()));
      return keep(together, {
        findings,
        dependsOn: new Set(),
        claims: [],
        lists: new Set(),
        ofFleets: noFleets,
        members: [],
        isDated: false,
      });
    },
    release(path) {
      for (const file of checked.get(path)?.dependsOn ?? []) if (!isOpen(file)) project.release(file);
    },
    changed(paths) {
      project.changed(paths);
      const out = new Set(paths);
      for (const [owner, { dependsOn, claims }] of checked) {
        for (const path of paths) {
          if (!dependsOn.has(path) && !claims.some((pattern) => fits(pattern, path))) continue;
          out.add(owner);
          break;
        }
      }
      for (const [owner, { lists }] of checked) {
        if (lists.size > 0 && !out.has(owner) && [...out].some((path) => lists.has(path))) out.add(owner);
      }
      for (const path of out) fresh.delete(path);
      for (const path of paths) edited.add(path);
      return out;
    },
    findingsIn(path) {
      const out = new Map<string, Finding>();
      for (const owner of findersOf.get(path) ?? []) {
        for (const finding of checked.get(owner)?.findings.get(path) ?? []) {
          const key = `${finding.at.join()} ${finding.rule} ${finding.message}`;
          if (!out.has(key)) out.set(key, finding);
        }
      }
      // Where two stand at one place, the order must not tell which check came first.
      const key = ({ rule, message }: Finding) => `${rule} ${message}`;
      return [...out.values()].sort((a, b) => a.at[0] - b.at[0] || a.at[1] - b.at[1] || (key(a) < key(b) ? -1 : 1));
    },
    checkedFiles: (path) =>
      [...checked.keys()].filter((owner) => owner !== together && (path === undefined || isBelow(path, owner))),
    dependedOnBelow(folders) {
      const all = new Set([...checked.values()].flatMap(({ dependsOn }) => [...dependsOn]));
      return [...all].filter((path) => {
        for (let at = folderOf(path); at !== ''; at = folderOf(at)) if (folders.has(at)) return true;
        return false;
      });
    },
    summaries,
    readersOf: (path, name) =>
      [...summaries.values()].flatMap((file) =>
        file.rigs.some(
          (rig) =>
            (rig.name === name || rig.formerly.includes(name)) &&
            (file.path === path ||
              rig.claims.some((pattern) => picomatch.isMatch(path, pattern, { nobrace: true, noext: true }))),
        )
          ? [file.path]
          : [],
      ),
    forget(path) {
      project.changed([path]);
      fresh.delete(path);
      waiting.delete(path);
      summarise(path, undefined);
      return keep(path, undefined);
    },
  };
}

/** Most paths lie elsewhere, which is seen without reading the pattern. */
function fits(pattern: string, path: string): boolean {
  const fixed = pattern.slice(0, pattern.search(/[*?[\\]|$/));
  return path.startsWith(fixed) && picomatch.isMatch(path, pattern, { nobrace: true, noext: true });
}

function byFile(found: readonly Finding[]): Map<string, Finding[]> {
  const findings = new Map<string, Finding[]>();
  for (const finding of found) {
    const here = findings.get(finding.file);
    if (here) here.push(finding);
    else findings.set(finding.file, [finding]);
  }
  return findings;
}

function sameFindings(a: readonly Finding[] | undefined, b: readonly Finding[] | undefined): boolean {
  if (a === b) return true;
  if (!a || !b || a.length !== b.length) return false;
  return a.every((finding, i) => JSON.stringify(finding) === JSON.stringify(b[i]));
}
