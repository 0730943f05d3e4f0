// Hands over what is typed in tables and calendars that are not saved yet, so that a fleet sees its bookings as they stand there.
import { Disposable, type TextDocument, workspace } from 'vscode';
import { isRead, tableTextAsk } from '../../language/protocol/index.ts';
import type { LanguageServer } from '../language-server.ts';

/** How long typing rests before it is handed over, in milliseconds: tables are long. */
const pause = 250;
/** A longer text is no table that a person types in; it counts when it is saved. */
const longest = 5_000_000;

export function followTables(server: LanguageServer): Disposable {
  const waiting = new Map<string, ReturnType<typeof setTimeout>>();
  const send = (document: TextDocument, text: string | null) => {
    clearTimeout(waiting.get(document.uri.toString()));
    waiting.delete(document.uri.toString());
    // A server that is not running reads the disk when it starts.
    server.ask(tableTextAsk, { uri: document.uri.toString(), text }).catch(() => undefined);
  };
  const later = (document: TextDocument) => {
    const key = document.uri.toString();
    clearTimeout(waiting.get(key));
    const text = () => {
      const typed = document.isDirty ? document.getText() : null;
      return typed !== null && typed.length > longest ? null : typed;
    };
    waiting.set(
      key,
      setTimeout(() => send(document, text()), pause),
    );
  };
  const each = [
    workspace.onDidChangeTextDocument(({ document }) => isTable(document) && later(document)),
    workspace.onDidSaveTextDocument((document) => isTable(document) && send(document, null)),
    workspace.onDidCloseTextDocument((document) => isTable(document) && send(document, null)),
  ];
  return new Disposable(() => {
    for (const timer of waiting.values()) clearTimeout(timer);
    for (const one of each) one.dispose();
  });
}

const isTable = ({ uri, languageId }: TextDocument): boolean => languageId !== 'rig' && isRead(uri.path);
