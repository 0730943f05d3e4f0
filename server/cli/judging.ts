// What one file says, as plain data that can cross from a thread to another, or be kept.

import { createProject, type Project } from '../../language/resolve/project.ts';
import type { Dates } from '../../language/resolve/types.ts';
import { examined } from '../../language/rules/check.ts';
import type { Finding } from '../../language/rules/finding.ts';
import type { Member } from '../../language/rules/member.ts';
import { type FileSummary, summaryOf } from '../../language/rules/workspace.ts';
import { isBookingsFile } from '../../language/tables/bookings.ts';
import { fingerprinted, type Known } from '../cache/fingerprints.ts';
import { dependenciesOf } from '../dependencies.ts';
import type { DiskFiles } from '../files.ts';

export interface Judged {
  readonly path: string;
  /** Without those of its fleets, which come when all rigs are known. */
  readonly findings: readonly Finding[];
  /** Of thousands of files most of the rest is wanted once, and held as a text it takes a quarter of the room: see {@link Told}. */
  readonly told: string;
  readonly hasFleet: boolean;
}

/** What else a file tells, as JSON in {@link Judged}. */
export interface Told {
  readonly members: readonly Member[];
  readonly summary: FileSummary;
  /** All that this depends on, itself among it, as it was when it was looked at. */
  readonly dependsOn: readonly Pick<Known, 'path' | 'fingerprint'>[];
  /** The patterns by which its rigs claim histories: a new file that fits one changes all this. */
  readonly claims: readonly string[];
  /** The files that its fleets list. */
  readonly lists: readonly string[];
}

export const toldBy = ({ told }: Judged): Told => JSON.parse(told) as Told;

export interface Judging {
  readonly project: Project;
  judge(path: string): Judged;
}

const mostHeld = 16;

/** Judges file after file, and keeps no records of them. */
export function judging(onDisk: DiskFiles, dates: Dates): Judging {
  const { files: disk, of } = fingerprinted(onDisk);
  const project = createProject(disk);
  const held = new Set<string>();
  /** The records of the last few files are held: a history stands just before or behind the rig that claims it. */
  const letGo = (path: string) => {
    held.delete(path);
    held.add(path);
    if (held.size <= mostHeld) return;
    const [first] = held;
    held.delete(first as string);
    project.release(first as string);
  };
  return {
    project,
    judge(path) {
      const looked: string[] = [];
      const exists = (other: string) => {
        looked.push(other);
        return disk.exists(other);
      };
      const { findings, members, silences } = examined(project, path, dates, exists);
      const summary = summaryOf(project, path, silences);
      const { paths, lists } = dependenciesOf(project, disk, path);
      // What its fleets read of a file of bookings decides, not that it is there.
      for (const other of paths) if (isBookingsFile(other)) disk.read(other);
      const told: Told = {
        members,
        summary,
        dependsOn: [...new Set([...paths, ...looked])].map((other) => ({ path: other, fingerprint: of(other) })),
        claims: summary.rigs.flatMap(({ claims }) => claims),
        lists: [...lists],
      };
      const judged: Judged = {
        path,
        findings,
        told: JSON.stringify(told),
        hasFleet: project.records(path)?.declarations.some(({ kind }) => kind === 'fleet') ?? false,
      };
      for (const file of paths) letGo(file);
      return judged;
    },
  };
}
