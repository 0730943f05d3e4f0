// Tables beside the records, and changes of many files at once: what is typed in a table, one record for many rigs, a table read
// into records and written from them.
import type { Connection } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { addRecord, readStatement } from '../language/authoring/added-record.ts';
import { hunksOf } from '../language/authoring/changed-lines.ts';
import { type Draft, draftOver } from '../language/authoring/draft.ts';
import { csvOf } from '../language/documents/csv.ts';
import {
  addRecordAsk,
  exportTableAsk,
  type FileChange,
  importTableAsk,
  recordProblemAsk,
  tableTextAsk,
} from '../language/protocol/index.ts';
import { relativeTo } from '../language/resolve/paths.ts';
import { isBookingsFile } from '../language/tables/bookings.ts';
import { importTable } from '../language/tables/import.ts';
import { columnsOf, type Said } from '../language/tables/kinds.ts';
import { rowsOf } from '../language/tables/said.ts';
import { answer } from './answer.ts';
import type { Features } from './features/here.ts';
import { pathOf, rangeOf, uriOf } from './places.ts';
import type { Session } from './session.ts';

export function serveTables(connection: Connection, { session }: Features): void {
  const draft = () => draftOver(session.files, session.dates, session.files.exists);
  answer(connection, tableTextAsk, ({ uri, text }) => {
    const path = pathOf(uri);
    if (isBookingsFile(path)) session.typedBeside(path, text ?? undefined);
    return null;
  });
  answer(connection, recordProblemAsk, ({ text }) => {
    const read = readStatement(text);
    return { problem: 'message' in read ? read.message : null };
  });
  answer(connection, addRecordAsk, ({ rigs, text }) => {
    const read = readStatement(text);
    if ('message' in read) return { changes: [], refused: [{ name: text, why: read.message }], there: [] };
    const own = draft();
    const results = addRecord(
      own,
      rigs.map(({ uri, name }) => ({ file: pathOf(uri), name })),
      read.statement,
    );
    return {
      changes: changesOf(own),
      refused: results.flatMap(({ name, outcome, why = '' }) => (outcome === 'refused' ? [{ name, why }] : [])),
      there: results.flatMap(({ name, outcome }) => (outcome === 'there' ? [name] : [])),
    };
  });
  answer(connection, importTableAsk, ({ kind, text, folder }) => {
    const own = draft();
    const into = pathOf(folder);
    const use = (said: Said) => filesFor(session, said).map((path) => relativeTo(into, path));
    const { problems, added, there } = importTable(kind, text, own, { files: rigFiles(session), into, use });
    const table = TextDocument.create('', 'csv', 0, text);
    return {
      changes: changesOf(own),
      problems: problems.map(({ at, kind: how, message }) => ({ range: rangeOf(table, at), kind: how, message })),
      added,
      there,
    };
  });
  answer(connection, exportTableAsk, ({ kind }) => {
    const rows = rowsOf(kind, session.project, rigFiles(session));
    return { table: csvOf(columnsOf[kind], rows), rows: rows.length };
  });
}

/** The files of the workspace that declare rigs, or may. */
const rigFiles = ({ workspace, stale }: Session): readonly string[] =>
  [
    ...new Set([
      ...[...workspace.summaries.values()].flatMap(({ path, rigs }) => (rigs.length > 0 ? [path] : [])),
      // Not looked at yet.
      ...stale,
    ]),
  ].sort();

/** The files that declare what a new rig is like, and the policy that it is under. */
function filesFor({ workspace }: Session, { like, under, group }: Said): readonly string[] {
  const keys = [`model ${like}`, `rig ${like}`, `policy ${under}`, `group ${group}`];
  const wanted = keys.filter((key) => !key.endsWith(' undefined'));
  const found = wanted.flatMap((key) => {
    const file = [...workspace.summaries.values()].find(({ declared }) => Object.hasOwn(declared, key));
    return file ? [file.path] : [];
  });
  return [...new Set(found)].sort();
}

const changesOf = (draft: Draft): readonly FileChange[] =>
  draft.changes().map((change) => ({
    uri: uriOf(change.path),
    text: change.before === undefined ? change.after : null,
    edits:
      change.before === undefined
        ? []
        : hunksOf(change).map(({ from, to, text }) => ({
            range: { start: { line: from, character: 0 }, end: { line: to, character: 0 } },
            newText: text,
          })),
  }));
