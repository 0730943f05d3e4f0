// Who sees whom: the names that a file can use, through its `use` lines and theirs. The built-in library is always
// visible and weakest: a name of the user's hides one of its.
import type { Span } from '../grammar/problem.ts';
import type {
  Declaration,
  FileRecords,
  FleetDeclaration,
  GroupDeclaration,
  MaterialDeclaration,
  PolicyDeclaration,
  RigDeclaration,
  SurfaceDeclaration,
} from '../records/file.ts';
import type { Located } from './located.ts';
import { folderOf, relativeTo, resolvePath } from './paths.ts';

/** A declaration and the file it stands in. */
export interface Entry<D extends Declaration = Declaration> {
  readonly declaration: D;
  readonly file: string;
}

interface ByNamespace {
  material: MaterialDeclaration;
  surface: SurfaceDeclaration;
  policy: PolicyDeclaration;
  group: GroupDeclaration;
  model: RigDeclaration;
  rig: RigDeclaration;
  fleet: FleetDeclaration;
}
export type Namespace = keyof ByNamespace;

/** The namespace of what a declaration names; a history names nothing of its own. */
export const namespaceOf = (declaration: Declaration): Namespace | undefined => {
  switch (declaration.kind) {
    case 'tape':
    case 'sealant':
    case 'primer':
    case 'cleaner':
    case 'coating':
      return 'material';
    case 'history':
      return undefined;
    default:
      return declaration.kind;
  }
};

/** The names visible in a file. */
export interface Names {
  find<N extends Namespace>(namespace: N, name: string): Entry<ByNamespace[N]> | undefined;
  /** Every visible name of a namespace, the built-in ones last. */
  all<N extends Namespace>(namespace: N): Iterable<[string, Entry<ByNamespace[N]>]>;
}

type Table = Map<string, Entry>;
const keyOf = (namespace: Namespace, name: string) => `${namespace} ${name}`;

function tableOf(entries: Iterable<Entry>): Table {
  const table: Table = new Map();
  for (const entry of entries) {
    const namespace = namespaceOf(entry.declaration);
    if (!namespace) continue;
    const key = keyOf(namespace, entry.declaration.name);
    if (!table.has(key)) table.set(key, entry);
  }
  return table;
}

/** Names from tables, the first that has one wins. */
export function namesIn(tables: readonly Table[]): Names {
  return {
    find(namespace, name) {
      const key = keyOf(namespace, name);
      for (const table of tables) {
        const entry = table.get(key);
        if (entry) return entry as never;
      }
      return undefined;
    },
    *all(namespace) {
      const seen = new Set<string>();
      for (const table of tables) {
        for (const [key, entry] of table) {
          if (!key.startsWith(`${namespace} `) || seen.has(key)) continue;
          seen.add(key);
          yield [entry.declaration.name, entry as never];
        }
      }
    },
  };
}

export function tableOfFile(file: string, records: FileRecords): Table {
  return tableOf(records.declarations.map((declaration) => ({ declaration, file })));
}

export interface Reading {
  records(path: string): FileRecords | undefined;
  inside(path: string): boolean;
}

/** The files that a file uses, each with the place of the line that leads there, and what is wrong with those lines. */
export function usedFiles(
  file: string,
  records: FileRecords,
  reading: Reading,
): { readonly files: ReadonlyMap<string, Span>; readonly problems: readonly Located[] } {
  const files = new Map<string, Span>();
  const problems: Located[] = [];
  for (const use of records.uses) {
    if (use.path.includes('\\')) {
      problems.push({
        file,
        rule: 'wrong-path',
        message: 'A path is written with forward slashes.',
        at: use.at,
        fixes: [{ label: 'Write forward slashes', at: use.at, text: `"${use.path.replaceAll('\\', '/')}"` }],
      });
      continue;
    }
    const path = resolvePath(folderOf(file), use.path);
    if (use.path.startsWith('/') || !reading.inside(path)) {
      problems.push({
        file,
        rule: 'use-leaves-workspace',
        message: `\`${use.path}\` lies outside this workspace: only files below its folder can be used.`,
        at: use.at,
      });
    } else if (path === file) {
      problems.push({ file, rule: 'use-circle', message: 'This file uses itself.', at: use.at });
    } else if (!reading.records(path)) {
      problems.push({
        file,
        rule: 'file-not-found',
        message: `There is no file \`${use.path}\`, seen from this file's folder.`,
        at: use.at,
      });
    } else if (files.has(path)) {
      problems.push({ file, rule: 'used-twice', message: `\`${use.path}\` is used twice.`, at: use.at });
    } else files.set(path, use.at);
  }
  return { files, problems };
}

