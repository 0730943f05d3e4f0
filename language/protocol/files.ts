import * as z from 'zod';
import { ask } from './ask.ts';

// A server in a browser has no disk, and none has one for a file system that only the editor knows: the client hands over
// what lies in the folders of the workspace, and what changes there.

/** Files whose text the server needs: records, and what they read beside them. Of all others it asks for the name. */
export const isRead = (path: string): boolean => /\.(rig|csv|ics)$/i.test(path);

/** Folders that hold no records: neither side looks into them. */
export const skippedFolders: ReadonlySet<string> = new Set(['node_modules', '.git', '.hg', '.svn']);

/** In the `initializationOptions`, beside the settings: files will be handed over, and nothing is to be judged before. */
export const mirrorOptionSchema = z.object({ mirror: z.boolean().default(false) });

/** A slice of what lies in the folders of the workspace. */
const filesSchema = z.object({
  /** `.rig` files, tables and calendars with their text on disk. */
  texts: z.array(z.object({ uri: z.string(), text: z.string() })).readonly(),
  /** All other files: photos and papers are asked for by name. */
  names: z.array(z.string()).readonly(),
  /** Files and folders that have gone, each with everything in it: they go before the others come. */
  gone: z.array(z.string()).readonly(),
  /** More slices follow at once: until the last one, whether a file is there is not known. */
  more: z.boolean(),
});
export type FilesSlice = Readonly<z.infer<typeof filesSchema>>;

/** Request from the client: take in these files. The watchers of the protocol come too late to tell what has gone. */
export const filesAsk = ask('rigseam/files', filesSchema, z.null());

/** Request from the server: the text of one file as it lies there; null where there is none or it cannot be read. */
export const textAsk = ask('rigseam/text', z.object({ uri: z.string() }), z.object({ text: z.string().nullable() }));

/** Request from a server in a worker: the code of the solver, which it cannot load itself; null where that fails. */
export const solverAsk = ask('rigseam/solver', z.object({}), z.object({ code: z.instanceof(Uint8Array).nullable() }));
