// Tables beside the records: what is typed in them.
import type { Connection } from 'vscode-languageserver';
import { tableTextAsk } from '../language/protocol/index.ts';
import { isBookingsFile } from '../language/tables/bookings.ts';
import { answer } from './answer.ts';
import type { Features } from './features/here.ts';
import { pathOf } from './places.ts';

export function serveTables(connection: Connection, { session }: Features): void {
  answer(connection, tableTextAsk, ({ uri, text }) => {
    const path = pathOf(uri);
    if (isBookingsFile(path)) session.typedBeside(path, text ?? undefined);
    return null;
  });
}
