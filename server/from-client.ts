// Files that only the client can read.
import type { Connection } from 'vscode-languageserver';
import { filesAsk, mirrorOptionSchema, textAsk } from '../language/protocol/index.ts';
import { pathOf, uriOf } from './addresses.ts';
import { answer } from './answer.ts';
import type { Mirror } from './disk-mirror.ts';
import type { Session } from './session.ts';

/** Takes in the files that the client hands over; checks wait for the last slice. */
export function serveMirror(connection: Connection, session: Session, mirror: Mirror): void {
  answer(connection, filesAsk, ({ more, ...given }) => {
    const texts = given.texts.map(({ uri, text }) => [pathOf(uri), text] as const);
    const [names, gone] = [given.names.map(pathOf), given.gone.map(pathOf)];
    for (const path of gone) mirror.drop(path);
    mirror.put(texts, names);
    session.held = session.held || more;
    session.onDisk({ written: [...texts.map(([path]) => path), ...names], gone });
    if (!more) session.held = false;
    return null;
  });
}

/** Whether the client said at the start that it hands over files. */
export const awaitsFiles = (initializationOptions: unknown): boolean =>
  mirrorOptionSchema.safeParse(initializationOptions).data?.mirror ?? false;

/** Reads one file through the client; undefined also with an editor that knows no such request. */
export const textFromClient =
  (connection: Connection) =>
  async (path: string): Promise<string | undefined> => {
    try {
      const given = await connection.sendRequest(textAsk.method, { uri: uriOf(path) });
      return textAsk.reply.parse(given).text ?? undefined;
    } catch {
      return undefined;
    }
  };
