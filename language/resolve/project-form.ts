// The form of a project: where its texts come from, and what may be asked of it.
import type { FileRecords, FleetDeclaration } from '../records/file.ts';
import type { Located } from './located.ts';
import type { Names } from './names.ts';
import type { Fleet, FleetFrame, Material, Policy, RigView, Surface } from './types.ts';

/** Where the texts come from. Paths have forward slashes. */
export interface Files {
  /** The text of a file; undefined where there is none. */
  read(path: string): string | undefined;
  /** The paths of all `.rig` files in a folder and below it, sorted. */
  under(folder: string): readonly string[];
  /** The names of the files in a folder; absent where nobody can tell. */
  beside?(folder: string): readonly string[];
  /** Whether a path lies inside the workspace. */
  inside(path: string): boolean;
}

export interface ResolvedRig extends RigView {
  readonly problems: readonly Located[];
}
export interface ResolvedFleet {
  readonly fleet: Fleet;
  readonly views: readonly RigView[];
}
/** A fleet without its rigs: what it says by itself, and the files that its patterns name. */
export interface FleetWithFiles {
  readonly fleet: FleetFrame;
  readonly declaration: FleetDeclaration;
  readonly files: readonly string[];
}

export interface Project {
  /** The records of a file; undefined where there is no such file. */
  records(path: string): FileRecords | undefined;
  text(path: string): string | undefined;
  /** The names that a file can use. */
  names(path: string): Names;
  material(path: string, name: string): Material | undefined;
  surface(path: string, name: string): Surface | undefined;
  policy(path: string, name: string | undefined): Policy;
  /** Every rig and model that a file declares, resolved. */
  rigs(path: string): readonly ResolvedRig[];
  /** Every fleet that a file declares, with all of its rigs resolved: for papers, not for checks. */
  fleets(path: string): readonly ResolvedFleet[];
  fleetFrames(path: string): readonly FleetWithFiles[];
  /** What is wrong with the file's own lines: reading, `use`, names, references. */
  problems(path: string): readonly Located[];
  /** The files that a file's results depend on, itself among them. */
  dependsOn(path: string): ReadonlySet<string>;
  /** The patterns, resolved, of the files that a file claims or lists. */
  patterns(path: string): readonly string[];
  /** Paths whose text may have changed, appeared or gone. Forgets what depended on them. */
  changed(paths: Iterable<string>): void;
  /** Forgets the records of a file that nothing uses, to save memory. */
  release(path: string): void;
}
