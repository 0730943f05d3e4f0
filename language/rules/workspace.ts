// Rules that need all files at once: histories that no rig reads, or two, and things that nothing uses. They are kept
// apart from the findings of a file, which never depend on what lies around it.
import picomatch from 'picomatch';
import { folderOf, relativeTo } from '../resolve/paths.ts';
import { nearest } from '../values/nearest.ts';
import { accepting } from './accept.ts';
import type { Finding } from './finding.ts';
import { family, type RuleEntry } from './rule.ts';
import type { FileSummary } from './summary.ts';

export { type FileSummary, summaryOf } from './summary.ts';

const rules = {
  'history-of-no-rig': {
    severity: 'warning',
    title: 'A history belongs to no rig',
    why: 'A history goes by the name of its rig. No rig of this name is in the workspace, so nothing reads it.',
    fix: 'Writes the nearest name.',
  },
  'history-unclaimed': {
    severity: 'warning',
    title: 'No rig reads a history',
    why: 'A rig reads the histories of its own file and of those that it names with `records`. What it does not read does not count.',
    fix: 'None: the line belongs into the file of the rig, and the message has it ready to be copied.',
  },
  'history-claimed-twice': {
    severity: 'error',
    title: 'Two rigs read one history',
    why: 'What was done to one roof would count for two.',
    fix: 'None: only the writer knows whose it is.',
  },
  'unused-declaration': {
    severity: 'hint',
    tag: 'unnecessary',
    title: 'Something is declared and never used',
    why: 'Nothing in the file refers to it, and no other file uses this file. In files that others use nothing is called unused.',
    fix: 'None: it may be meant for later.',
  },
  'unused-use': {
    severity: 'hint',
    tag: 'unnecessary',
    title: 'A used file is not needed',
    why: 'None of the names that it brings is needed here.',
    fix: 'Removes the line.',
  },
} as const satisfies Record<string, RuleEntry>;
type Rule = keyof typeof rules;

export const wholeWorkspace = family(rules);

const finding = (rule: Rule, rest: Omit<Finding, 'rule' | 'severity'>): Finding => ({
  rule,
  severity: rules[rule].severity,
  ...rest,
});

function remembered<T>(make: (key: string) => T): (key: string) => T {
  const known = new Map<string, T>();
  return (key) => {
    const made = known.get(key) ?? make(key);
    known.set(key, made);
    return made;
  };
}

/** A rig, as histories look for it: by its name now or before. */
interface Reader {
  readonly name: string;
  readonly file: FileSummary;
  readonly rig: FileSummary['rigs'][number];
}

/**
 * What the files of a workspace say together, in the order of files and places. The order of the summaries is of no matter.
 * `worked`: lines of policies that silenced something of a fleet.
 */
export function workspaceFindings(summaries: Iterable<FileSummary>, worked: readonly string[] = []): Finding[] {
  const files = [...summaries].sort((a, b) => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0));
  const readers = new Map<string, Reader[]>();
  for (const file of files) {
    for (const rig of file.rigs) {
      for (const name of new Set([rig.name, ...rig.formerly])) {
        const known = readers.get(name);
        if (known) known.push({ name, file, rig });
        else readers.set(name, [{ name, file, rig }]);
      }
    }
  }
  const matcherOf = remembered((pattern: string) => picomatch(pattern, { nobrace: true, noext: true }));
  const reads = ({ file, rig }: Reader, path: string) =>
    file.path === path || rig.claims.some((pattern) => matcherOf(pattern)(path));

  const out: Finding[] = [];
  /** What claimed histories refer to, by the file of the rig that reads them: names are looked up there. */
  const byHistory = new Map<string, string[]>();
  for (const file of files) {
    for (const history of file.histories) {
      const candidates = readers.get(history.name) ?? [];
      const claimed = candidates.filter((reader) => reads(reader, file.path));
      out.push(...ofHistory(file, history, candidates, claimed, readers));
      for (const reader of claimed) {
        const known = byHistory.get(reader.file.path);
        if (known) known.push(...history.refers);
        else byHistory.set(reader.file.path, [...history.refers]);
      }
    }
  }
  out.push(...unused(files, byHistory), ...silencesNothing(files, worked));
  return out.sort((a, b) => (a.file < b.file ? -1 : a.file > b.file ? 1 : a.at[0] - b.at[0]));
}

