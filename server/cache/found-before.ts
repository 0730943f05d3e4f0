// What an earlier check found, kept in a folder: may be deleted at any time, shared by processes that know nothing of each
// other, and left out where it is damaged, of another program, of another day or asked about other folders.
import { mkdirSync, readdirSync, rmSync, statSync, utimesSync } from 'node:fs';
import { join } from 'node:path';
import * as z from 'zod';
import type { Judged } from '../cli/judging.ts';
import { sweep } from '../whole-file.ts';
import { type Known, sha256 } from './fingerprints.ts';
import { readLines, writeLines } from './lines.ts';

/** What the kept findings are of. Of another key nothing is read. */
export interface Key {
  readonly program: string;
  readonly dates: { readonly asOf: string; readonly today: string };
  readonly roots: readonly string[];
  readonly asked: readonly string[];
}

/** One file as it was judged, and the places in the table of all that this depends on. */
export interface Kept {
  readonly judged: Judged;
  readonly dependsOn: readonly number[];
}

/** The table of a check and its outcome; the judged files are read only when something has changed. */
export interface FoundBefore<T> {
  /** The files that were judged, in order. */
  readonly files: readonly string[];
  readonly known: readonly Known[];
  /** Everything that was said, if it depends on nothing but the table. */
  readonly outcome?: T;
  kept(): Iterable<Kept>;
}

const Table = z.object({
  key: z.string(),
  /** The same in both files of one check: of two that write at once, one may have won here and the other there. */
  run: z.string(),
  files: z.array(z.string()),
  known: z.array(z.object({ path: z.string(), fingerprint: z.string(), stat: z.string().optional() })),
});

const suffixes = { table: '.table', judged: '.judged' } as const;
/** So many checks are kept: of branches, folders and dates that are asked about in turns. */
const mostKept = 8;

const nameOf = (key: Key) => `found-${sha256(JSON.stringify(key)).slice(0, 24)}`;

/** What was kept of a check like this one; undefined where there is nothing that can be believed. */
export function foundBefore<T>(folder: string, key: Key): FoundBefore<T> | undefined {
  const path = join(folder, nameOf(key));
  const [head, outcome] = readLines(path + suffixes.table);
  const table = head === undefined ? undefined : Table.safeParse(JSON.parse(head)).data;
  if (!table || table.key !== JSON.stringify(key)) return undefined;
  return {
    files: table.files,
    known: table.known as readonly Known[],
    ...(outcome === undefined || outcome === 'null' ? {} : { outcome: JSON.parse(outcome) as T }),
    *kept() {
      const [run, ...lines] = readLines(path + suffixes.judged);
      if (run !== table.run) return;
      for (const line of lines) if (line !== undefined) yield JSON.parse(line) as Kept;
    },
  };
}

/** Keeps a check for the next one. Throws what the file system throws. */
export function keepFound<T>(
  folder: string,
  key: Key,
  { files, known, outcome }: Pick<FoundBefore<T>, 'files' | 'known' | 'outcome'>,
  kept: Iterable<Kept>,
  run: string,
): void {
  mkdirSync(folder, { recursive: true });
  const path = join(folder, nameOf(key));
  function* judged() {
    yield run;
    for (const one of kept) yield JSON.stringify(one);
  }
  writeLines(path + suffixes.judged, judged());
  const table: z.infer<typeof Table> = { key: JSON.stringify(key), run, files: [...files], known: [...known] as never };
  writeLines(path + suffixes.table, [JSON.stringify(table), JSON.stringify(outcome ?? null)]);
  clean(folder);
}

/** Marks a check as used, so that it is kept longer than others. */
export function markUsed(folder: string, key: Key): void {
  const now = new Date();
  for (const suffix of Object.values(suffixes)) {
    try {
      utimesSync(join(folder, nameOf(key) + suffix), now, now);
    } catch {
      // It may be gone, or the folder be read-only: then it is not kept longer.
    }
  }
}

/** Lets go of the checks that were not used for longest, and of what a process that was ended left unfinished. */
function clean(folder: string): void {
  sweep(folder, Date.now());
  const checks = readdirSync(folder)
    .filter((name) => name.startsWith('found-') && name.endsWith(suffixes.table))
    .flatMap((name) => {
      const stat = statSync(join(folder, name), { throwIfNoEntry: false });
      return stat ? [{ name: name.slice(0, -suffixes.table.length), used: stat.mtimeMs }] : [];
    })
    .sort((a, b) => b.used - a.used);
  for (const { name } of checks.slice(mostKept))
    for (const suffix of Object.values(suffixes)) rmSync(join(folder, name + suffix), { force: true });
}
