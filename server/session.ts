// The state behind one editor: its folders, its open files, the dates, and what has to be checked again.
// Knows nothing of the protocol.
import type { Settings } from '../language/protocol/index.ts';
import { folderOf } from '../language/resolve/paths.ts';
import type { Project } from '../language/resolve/project.ts';
import type { Dates } from '../language/resolve/types.ts';
import { isSomewhere } from './addresses.ts';
import type { Clock } from './clock.ts';
import { type Disk, type DiskChanges, rigFilesBelow } from './disk.ts';
import { type Figures, figuresOf } from './figures.ts';
import { type DiskFiles, diskFiles, isBelow } from './files.ts';
import { countDues, type Tally } from './tally.ts';
import { createWorkspace, type Workspace } from './workspace.ts';

export interface Session {
  readonly files: DiskFiles;
  readonly workspace: Workspace;
  readonly project: Project;
  readonly settings: Settings;
  readonly dates: Dates;
  /** The folders of the workspace. */
  readonly folders: readonly string[];
  isOpen(path: string): boolean;
  /** What is computed from a file as it is now. */
  figures(path: string): Figures;

  /** Files whose findings are out of date, in the order in which they became so. */
  readonly stale: ReadonlySet<string>;
  /** Checks one file now. */
  check(path: string): void;
  /** What the files say together; to be asked for when none is stale, and at once while they are few. */
  checkTogether(): void;
  /** Whether checking together is quick enough to be done on each keystroke. */
  readonly isSmall: boolean;
  /** Rigs and overdue rigs of all checked files. */
  tally(): Tally;

  opened(path: string, text: string): void;
  edited(path: string, text: string): void;
  closed(path: string): void;
  /** A text that records read beside them, as it is typed; undefined: that on disk counts again. */
  typedBeside(path: string, text: string | undefined): void;
  /** What the watchers saw on disk. */
  onDisk(changes: DiskChanges): void;
  /** Not all files are known yet: until they are nothing counts as stale, so that nothing is judged. */
  held: boolean;
  /** The folders of the workspace have changed. Files are found by {@link discover}. */
  setFolders(folders: readonly string[]): void;
  /** Finds the files of the workspace, a folder a step, and marks those as stale that were never checked. */
  discover(): Iterable<void>;
  configure(settings: Settings): void;
  /** The calendar has moved on. */
  newDay(): void;
  onFindings(listener: (paths: ReadonlySet<string>) => void): void;
  /** Files have become stale. */
  onStale(listener: () => void): void;
}

const noneYet: ReadonlySet<string> = new Set();
const nothing: Tally = { rigs: 0, overdue: 0 };

/** Up to so many files, what they say together is said anew on every keystroke: 2 ms for 200 files. */
const few = 200;

