// `rigseam write`: the estimate and the schedule of rigs and fleets, into a folder.
import { mkdirSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join, relative, resolve } from 'node:path';
import { type Answer, deliver } from '../../language/documents/delivery.ts';
import type { DocumentFile } from '../../language/protocol/index.ts';
import { createProject } from '../../language/resolve/project.ts';
import type { Dates } from '../../language/resolve/types.ts';
import type { Finding } from '../../language/rules/finding.ts';
import { diskFailure } from '../disk-failure.ts';
import { documentsFor, targetsIn } from '../documents.ts';
import { fleetFilesAmong } from '../fleet-files.ts';
import { sweep, writeWhole } from '../whole-file.ts';
import { textAt } from '../written-before.ts';
import { type Asked, diskOf, Misuse } from './paths.ts';
import { positions } from './text.ts';

export interface WriteOptions {
  readonly out: string;
  readonly name?: readonly string[];
  readonly overwrite?: true;
}

export interface Written {
  readonly text: string;
  readonly json: {
    readonly folder: string;
    readonly written: readonly string[];
    readonly unchanged: readonly string[];
    readonly kept: readonly string[];
    readonly problems: readonly string[];
  };
  readonly failed: boolean;
}

/** Writes the papers. A file that a person edited is kept, and the new one put beside it, unless `overwrite` says otherwise. */
export async function writeDocuments(asked: Asked, dates: Dates, options: WriteOptions): Promise<Written> {
  const disk = diskOf(asked);
  const project = createProject(disk);
  const files: DocumentFile[] = [];
  const problems: string[] = [];
  const notes: string[] = [];
  const from = (path: string) => relative(asked.from, path) || path;
  const found = new Set<string>();
  const fleetFiles = fleetFilesAmong(asked.files, disk);
  for (const path of asked.files) {
    const all = targetsIn(project, path).map((target) => target.name);
    const names = options.name ? all.filter((name) => options.name?.includes(name)) : all;
    for (const name of names) found.add(name);
    if (names.length === 0) continue;
    const place = (finding: Finding) => {
      const { start } = positions(project.text(finding.file) ?? '')(finding.at);
      return `${from(finding.file)}:${start.line + 1}:${start.character + 1}`;
    };
    const before = (name: string) => textAt(join(resolve(options.out), name));
    const reply = await documentsFor(project, path, names, dates, place, before, fleetFiles);
    if (reply.kind !== 'documents') continue;
    files.push(...reply.files);
    notes.push(...(reply.notes ?? []));
    if (reply.problems.length > 0) problems.push(`${from(path)}: ${reply.problems.join('\n  ')}`);
  }
  for (const name of options.name ?? [])
    if (!found.has(name)) throw new Misuse(`There is no rig or fleet \`${name}\` in what was named.`);
  if (found.size === 0) throw new Misuse('What was named declares no rig and no fleet: there is nothing to write.');
  const twice = files.find(
    (file, i) => files.findIndex((other) => other.name.toLowerCase() === file.name.toLowerCase()) !== i,
  );
  if (twice) throw new Misuse(`Two rigs or fleets would write \`${twice.name}\`. Write them into separate folders.`);

  const folder = resolve(options.out);
  const answer: Answer = options.overwrite ? 'overwrite' : 'beside';
  const delivery =
    files.length === 0
      ? { written: [], unchanged: [], kept: [] }
      : await deliver(files, diskFolder(folder), async (edited) => new Map(edited.map((name) => [name, answer])));
  const { written, unchanged, kept } = delivery ?? { written: [], unchanged: [], kept: [] };
  const shown = (name: string) => join(relative(asked.from, folder) || '.', name);
  const lines = [
    ...written.map((name) => `wrote      ${shown(name)}`),
    ...unchanged.map((name) => `unchanged  ${shown(name)}`),
    ...kept.map((name) => `kept       ${shown(name)} (edited by a person; --overwrite replaces it)`),
    ...problems,
    ...notes,
    `${written.length} written, ${unchanged.length} unchanged${kept.length > 0 ? `, ${kept.length} kept` : ''}; as of ${dates.asOf}.`,
  ];
  return {
    text: `${lines.join('\n')}\n`,
    json: { folder, written, unchanged, kept, problems },
    failed: problems.length > 0,
  };
}

function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    throw diskFailure(folder, 'made', error);
  }
}

function diskFolder(folder: string) {
  sweep(folder, Date.now());
  return {
    async read(name: string) {
      try {
        return await readFile(join(folder, name));
      } catch (error) {
        if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
        throw diskFailure(join(folder, name), 'read', error);
      }
    },
    async write(name: string, bytes: Uint8Array) {
      makeFolder(folder);
      writeWhole(join(folder, name), bytes);
    },
  };
}
