import * as z from 'zod';
import { ask } from './ask.ts';

/** Asks what has changed since a revision, as the server sees the texts now, unsaved ones included. */
export const compareAsk = ask(
  'rigseam/compare',
  z.object({
    /** A file or a folder in the repository. */
    uri: z.string(),
    /** A branch, a tag, a commit. */
    revision: z.string(),
  }),
  z.discriminatedUnion('kind', [
    z.object({ kind: z.literal('compared'), markdown: z.string() }),
    /** Why not, in a sentence for people. */
    z.object({ kind: z.literal('refused'), because: z.string() }),
  ]),
);