/** `onBug` is told of work on a file that failed by a bug of ours: the file has no findings then, the others go on. */
export function createSession(
  clock: Clock,
  disk: Disk,
  startSettings: Settings,
  onBug: (path: string, error: unknown) => void,
): Session {
  let settings = startSettings;
  let folders: readonly string[] = [];
  const open = new Set<string>();
  const stale = new Set<string>();
  let held = false;
  const tallies = new Map<string, Tally>();
  const figures = new Map<string, Figures>();
  const findingsListeners: ((paths: ReadonlySet<string>) => void)[] = [];
  const staleListeners: (() => void)[] = [];

  let dates = datesFor(clock, settings);
  const files = diskFiles(disk, []);
  const isOpen = (path: string) => open.has(path);
  const isMember = (path: string) => path.endsWith('.rig') && folders.some((folder) => isBelow(folder, path));
  const isOurs = (path: string) => isMember(path) || isOpen(path);
  const workspace = createWorkspace(files, { isMember, isOpen });

  const sound = <T>(path: string, work: () => T): T | undefined => {
    try {
      return work();
    } catch (error) {
      onBug(path, error);
      return undefined;
    }
  };
  const found = (paths: ReadonlySet<string>) => {
    if (paths.size > 0) for (const listener of findingsListeners) listener(paths);
  };
  const becameStale = () => {
    if (stale.size > 0 && !held) for (const listener of staleListeners) listener();
  };
  const changed = (paths: readonly string[]) => {
    for (const path of workspace.changed(new Set(paths))) {
      figures.delete(path);
      if (isOurs(path)) stale.add(path);
    }
    becameStale();
  };
  const forget = (path: string) => {
    stale.delete(path);
    tallies.delete(path);
    figures.delete(path);
    found(workspace.forget(path));
  };
  const redated = () => {
    figures.clear();
    for (const path of [...open, ...workspace.redated()]) stale.add(path);
    becameStale();
  };
  /** A file may use what lies in its repository; one that lies outside all folders brings its own. */
  const reroot = () => {
    const roots = new Set(folders.map(disk.rootOf));
    for (const path of open) {
      if (!isSomewhere(path)) continue; // an untitled document lies nowhere
      if ([...roots].every((root) => !isBelow(root, path))) roots.add(disk.rootOf(`${folderOf(path)}/`));
    }
    const next = [...roots].sort();
    if (next.join('\n') !== files.roots.join('\n')) files.setRoots(next);
  };

  return {
    files,
    workspace,
    project: workspace.project,
    get settings() {
      return settings;
    },
    get dates() {
      return dates;
    },
    get folders() {
      return folders;
    },
    isOpen,
    figures(path) {
      const known = figures.get(path) ?? figuresOf(workspace.project, path, dates);
      // Only of open files are figures asked for again and again.
      if (isOpen(path)) figures.set(path, known);
      return known;
    },
    get stale() {
      return held ? noneYet : stale;
    },
    get held() {
      return held;
    },
    set held(next) {
      held = next;
      becameStale();
    },
    check(path) {
      stale.delete(path);
      const touched = sound(path, () => {
        const changes = workspace.check(path, dates);
        if (isOpen(path)) tallies.delete(path);
        else tallies.set(path, countDues(figuresOf(workspace.project, path, dates)));
        return changes;
      });
      if (!isOpen(path)) workspace.release(path);
      found(touched ?? workspace.forget(path));
      if (stale.size > 0 || workspace.waiting.size === 0) return;
      // Their rigs are known by now.
      for (const fleet of workspace.waiting) stale.add(fleet);
      becameStale();
    },
    checkTogether: () => void sound('the workspace', () => found(workspace.checkTogether())),
    get isSmall() {
      return tallies.size + open.size <= few;
    },
    tally() {
      let [rigs, overdue] = [0, 0];
      for (const path of open)
        if (!tallies.has(path)) tallies.set(path, sound(path, () => countDues(this.figures(path))) ?? nothing);
      for (const one of tallies.values()) {
        rigs += one.rigs;
        overdue += one.overdue;
      }
      return { rigs, overdue };
    },
    opened(path, text) {
      const same = files.read(path) === text;
      open.add(path);
      reroot();
      files.overlay(path, text);
      if (!same) return changed([path]);
      stale.add(path);
      becameStale();
    },
    edited(path, text) {
      if (files.read(path) === text) return;
      files.overlay(path, text);
      changed([path]);
    },
    typedBeside(path, text) {
      const before = files.read(path);
      files.overlay(path, text);
      if (files.read(path) !== before) changed([path]);
    },
    closed(path) {
      const before = files.read(path);
      open.delete(path);
      files.overlay(path, undefined);
      reroot();
      if (!isMember(path)) forget(path);
      else if (!files.exists(path)) forget(path);
      else stale.add(path);
      if (files.read(path) !== before) changed([path]);
      else becameStale();
    },
    onDisk({ written, gone }) {
      const paths = new Set<string>();
      for (const path of gone) {
        files.gone(path);
        for (const below of [path, ...workspace.checkedFiles(path)]) {
          paths.add(below);
          if (!isOpen(below) && !disk.exists(below)) forget(below);
        }
      }
      if (gone.length > 0) for (const path of workspace.dependedOnBelow(new Set(gone))) paths.add(path);
      // Watchers tell late and in heaps: what stands there again by now has come.
      const came = [...written, ...gone.filter((path) => disk.exists(path))];
      // A folder that was moved in is told by its name only.
      const below = came.filter((path) => !path.endsWith('.rig')).flatMap((path) => rigFilesBelow(disk, path));
      for (const path of [...came, ...below]) {
        if (path.endsWith('.rig')) files.appeared(path);
        if (!isOpen(path)) paths.add(path);
      }
      if (paths.size === 0) return;
      changed([...paths]);
      for (const path of paths) if (!isOpen(path) && !disk.exists(path)) stale.delete(path);
    },
    setFolders(next) {
      folders = next;
      reroot();
      files.relist();
      for (const path of workspace.checkedFiles()) if (!isOurs(path)) forget(path);
      changed([...open]);
    },
    *discover() {
      const known = new Set(workspace.checkedFiles());
      for (const folder of folders) {
        for (const paths of disk.walk(folder)) {
          for (const path of paths) if (!known.has(path) && !isOpen(path)) stale.add(path);
          yield;
        }
      }
    },
    configure(next) {
      settings = next;
      const before = dates;
      dates = datesFor(clock, settings);
      if (before.asOf !== dates.asOf || before.today !== dates.today) redated();
    },
    newDay() {
      dates = datesFor(clock, settings);
      redated();
    },
    onFindings: (listener) => findingsListeners.push(listener),
    onStale: (listener) => staleListeners.push(listener),
  };
}

function datesFor(clock: Clock, settings: Settings): Dates {
  const today = clock.today();
  return { today, asOf: settings.asOf === '' ? today : settings.asOf };
}
