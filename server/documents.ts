// The papers of a file's rigs and fleets, for the editor and for the command line.
import { type Beside, documentsOf, scheduleIn } from '../language/documents/index.ts';
import type { DocumentFile, DocumentsReply, Target } from '../language/protocol/index.ts';
import { fleetsThatList } from '../language/resolve/listed-by.ts';
import type { Project } from '../language/resolve/project.ts';
import type { Dates } from '../language/resolve/types.ts';
import type { Finding } from '../language/rules/finding.ts';
import { findingsThatStopWriting } from '../language/rules/writable.ts';
import { loadLinearPrograms } from './solver/highs.ts';

/** The rigs and fleets that a file declares; models and histories have no papers. */
export function targetsIn(project: Project, path: string): Target[] {
  return (project.records(path)?.declarations ?? []).flatMap((declaration) =>
    declaration.kind === 'rig' || declaration.kind === 'fleet'
      ? [{ name: declaration.name, kind: declaration.kind }]
      : [],
  );
}

/**
 * The papers of the named rigs and fleets of a file; without names, of its only one. `place` writes where a finding stands.
 * `before` gives the text of a paper that was written before, where there is one: what it planned for this week stays.
 * `fleetFiles` are the files that may declare fleets, as far as the front door knows: a rig's schedule names those that have it. The
 * solver of linear programs is loaded where a fleet is among them, to prove more of its purchase.
 */
export async function documentsFor(
  project: Project,
  path: string,
  names: readonly string[] | undefined,
  dates: Dates,
  place: (finding: Finding) => string,
  before: (fileName: string) => Promise<string | undefined>,
  fleetFiles: Iterable<string>,
): Promise<DocumentsReply> {
  const targets = targetsIn(project, path);
  if (names === undefined && targets.length > 1) return { kind: 'choose', targets };
  if (targets.length === 0)
    return {
      kind: 'documents',
      files: [],
      problems: ['This file declares no rig and no fleet: there is nothing to write an estimate for.'],
    };

  const stopping = findingsThatStopWriting(project, path, dates);
  if (stopping.length > 0) {
    const shown = stopping.slice(0, 3).map((finding) => `${place(finding)}: ${finding.message}`);
    const more = stopping.length > 3 ? [`… and ${stopping.length - 3} more.`] : [];
    return {
      kind: 'documents',
      files: [],
      problems: ['Nothing was written, because the records hold errors. Mend them first:', ...shown, ...more],
    };
  }
  const wanted = names === undefined ? undefined : new Set(names);
  const files: DocumentFile[] = [];
  const earlier = async (name: string): Promise<Beside> => {
    const previous = scheduleIn(await before(`${name}.schedule.json`), dates);
    return previous ? { previous } : {};
  };
  const having = fleetsThatList(path, fleetFiles, project.records);
  for (const view of project.rigs(path)) {
    if (view.rig.kind === 'rig' && (!wanted || wanted.has(view.rig.name)))
      files.push(
        ...(await documentsOf({ kind: 'rig', view }, dates, { ...(await earlier(view.rig.name)), fleets: having })),
      );
  }
  const fleets = project.fleets(path).filter(({ fleet }) => !wanted || wanted.has(fleet.name));
  const lp = fleets.length > 0 ? await loadLinearPrograms() : undefined;
  for (const { fleet, views } of fleets) {
    const beside = { ...(await earlier(fleet.name)), ...(lp ? { lp } : {}) };
    files.push(...(await documentsOf({ kind: 'fleet', fleet, views }, dates, beside)));
  }
  const problems = [...(wanted ?? [])]
    .filter((name) => !targets.some((target) => target.name === name))
    .map((name) => `There is no rig or fleet \`${name}\` in this file.`);
  const notes =
    fleets.length > 0 && !lp
      ? [
          `The solver of linear programs could not be loaded: of what ${fleets.map(({ fleet }) => fleet.name).join(', ')} buys together, less is proven to be the cheapest. The column "proof" says how much.`,
        ]
      : undefined;
  return { kind: 'documents', files, problems, ...(notes && { notes }) };
}
