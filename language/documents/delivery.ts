import type { DocumentFile } from '../protocol/index.ts';
import { bytesOf } from './bytes.ts';
import {
  besideName,
  decide,
  fingerprint,
  type PlannedFile,
  printRecord,
  readRecord,
  recordFileName,
  type WrittenRecord,
} from './written.ts';

// Puts finished papers into a folder. The editor and the command line hand in their own folder and their own way to
// ask; the order of steps, and so the promise to lose nothing, is the same for both.

/** A folder that holds papers. Names are plain file names; failures of the disk reject. */
export interface Folder {
  /** What a file holds, or undefined when there is none. */
  read(name: string): Promise<Uint8Array | undefined>;
  /** Writes a file, making the folder when needed. */
  write(name: string, bytes: Uint8Array): Promise<void>;
}

/** What a person wants done with a file that a person edited. */
export type Answer = 'overwrite' | 'keep' | 'beside';

/** Asks about edited files; returns an answer by file name, or undefined when the whole is called off. */
export type Ask = (edited: readonly string[]) => Promise<ReadonlyMap<string, Answer> | undefined>;

/** What became of the files, by the name that they have now; in the order in which they were handed in. */
export interface Delivery {
  readonly written: readonly string[];
  readonly unchanged: readonly string[];
  /** Edited by a person and left alone. */
  readonly kept: readonly string[];
}

/**
 * Writes the files into the folder and brings its record up to date.
 * Nothing is written before all questions are answered; undefined when the person called it off.
 * When the disk fails half-way, the record still holds what was written, and the error goes on to the caller.
 */
export async function deliver(files: readonly DocumentFile[], folder: Folder, ask: Ask): Promise<Delivery | undefined> {
  const recorded = await folder.read(recordFileName);
  const record = readRecord(recorded && new TextDecoder().decode(recorded));
  const planned = await Promise.all(files.map((file) => plan(file, folder, record)));
  const settled = await settle(planned, folder, record, ask);
  if (settled === undefined) return undefined;

  const written: Record<string, string> = {};
  const names = { written: [] as string[], unchanged: [] as string[], kept: [] as string[] };
  try {
    for (const { file, decision } of settled) {
      if (decision === 'ask') {
        names.kept.push(file.name);
        continue;
      }
      if (decision !== 'unchanged') await folder.write(file.name, bytesOf(file));
      written[file.name] = await fingerprint(file);
      names[decision === 'unchanged' ? 'unchanged' : 'written'].push(file.name);
    }
  } finally {
    const next = printRecord({ ...record, ...written });
    if (next !== printRecord(record)) await folder.write(recordFileName, new TextEncoder().encode(next));
  }
  return names;
}

async function plan(file: DocumentFile, folder: Folder, record: WrittenRecord): Promise<PlannedFile> {
  return { file, decision: await decide(await folder.read(file.name), record[file.name], file) };
}

/** Puts the answers in place of the questions; what stays `ask` is kept as it is. */
async function settle(
  planned: readonly PlannedFile[],
  folder: Folder,
  record: WrittenRecord,
  ask: Ask,
): Promise<readonly PlannedFile[] | undefined> {
  const edited = planned.filter((each) => each.decision === 'ask').map((each) => each.file.name);
  if (edited.length === 0) return planned;
  const answers = await ask(edited);
  if (answers === undefined) return undefined;
  return Promise.all(
    planned.map(async (each): Promise<PlannedFile> => {
      const answer = each.decision === 'ask' ? answers.get(each.file.name) : undefined;
      if (answer === 'overwrite') return { ...each, decision: 'replace' };
      return answer === 'beside' ? beside(each.file, folder, record) : each;
    }),
  );
}

/** The first name beside an edited file that is free, or holds only what we wrote ourselves. */
async function beside(file: DocumentFile, folder: Folder, record: WrittenRecord): Promise<PlannedFile> {
  for (let attempt = 1; ; attempt += 1) {
    const planned = await plan({ ...file, name: besideName(file.name, attempt) }, folder, record);
    if (planned.decision !== 'ask') return planned;
  }
}
