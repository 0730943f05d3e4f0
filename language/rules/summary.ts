// What one file says that matters to a whole workspace: small, so that ten thousand of them can be kept side by side.
import type { Span } from '../grammar/problem.ts';
import { allLines, type Declaration } from '../records/file.ts';
import type { Whole } from '../records/statement.ts';
import { folderOf, resolvePath } from '../resolve/paths.ts';
import type { Project } from '../resolve/project.ts';
import { refsOf } from '../resolve/references.ts';
import { canonical } from '../statements/words.ts';
import type { Silences } from './silenced.ts';

/** A name and where it stands. Keys are its namespace and its name: `material GreyLap`. */
export interface Named {
  readonly name: string;
  readonly at: Span;
}

export interface FileSummary {
  readonly path: string;
  /** What the file declares, by key; of a name that is given twice the first. */
  readonly declared: Readonly<Record<string, Span>>;
  /** The keys of the names that the file refers to; without those of its histories. */
  readonly refers: readonly string[];
  /** Files used, with the place of the path and of its whole line. */
  readonly uses: readonly { readonly path: string; readonly written: string; readonly at: Span; readonly line: Span }[];
  /** Rigs, with the patterns by which they claim histories, as seen from the workspace, and their former names. */
  readonly rigs: readonly (Named & { readonly claims: readonly string[]; readonly formerly: readonly string[] })[];
  readonly histories: readonly (Named & { readonly refers: readonly string[] })[];
  /** The lines of its policies that silence a rule, and the keys of those that silenced something when it was checked. */
  readonly silences: Silences;
  /** False while something in it cannot be read: nothing is concluded from what it does not say. */
  readonly whole: boolean;
}

/** The summary of a file; what the project has read of it may be released afterwards. */
export function summaryOf(project: Project, path: string, silences: Silences): FileSummary {
  const records = project.records(path);
  const text = project.text(path) ?? '';
  const declared: Record<string, Span> = {};
  const refers = new Set<string>();
  const rigs: FileSummary['rigs'][number][] = [];
  const histories: FileSummary['histories'][number][] = [];
  for (const declaration of records?.declarations ?? []) {
    const { kind, name, nameAt } = declaration;
    if (kind === 'history') {
      histories.push({ name, at: nameAt, refers: [...referencesOf(declaration)] });
      continue;
    }
    const key = ownCopy(`${namespaceOf(kind)} ${name}`);
    if (!Object.hasOwn(declared, key)) declared[key] = nameAt;
    for (const ref of referencesOf(declaration)) refers.add(ownCopy(ref));
    if (kind !== 'rig') continue;
    const { statements } = declaration;
    rigs.push({
      name,
      at: nameAt,
      claims: statements
        .flatMap((s) => (s.word === 'records' ? s.patterns : []))
        .map((pattern) => resolvePath(folderOf(path), pattern)),
      formerly: statements.flatMap((s) => (s.word === 'formerly' && !s.now ? [s.name.name] : [])),
    });
  }
  return {
    path,
    declared,
    refers: [...refers],
    uses: (records?.uses ?? []).map(({ path: written, at }) => ({
      path: resolvePath(folderOf(path), written),
      written: ownCopy(written),
      at,
      line: lineAround(text, at),
    })),
    rigs,
    histories,
    silences,
    whole: records !== undefined && isWhole(records.declarations) && records.problems.length === 0,
  };
}

/**
 * The same text, held by itself: a piece of a file, or a text made with one, would keep the whole file in memory for as long
 * as the summary lives.
 */
const ownCopy = (text: string): string => JSON.parse(JSON.stringify(text)) as string;

const namespaceOf = (kind: Declaration['kind']) =>
  kind === 'tape' || kind === 'sealant' || kind === 'primer' || kind === 'cleaner' || kind === 'coating'
    ? 'material'
    : kind;

/** Every name that a declaration may mean. What it is like may be of two namespaces: both are named. */
function* referencesOf(declaration: Declaration): Iterable<string> {
  const { kind, like, under } = declaration;
  if (like) {
    yield `${namespaceOf(kind)} ${like.name}`;
    if (kind === 'rig') yield `model ${like.name}`;
  }
  if (under) yield `policy ${under.name}`;
  for (const statement of declaration.statements as readonly Whole[]) {
    for (const [ref, namespace] of refsOf(statement)) {
      yield `${namespace} ${ref.name}`;
      if (namespace === 'surface') yield `surface ${canonical(ref.name)}`;
    }
    if (statement.word === 'booked') yield `rig ${(statement as unknown as { rig: Named }).rig.name}`;
  }
  for (const line of allLines(declaration)) {
    if (line.word !== 'serves') continue;
    for (const { name } of (line as unknown as { readonly served: readonly Named[] }).served) {
      yield `group ${name}`;
      yield `rig ${name}`;
    }
  }
}

function isWhole(declarations: readonly Declaration[]): boolean {
  return declarations.every(
    ({ broken, statements }) =>
      broken.length === 0 &&
      (statements as readonly Partial<Record<'brokenFindings' | 'brokenLines', readonly unknown[]>>[]).every(
        (s) => !s.brokenFindings && !s.brokenLines,
      ),
  );
}

/** The line of a place, its end of line with it. */
function lineAround(text: string, [start, end]: Span): Span {
  const next = text.indexOf('\n', end);
  return [text.lastIndexOf('\n', start - 1) + 1, next < 0 ? text.length : next + 1];
}
