// Rules of evidence: photos and papers that a record names, by their path beside its file.

import { quoted } from '../grammar/text.ts';
import type { Declaration } from '../records/file.ts';
import type { Whole } from '../records/statement.ts';
import type { Located } from '../resolve/located.ts';
import { folderOf, resolvePath } from '../resolve/paths.ts';
import { listed } from './listed.ts';
import { family, type RigContext, type RuleEntry } from './rule.ts';

const rules = {
  'evidence-missing': {
    severity: 'information',
    title: 'A photo or a paper is not there',
    why: 'A record is worth what it can show. The path is seen from the folder of the file that names it.',
    fix: 'None: the file has to be put there, or its path mended.',
  },
} as const satisfies Record<string, RuleEntry>;
type Found = Located & { readonly rule: keyof typeof rules };

/** Silent where the front door cannot see files, as in a browser. */
function* check({ view, exists }: RigContext): Iterable<Found> {
  if (!exists) return;
  const { rig } = view;
  for (const { record, file, findings } of rig.events) {
    for (const line of [record as Whole, ...findings.map((finding) => finding.line as Whole)]) {
      for (const field of ['photos', 'papers'] as const) {
        const paths = pathsIn(line, field).filter((path) => !path.includes('\\'));
        const missing = paths.filter((path) => !exists(resolvePath(folderOf(file), path)));
        if (missing.length === 0) continue;
        const [one, many] = field === 'photos' ? ['photo', 'photos'] : ['paper', 'papers'];
        yield {
          rule: 'evidence-missing',
          rig: rig.name,
          file,
          at: line.spans[field] ?? line.at,
          message: `There is no ${missing.length === 1 ? one : many} ${listed(missing)} beside this file: put ${missing.length === 1 ? 'it' : 'them'} there, or mend the path.`,
        };
      }
    }
  }
}

export const evidence = family(rules, check);

type PathField = 'photos' | 'papers' | 'patterns';

function pathsIn(line: Whole, field: PathField): readonly string[] {
  return (line as unknown as Partial<Record<PathField, readonly string[]>>)[field] ?? [];
}

/** Backslashes in the paths and patterns of a file; those of `use` lines are reported where they are followed. */
export function* backslashes(file: string, declarations: readonly Declaration[]): Iterable<Located> {
  for (const declaration of declarations) {
    for (const statement of declaration.statements as readonly (Whole & { readonly findings?: readonly Whole[] })[]) {
      for (const line of [statement, ...(statement.findings ?? [])]) {
        for (const field of ['photos', 'papers', 'patterns'] as const) {
          const paths = pathsIn(line, field);
          const at = line.spans[field];
          if (!at || !paths.some((path) => path.includes('\\'))) continue;
          const better = paths.map((path) => quoted(path.replaceAll('\\', '/'))).join(', ');
          const clause = field === 'photos' ? 'photo ' : field === 'papers' ? 'paper ' : '';
          yield {
            file,
            rule: 'wrong-path',
            at,
            message: `A path is written with forward slashes: ${better}.`,
            fixes: [{ label: 'Write forward slashes', at, text: `${clause}${better}` }],
          };
        }
      }
    }
  }
}
