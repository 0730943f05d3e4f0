import * as z from 'zod';
import { tableKinds } from '../tables/kinds.ts';
import { ask } from './ask.ts';

// Tables and calendars beside the records, and changes of many files at once.

export const addRecordCommand = 'rigseam.addRecord';
export const importTableCommand = 'rigseam.importTable';
export const exportTableCommand = 'rigseam.exportTable';

/**
 * Request from the client: the text of a table or calendar as it is typed now; null where that on disk counts again. They are no
 * documents of the language, so the client hands them over.
 */
export const tableTextAsk = ask(
  'rigseam/tableText',
  z.object({ uri: z.string(), text: z.string().nullable() }),
  z.null(),
);

const position = z.object({ line: z.int().nonnegative(), character: z.int().nonnegative() });
const range = z.object({ start: position, end: position });

/** A file that changes: its edits, from the top down, or for a new one its whole text. */
const fileChange = z.object({
  uri: z.string(),
  text: z.string().nullable(),
  edits: z.array(z.object({ range, newText: z.string() })).readonly(),
});
export type FileChange = Readonly<z.infer<typeof fileChange>>;

/** Request from the client: whether a record or a plan can be read. `problem` says what to write instead. */
export const recordProblemAsk = ask(
  'rigseam/recordProblem',
  z.object({ text: z.string() }),
  z.object({ problem: z.string().nullable() }),
);

/** Request from the client: what adds one record to rigs, and which of them it is left out of, and why. */
export const addRecordAsk = ask(
  'rigseam/addRecord',
  z.object({ rigs: z.array(z.object({ uri: z.string(), name: z.string() })).readonly(), text: z.string() }),
  z.object({
    changes: z.array(fileChange).readonly(),
    refused: z.array(z.object({ name: z.string(), why: z.string() })).readonly(),
    there: z.array(z.string()).readonly(),
  }),
);

/** Request from the client: what reads a table into records. `folder` is where new rigs go. */
export const importTableAsk = ask(
  'rigseam/importTable',
  z.object({ kind: z.enum(tableKinds), text: z.string(), folder: z.string() }),
  z.object({
    changes: z.array(fileChange).readonly(),
    problems: z.array(z.object({ range, kind: z.enum(['error', 'differs']), message: z.string() })).readonly(),
    added: z.int().nonnegative(),
    there: z.int().nonnegative(),
  }),
);

/** Request from the client: a table of all rigs of the workspace. */
export const exportTableAsk = ask(
  'rigseam/exportTable',
  z.object({ kind: z.enum(tableKinds) }),
  z.object({ table: z.string(), rows: z.int().nonnegative() }),
);
