// The calendar that an editor shows: what stands on each day, each entry with its line.
import type { Connection } from 'vscode-languageserver';
import { monthsOf } from '../language/documents/month/index.ts';
import type { Subject } from '../language/documents/papers.ts';
import { type Calendar, calendarAsk, calendarSubjectsAsk } from '../language/protocol/index.ts';
import { answer } from './answer.ts';
import { targetsIn } from './documents.ts';
import type { Features } from './features/here.ts';
import { locationOf, pathOf, textsFrom, uriOf } from './places.ts';
import type { StaleNotices } from './stale.ts';

export function serveCalendars(connection: Connection, { session, open }: Features, stale: StaleNotices): void {
  const subjectOf = (path: string, name: string): Subject | undefined => {
    const { fleets, rigs } = session.figures(path);
    const fleet = fleets.find((one) => one.fleet.name === name);
    if (fleet) return { kind: 'fleet', fleet: fleet.fleet, views: fleet.views };
    const rig = rigs.find(({ view }) => view.rig.kind === 'rig' && view.rig.name === name);
    return rig && { kind: 'rig', view: rig.view };
  };
  answer(connection, calendarAsk, ({ uri, name }): Calendar | null => {
    stale.wanted();
    const subject = subjectOf(pathOf(uri), name);
    if (!subject) return null;
    const { entries, ...rest } = monthsOf(subject, session.dates);
    const texts = textsFrom((path) => session.project.text(path), open);
    return {
      ...rest,
      entries: entries.map(({ file, at, ...entry }) => ({ ...entry, place: locationOf(texts, file, at) })),
    };
  });
  answer(connection, calendarSubjectsAsk, ({ uri }) => {
    const paths = uri === undefined ? [...session.workspace.summaries.keys()] : [pathOf(uri)];
    const found = paths.flatMap((path) =>
      uri === undefined
        ? namesIn(session.workspace.summaries.get(path)?.declared ?? {}).map((one) => ({ uri: uriOf(path), ...one }))
        : targetsIn(session.project, path).map((one) => ({ uri: uriOf(path), ...one })),
    );
    return found.sort((a, b) => (a.kind === b.kind ? (a.name < b.name ? -1 : 1) : a.kind === 'fleet' ? -1 : 1));
  });
}

/** The rigs and fleets among what a file declares, by the keys of its summary. */
function namesIn(declared: Readonly<Record<string, unknown>>): { name: string; kind: 'rig' | 'fleet' }[] {
  return Object.keys(declared).flatMap((key) => {
    const [kind, name] = key.split(' ');
    return (kind === 'rig' || kind === 'fleet') && name !== undefined ? [{ name, kind }] : [];
  });
}
