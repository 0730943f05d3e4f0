// From records to findings: the one function behind the editor, the command line and CI.
import type { Span } from '../grammar/problem.ts';
import type { FileRecords } from '../records/file.ts';
import { withBookings } from '../resolve/bookings.ts';
import type { Located } from '../resolve/located.ts';
import type { Project } from '../resolve/project.ts';
import { unknownReferences } from '../resolve/references.ts';
import type { Dates, Policy } from '../resolve/types.ts';
import { accepted, accepting } from './accept.ts';
import { checkBookings } from './bookings.ts';
import { catalogue, families } from './catalogue.ts';
import { backslashes } from './evidence.ts';
import type { Finding } from './finding.ts';
import { checkFleet, fleets } from './fleet.ts';
import { rigsInFleet } from './in-fleet.ts';
import { type Member, memberOf } from './member.ts';
import { mixedInside } from './money.ts';
import { fileNames } from './names.ts';
import { naming } from './naming.ts';
import { percentsOutOfRange } from './percents.ts';
import { reversedDays } from './planning.ts';
import { reading } from './reading.ts';
import type { RigContext } from './rule.ts';
import { keyOf, type Silences, silencedBy, silencingLines } from './silenced.ts';
import { pointsOutOfOrder } from './three-points.ts';
import { together } from './together.ts';
import { wholeWorkspace } from './workspace.ts';

const known: ReadonlySet<string> = new Set(catalogue.keys());
const ofTheLanguage = new Set([
  ...Object.keys(reading.rules),
  ...Object.keys(naming.rules),
  ...Object.keys(accepting.rules),
  // No policy governs what the files of a workspace say together.
  ...Object.keys(wholeWorkspace.rules),
]);
/** Whether a rig or a policy may accept a rule. */
export const isAcceptable = (rule: string): boolean => acceptable(rule);
const acceptable = (rule: string) => known.has(rule) && !ofTheLanguage.has(rule);

/**
 * Everything that the checker says because of one file: about its own lines, and about the rigs and fleets that it
 * declares, also where a finding stands in a file that a rig claims. Depends only on files reachable from this one.
 */
export function checkFile(project: Project, path: string, dates: Dates, exists?: (path: string) => boolean): Finding[] {
  const { findings } = examined(project, path, dates, exists);
  return unique([...findings, ...fleetsExamined(project, path, dates).findings]);
}

/** What the checking of a file gives beside its findings. */
export interface Examined {
  /** Without those of the fleets that it declares: {@link fleetsExamined} has them. */
  readonly findings: readonly Finding[];
  /** What only the workspace can judge: which lines of policies silence something. */
  readonly silences: Silences;
  /** Its rigs, for the fleets that list it. */
  readonly members: readonly Member[];
}

/** Everything about one file but its fleets. */
export function examined(project: Project, path: string, dates: Dates, exists?: (path: string) => boolean): Examined {
  const records = project.records(path);
  if (!records) return { findings: [], silences: { written: [], worked: [] }, members: [] };
  const { declarations } = records;
  const names = project.names(path);
  const of = {
    material: (name: string) => project.material(path, name),
    policy: (name: string) => project.policy(path, name),
  };
  const silencers = silencingLines(path, declarations, dates, known, acceptable);
  const worked = new Set<string>();
  const members: Member[] = [];
  const out = graded(
    [
      ...project.problems(path),
      ...saysNothing(path, records),
      ...unknownReferences(path, declarations, names),
      ...fileNames(path, declarations, names),
      ...backslashes(path, declarations),
      ...reversedDays(path, declarations),
      ...pointsOutOfOrder(path, declarations),
      ...percentsOutOfRange(path, declarations),
      ...mixedInside(path, declarations, of),
      ...silencers.problems,
    ],
    project.policy(path, undefined),
    worked,
  );
  for (const { problems, ...view } of project.rigs(path)) {
    const declaration = declarations.find((d) => (d.kind === 'rig' || d.kind === 'model') && d.at === view.rig.at);
    const context: RigContext = {
      view,
      dates,
      names,
      remembered: new Map(),
      ...(exists ? { exists } : {}),
      ...(declaration?.kind === 'rig' || declaration?.kind === 'model' ? { declaration } : {}),
    };
    const { policy } = view.rig;
    out.push(...graded(silencedBy(policy, problemsOfRig(context, problems), dates, worked), policy, worked));
    if (view.rig.kind === 'rig') members.push(memberOf(context));
  }
  return { findings: unique(out), silences: { written: silencers.written, worked: [...worked] }, members };
}

