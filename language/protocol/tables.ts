import * as z from 'zod';
import { ask } from './ask.ts';

// Tables and calendars beside the records: they are no documents of the language, so the client hands over what is typed in them.

/** Request from the client: the text of a table or calendar as it is typed now; null where that on disk counts again. */
export const tableTextAsk = ask(
  'rigseam/tableText',
  z.object({ uri: z.string(), text: z.string().nullable() }),
  z.null(),
);
