// From records to findings: the one function behind the editor, the command line and CI.
import type { Span } from '../grammar/problem.ts';
import type { Located } from '../resolve/located.ts';
import type { Project } from '../resolve/project.ts';
import { unknownReferences } from '../resolve/references.ts';
import type { Dates, Policy, RigView } from '../resolve/types.ts';
import { accepted, accepting } from './accept.ts';
import { catalogue, families } from './catalogue.ts';
import type { Finding } from './finding.ts';
import { naming } from './naming.ts';
import { reading } from './reading.ts';

const known: ReadonlySet<string> = new Set(catalogue.keys());
const ofTheLanguage = new Set([
  ...Object.keys(reading.rules),
  ...Object.keys(naming.rules),
  ...Object.keys(accepting.rules),
]);
const acceptable = (rule: string) => known.has(rule) && !ofTheLanguage.has(rule);

/**
 * Everything that the checker says because of one file: about its own lines, and about the rigs and fleets that it
 * declares, also where a finding stands in a file that a rig claims. Depends only on files reachable from this one.
 */
export function checkFile(project: Project, path: string, dates: Dates, exists?: (path: string) => boolean): Finding[] {
  const records = project.records(path);
  if (!records) return [];
  const out: Finding[] = [];
  const plain = project.policy(path, undefined);
  out.push(
    ...graded(project.problems(path), plain),
    ...graded(unknownReferences(path, records.declarations, project.names(path)), plain),
  );
  for (const resolved of project.rigs(path))
    out.push(...graded(problemsOfRig(resolved, resolved.problems, dates, exists), resolved.rig.policy));
  for (const { fleet, problems } of project.fleets(path)) out.push(...graded(problems, fleet.policy));
  return unique(out);
}

/** The problems of one rig after its accepts. */
export function problemsOfRig(
  view: RigView,
  resolving: readonly Located[],
  dates: Dates,
  exists?: (path: string) => boolean,
): Located[] {
  const context = { view, dates, ...(exists ? { exists } : {}) };
  const problems: Located[] = [...resolving];
  for (const family of families) if (family.check) for (const problem of family.check(context)) problems.push(problem);
  return accepted(view.rig, problems, dates, known, acceptable);
}

/** Problems with the severity that the catalogue or the policy gives them; those that are off are left out. */
export function graded(problems: readonly Located[], policy: Policy): Finding[] {
  const out: Finding[] = [];
  for (const problem of problems) {
    const entry = catalogue.get(problem.rule);
    if (!entry) throw new Error(`the rule ${problem.rule} is not in the catalogue`);
    const severity = (acceptable(problem.rule) && policy.severities[problem.rule]?.value) || entry.severity;
    if (severity !== 'off') out.push({ ...problem, severity });
  }
  return out;
}

const placeKey = (at: Span) => `${at[0]}-${at[1]}`;

/** Each finding once, in the order of files and places. */
export function unique(findings: readonly Finding[]): Finding[] {
  const seen = new Set<string>();
  const out = findings.filter((finding) => {
    const key = `${finding.file}\n${placeKey(finding.at)}\n${finding.rule}\n${finding.message}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
  return out.sort((a, b) =>
    a.file < b.file ? -1 : a.file > b.file ? 1 : a.at[0] - b.at[0] || a.at[1] - b.at[1] || (a.rule < b.rule ? -1 : 1),
  );
}