function ofHistory(
  file: FileSummary,
  history: FileSummary['histories'][number],
  candidates: readonly Reader[],
  claimed: readonly Reader[],
  readers: ReadonlyMap<string, unknown>,
): Finding[] {
  const { name, at } = history;
  const where = { file: file.path, at };
  const placesOf = (some: readonly Reader[]) =>
    some.map((reader) => ({ file: reader.file.path, at: reader.rig.at, message: `The rig ${reader.rig.name}.` }));
  if (claimed.length > 1)
    return [
      finding('history-claimed-twice', {
        ...where,
        message: `Two rigs read this history of \`${name}\`, in ${claimed.map((r) => relativeTo(folderOf(file.path), r.file.path)).join(' and ')}: let one of them go, or call it by its own name.`,
        related: placesOf(claimed),
      }),
    ];
  if (claimed.length === 1) return [];
  const [rig] = candidates;
  if (!rig) {
    const close = nearest(name, readers.keys());
    return [
      finding('history-of-no-rig', {
        ...where,
        message: `No rig in this workspace is called \`${name}\`, so that nothing reads this history.${close === undefined ? '' : ` Did you mean \`${close}\`?`}`,
        fixes: close === undefined ? [] : [{ label: `Write \`${close}\``, at, text: close }],
      }),
    ];
  }
  const pattern = relativeTo(folderOf(rig.file.path), file.path);
  const folder = folderOf(pattern);
  const written = folder === '' || folder.endsWith('..') ? pattern : `${folder}/*.rig`;
  return [
    finding('history-unclaimed', {
      ...where,
      message: `No rig reads this history. Add \`records "${written}"\` to the rig ${rig.rig.name} in ${relativeTo(folderOf(file.path), rig.file.path)}.`,
      related: placesOf(candidates),
    }),
  ];
}

/** Lines of policies that silence nothing in the whole workspace. While a file cannot be read, nothing is concluded. */
function silencesNothing(files: readonly FileSummary[], ofFleets: readonly string[]): Finding[] {
  if (files.some(({ whole }) => !whole)) return [];
  const worked = new Set([...ofFleets, ...files.flatMap(({ silences }) => silences.worked)]);
  return files.flatMap((file) =>
    file.silences.written.flatMap(({ key, rule, at, statement }): Finding[] =>
      worked.has(key)
        ? []
        : [
            {
              rule: 'accept-unused',
              severity: accepting.rules['accept-unused'].severity,
              file: file.path,
              at,
              message: `\`${rule}\` finds nothing in this workspace that this line would silence: it can go.`,
              fixes: [{ label: 'Remove this line', at: statement, text: '' }],
            },
          ],
    ),
  );
}

/** Surfaces and rigs are not called unused: rigs are what all is for, surfaces are few. */
const namespaces = new Set(['material', 'policy', 'group', 'model']);

function unused(files: readonly FileSummary[], byHistory: ReadonlyMap<string, readonly string[]>): Finding[] {
  const byPath = new Map(files.map((file) => [file.path, file]));
  const used = new Set(files.flatMap((file) => file.uses.map(({ path }) => path)));
  const closureOf = remembered((start: string) => {
    const paths = new Set([start]);
    for (const path of paths) for (const use of byPath.get(path)?.uses ?? []) paths.add(use.path);
    return [...paths].flatMap((path) => byPath.get(path) ?? []);
  });
  const out: Finding[] = [];
  for (const file of files) {
    // A file of materials or policies alone is there for others, even before one uses it.
    const isShared = used.has(file.path) || (file.rigs.length === 0 && !Object.keys(file.declared).some(isFleet));
    if (isShared || !file.whole) continue;
    const refers = new Set([...file.refers, ...(byHistory.get(file.path) ?? [])]);
    for (const [key, at] of Object.entries(file.declared)) {
      const [namespace = '', name = ''] = key.split(' ');
      if (!namespaces.has(namespace) || refers.has(key)) continue;
      out.push(
        finding('unused-declaration', {
          file: file.path,
          at,
          message: `Nothing uses the ${namespace} \`${name}\`. If it is not for later, the lines can go.`,
        }),
      );
    }
    for (const { path, written, at, line } of file.uses) {
      const closure = byPath.has(path) ? closureOf(path) : [];
      // A file that is not there, or not of this workspace, is reported where it is followed.
      if (closure.length === 0 || closure.some(({ whole }) => !whole)) continue;
      if ([...refers].some((key) => closure.some(({ declared }) => Object.hasOwn(declared, key)))) continue;
      out.push(
        finding('unused-use', {
          file: file.path,
          at,
          message: `Nothing of \`${written}\` is used here: the line can go.`,
          fixes: [{ label: 'Remove this line', at: line, text: '' }],
        }),
      );
    }
  }
  return out;
}

const isFleet = (key: string) => key.startsWith('fleet ');
