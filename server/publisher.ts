// Sends diagnostics to the editor: for every file in which some stand, and only when they have changed.
import type { Connection, Diagnostic } from 'vscode-languageserver';
import { isLibrary } from '../language/resolve/origin.ts';
import type { Abilities } from './abilities.ts';
import { diagnosticOf } from './features/diagnostics.ts';
import { type Texts, textsFrom, uriOf } from './places.ts';
import type { Session } from './session.ts';

export interface Publisher {
  publish(paths: Iterable<string>): void;
  /** A file was opened: the editor is told of it once, even when nothing is wrong. */
  opened(path: string): void;
  /** A file was closed: its problems go from a list of open files. */
  closed(path: string): void;
  /** A file that was opened has been checked. */
  checked(path: string): void;
  /** What is to be said of a file now. */
  diagnosticsOf(path: string): readonly Diagnostic[];
  /** What is told has changed for every file: another setting. */
  again(): void;
}

export function diagnosticsPublisher(connection: Connection, session: Session, open: Texts, can: Abilities): Publisher {
  /** What the editor was told last. A file that nothing was ever said of is not in it. */
  const told = new Map<string, string>();
  const unanswered = new Set<string>();
  const diagnosticsOf = (path: string, texts: Texts): Diagnostic[] =>
    session.workspace.findingsIn(path).map((finding) => diagnosticOf(finding, texts, can));
  const isShown = (path: string) => session.settings.problems === 'all' || open.of(path) !== undefined;
  const freshTexts = () => textsFrom((path) => session.project.text(path), open);

  const publisher: Publisher = {
    diagnosticsOf: (path) => diagnosticsOf(path, freshTexts()),
    again: () => publisher.publish(new Set([...told.keys(), ...session.workspace.checkedFiles()])),
    publish(paths) {
      if (can.pulls) return;
      const texts = freshTexts();
      for (const path of paths) {
        if (isLibrary(path)) continue;
        const diagnostics = isShown(path) ? diagnosticsOf(path, texts) : [];
        const said = JSON.stringify(diagnostics);
        if (!unanswered.delete(path) && said === (told.get(path) ?? '[]')) continue;
        if (diagnostics.length === 0) told.delete(path);
        else told.set(path, said);
        const version = open.of(path)?.version;
        void connection.sendDiagnostics({
          uri: uriOf(path),
          ...(version === undefined ? {} : { version }),
          diagnostics,
        });
      }
    },
    closed: (path) => (isShown(path) ? undefined : publisher.publish([path])),
    opened: (path) => void unanswered.add(path),
    checked(path) {
      if (unanswered.has(path)) publisher.publish([path]);
    },
  };
  return publisher;
}
