// Diagnostics of one document for an editor that asks for them and cannot be told.
import { type Connection, DocumentDiagnosticReportKind } from 'vscode-languageserver';
import { pathOf } from './places.ts';
import type { Publisher } from './publisher.ts';
import type { Session } from './session.ts';

/** What is advertised to an editor that pulls. */
export const pullOptions = { identifier: 'rigseam', interFileDependencies: true, workspaceDiagnostics: false };

/** Answers from the text as it is typed now; the same answer twice is said to be the same. */
export function answerPulls(connection: Connection, session: Session, publisher: Publisher): void {
  const given = new Map<string, { readonly said: string; readonly resultId: string }>();
  let count = 0;
  connection.languages.diagnostics.on(({ textDocument, previousResultId }) => {
    const path = pathOf(textDocument.uri);
    if (session.stale.has(path)) session.check(path);
    const items = [...publisher.diagnosticsOf(path)];
    const said = JSON.stringify(items);
    const before = given.get(path);
    if (before?.said === said && before.resultId === previousResultId)
      return { kind: DocumentDiagnosticReportKind.Unchanged, resultId: before.resultId };
    const resultId = String(++count);
    given.set(path, { said, resultId });
    return { kind: DocumentDiagnosticReportKind.Full, resultId, items };
  });
}