/** The rigs of a file for the fleets that list it, where it is not examined itself. */
export function membersOf(project: Project, path: string, dates: Dates): readonly Member[] {
  return project
    .rigs(path)
    .flatMap(({ problems: _, ...view }) =>
      view.rig.kind === 'rig' ? [memberOf({ view, dates, remembered: new Map() })] : [],
    );
}

/**
 * What is to be said of the fleets that a file declares, with the lines of policies that silenced something of it. `members`
 * are the rigs of a file as it stands now.
 */
export function fleetsExamined(
  project: Project,
  path: string,
  dates: Dates,
  members: (file: string) => readonly Member[] = (file) => membersOf(project, file, dates),
): { readonly findings: readonly Finding[]; readonly worked: readonly string[] } {
  const worked = new Set<string>();
  const material = (name: string) => project.material(path, name);
  const out = project.fleetFrames(path).flatMap(({ fleet: frame, declaration, files }) => {
    const rigs = files.flatMap(members);
    const fleet = withBookings(frame, rigs);
    const found = [
      ...checkFleet({ fleet, members: rigs, declaration, material }),
      ...checkBookings(fleet, rigs),
      ...rigsInFleet(fleet, rigs, dates),
    ];
    const left = silencedBy(fleet.policy, acceptedInFleet(rigs, found, worked), dates, worked);
    return graded(left, fleet.policy, worked);
  });
  return { findings: unique(out), worked: [...worked] };
}

function saysNothing(file: string, { uses, declarations, problems }: FileRecords): Located[] {
  if (uses.length > 0 || declarations.length > 0 || problems.length > 0) return [];
  return [
    {
      file,
      rule: 'empty-file',
      at: [0, 0],
      message: 'This file says nothing yet. A record begins with a line such as `rig Heron {`.',
    },
  ];
}

/** The problems of one rig after its accepts. What only a fleet can find is accepted there. */
export function problemsOfRig(context: RigContext, resolving: readonly Located[]): Located[] {
  const problems: Located[] = [...resolving];
  for (const family of families) if (family.check) for (const problem of family.check(context)) problems.push(problem);
  const { rig } = context.view;
  const accepts = rig.accepts.filter(({ rule }) => !Object.hasOwn(fleets.rules, rule.name));
  const left = together(accepted({ ...rig, accepts }, problems, context.dates, known, acceptable));
  return rig.kind === 'rig' ? left.map((problem) => ({ rig: rig.name, ...problem })) : left;
}

/** Without what the rigs, or their policies, accept until a day that is not past. */
function acceptedInFleet(
  members: readonly Member[],
  problems: readonly Located[],
  worked: Set<string>,
): readonly Located[] {
  if (problems.length === 0) return problems;
  const rigs = new Map<string | undefined, Member>(members.map((rig) => [rig.name, rig]));
  return problems.filter((problem) => {
    const rig = rigs.get(problem.rig);
    if (!rig) return true;
    if (rig.accepts.includes(problem.rule)) return false;
    const silence = rig.silences.find(({ rule }) => rule === problem.rule);
    if (silence) worked.add(silence.key);
    return !silence;
  });
}

/** Problems with the severity that the catalogue or the policy gives them; those that are off are left out. */
export function graded(problems: readonly Located[], policy: Policy, worked?: Set<string>): Finding[] {
  const out: Finding[] = [];
  for (const problem of problems) {
    const entry = catalogue.get(problem.rule);
    if (!entry) throw new Error(`the rule ${problem.rule} is not in the catalogue`);
    const stated = acceptable(problem.rule) ? policy.severities[problem.rule] : undefined;
    const severity = stated?.value ?? entry.severity;
    if (severity !== 'off') out.push({ ...problem, severity });
    else if (stated) worked?.add(keyOf(stated.origin.file, stated.origin.at));
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