export interface Visible {
  readonly names: Names;
  /** Every file that the names come from, the file itself not among them. */
  readonly closure: ReadonlySet<string>;
}

/** The files reached from a set of files by `use`, they themselves first. */
export function closureOf(starts: Iterable<string>, reading: Reading): Set<string> {
  const closure = new Set<string>(starts);
  for (const path of closure) {
    const records = reading.records(path);
    if (!records) continue;
    for (const used of usedFiles(path, records, reading).files.keys()) closure.add(used);
  }
  return closure;
}

/** The table of everything declared in some files. */
export function tableOfFiles(files: Iterable<string>, reading: Reading): Table {
  const entries: Entry[] = [];
  for (const file of files)
    for (const declaration of reading.records(file)?.declarations ?? []) entries.push({ declaration, file });
  return tableOf(entries);
}

/** Names that reach a file from two places: an error at the `use` line through which the second came. */
export function namesReachedTwice(
  file: string,
  records: FileRecords,
  uses: ReadonlyMap<string, Span>,
  reading: Reading,
): Located[] {
  const problems: Located[] = [];
  const seen = new Map<string, Entry>();
  const add = (entry: Entry, at: Span | undefined) => {
    const namespace = namespaceOf(entry.declaration);
    if (!namespace) return;
    const key = keyOf(namespace, entry.declaration.name);
    const first = seen.get(key);
    if (!first) {
      seen.set(key, entry);
      return;
    }
    if (first.declaration === entry.declaration) return;
    const twiceHere = first.file === entry.file;
    if (twiceHere && entry.file !== file) return; // that file says so itself
    const related = [{ file: first.file, at: first.declaration.nameAt, message: 'It is declared here too.' }];
    const { name, nameAt } = entry.declaration;
    if (twiceHere)
      problems.push({
        file,
        rule: 'name-twice',
        message: `The name \`${name}\` is given twice in this file.`,
        at: nameAt,
        related,
      });
    else {
      const places = [first, entry].map((e) => relativeTo(folderOf(file), e.file)).join(' and ');
      problems.push({
        file,
        rule: 'name-twice',
        message: `The name \`${name}\` comes from two files: ${places}.`,
        at: at ?? nameAt,
        related: [...related, { file: entry.file, at: nameAt, message: 'And here.' }],
      });
    }
  };
  for (const declaration of records.declarations) add({ declaration, file }, undefined);
  for (const [used, at] of uses) {
    for (const path of closureOf([used], reading)) {
      if (path === file) continue;
      for (const declaration of reading.records(path)?.declarations ?? []) add({ declaration, file: path }, at);
    }
  }
  return problems;
}

/** The `use` lines of a file that lead back to it, each with the way round. Harmless, and said once for each line. */
export function useCircles(file: string, uses: ReadonlyMap<string, Span>, reading: Reading): Located[] {
  const problems: Located[] = [];
  for (const [used, at] of uses) {
    const way = wayBack(used, file, reading);
    if (!way) continue;
    const steps = [...way, file].map((path) => `\`${relativeTo(folderOf(file), path)}\``);
    const message = `These files use each other: this file uses ${steps.join(', which uses ')}. One of the lines may go.`;
    problems.push({ file, rule: 'use-circle', message, at });
  }
  return problems;
}

/** The shortest way from one file to another by `use`, without the last. */
function wayBack(from: string, to: string, reading: Reading): string[] | undefined {
  const cameFrom = new Map<string, string | undefined>([[from, undefined]]);
  for (const path of cameFrom.keys()) {
    const records = reading.records(path);
    if (!records || records.uses.length === 0) continue;
    for (const next of usedFiles(path, records, reading).files.keys()) {
      if (next === to) {
        const way: string[] = [];
        for (let step: string | undefined = path; step !== undefined; step = cameFrom.get(step)) way.unshift(step);
        return way;
      }
      if (!cameFrom.has(next)) cameFrom.set(next, path);
    }
  }
  return undefined;
}
