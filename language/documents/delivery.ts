import type { DocumentFile } from '../protocol/index.ts';
import { bytesOf } from './bytes.ts';
import {
  besideName,
  decide,
  fingerprint,
  type PlannedFile,
  printRecord,
  readRecord,
  readWriting,
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

/** What we wrote into a folder, and what we may have written before we were cut off. */
interface Ours {
  readonly record: WrittenRecord;
  readonly writing: WrittenRecord;
}

/**
 * Writes the files into the folder and brings its record up to date.
 * Nothing is written before all questions are answered; undefined when the person called it off.
 * What is about to be written is announced in the record, so that after a kill between two files the next delivery knows its
 * own. When the disk fails half-way, the record still holds what was written, and the error goes on to the caller.
 */
export async function deliver(files: readonly DocumentFile[], folder: Folder, ask: Ask): Promise<Delivery | undefined> {
  const recorded = await folder.read(recordFileName);
  const text = recorded && new TextDecoder().decode(recorded);
  const ours: Ours = { record: readRecord(text), writing: readWriting(text) };
  const planned: PlannedFile[] = [];
  // One by one: a fleet has thousands of papers, and a process may open only so many files at once.
  for (const file of files) planned.push(await plan(file, folder, ours));
  const settled = await settle(planned, folder, ours, ask);
  if (settled === undefined) return undefined;

  let standing = printRecord(ours.record, ours.writing);
  const note = async (written: WrittenRecord, writing: WrittenRecord) => {
    const next = printRecord({ ...ours.record, ...written }, writing);
    if (next !== standing) await folder.write(recordFileName, new TextEncoder().encode(next));
    standing = next;
  };
  const announced: Record<string, string> = {};
  for (const { file, decision } of settled)
    if (decision === 'create' || decision === 'replace') announced[file.name] = await fingerprint(file);
  await note({}, { ...ours.writing, ...announced });

  const written: Record<string, string> = {};
  const names = { written: [] as string[], unchanged: [] as string[], kept: [] as string[] };
  const rest = () => without({ ...ours.writing, ...announced }, written);
  try {
    for (const { file, decision } of settled) {
      if (decision === 'ask') {
        names.kept.push(file.name);
        continue;
      }
      if (decision !== 'unchanged') await folder.write(file.name, bytesOf(file));
      written[file.name] = announced[file.name] ?? (await fingerprint(file));
      names[decision === 'unchanged' ? 'unchanged' : 'written'].push(file.name);
    }
  } catch (error) {
    // A disk that took no paper may not take the record either; what it said of the paper is what is told.
    await note(written, rest()).catch(() => undefined);
    throw error;
  }
  await note(written, rest());
  return names;
}

const without = (all: WrittenRecord, some: WrittenRecord): WrittenRecord =>
  Object.fromEntries(Object.entries(all).filter(([name]) => !Object.hasOwn(some, name)));

async function plan(file: DocumentFile, folder: Folder, { record, writing }: Ours): Promise<PlannedFile> {
  const existing = await folder.read(file.name);
  const decision = await decide(existing, record[file.name], file);
  const begun = writing[file.name];
  return { file, decision: decision === 'ask' && begun ? await decide(existing, begun, file) : decision };
}

/** Puts the answers in place of the questions; what stays `ask` is kept as it is. */
async function settle(
  planned: readonly PlannedFile[],
  folder: Folder,
  ours: Ours,
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
      return answer === 'beside' ? beside(each.file, folder, ours) : each;
    }),
  );
}

/** The first name beside an edited file that is free, or holds only what we wrote ourselves. */
async function beside(file: DocumentFile, folder: Folder, ours: Ours): Promise<PlannedFile> {
  for (let attempt = 1; ; attempt += 1) {
    const planned = await plan({ ...file, name: besideName(file.name, attempt) }, folder, ours);
    if (planned.decision !== 'ask') return planned;
  }
}
