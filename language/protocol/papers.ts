import * as z from 'zod';
import { ask } from './ask.ts';

/** The command behind a code lens that writes papers; its one argument is {@link WriteArgument}. The client has it. */
export const writeCommand = 'rigseam.write';

/** What a code lens hands to {@link writeCommand}; without a name the whole file is meant. */
export const writeArgumentSchema = z.object({ uri: z.string(), name: z.string().optional() });
export type WriteArgument = Readonly<z.infer<typeof writeArgumentSchema>>;

/** Asks for the papers of the named rigs and fleets of a file, as the server sees it now, unsaved text included. */
export const documentsRequestSchema = z.object({
  uri: z.string(),
  /** Absent: all, if there is only one target, else the server answers with the choice. */
  names: z.array(z.string()).readonly().optional(),
  /** Only those that are printed and taken up, and the schedule that they follow. */
  only: z.literal('sheets').optional(),
  /** The URI of the folder that they go into: the schedule that was written there before counts. */
  folder: z.string().optional(),
});
export type DocumentsRequest = Readonly<z.infer<typeof documentsRequestSchema>>;

/** The command that writes only the sheets; its one argument is {@link WriteArgument}. The client has it. */
export const writeSheetsCommand = 'rigseam.writeWorkSheet';

/** Whether a paper is one of the sheets, or of the schedule that they follow. */
export const isOfSheets = (name: string): boolean =>
  /\.((worksheet|inspection|morning)\.html|schedule\.[a-z]+)$/.test(name);

/** A plain file name: no folder, nothing hidden, nothing that a file system refuses. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is refused
export const fileNameSchema = z.string().regex(/^(?!\.)[^\\/:*?"<>|\u0000-\u001f]{1,200}$/, 'a plain file name');

const targetSchema = z.object({ name: z.string(), kind: z.enum(['rig', 'fleet']) });
export type Target = Readonly<z.infer<typeof targetSchema>>;

const textFileSchema = z.object({ name: fileNameSchema, text: z.string() });
/** A file of text: `Heron.estimate.md` and its whole text, written as UTF-8. */
export type TextFile = Readonly<z.infer<typeof textFileSchema>>;

const bytesFileSchema = z.object({ name: fileNameSchema, base64: z.base64() });
/** A file of bytes: `Heron.estimate.xlsx`; in Base64, for the protocol speaks JSON. */
export type BytesFile = Readonly<z.infer<typeof bytesFileSchema>>;

const documentFileSchema = z.union([textFileSchema, bytesFileSchema]);
/** One file to write. */
export type DocumentFile = TextFile | BytesFile;

export const documentsReplySchema = z.discriminatedUnion('kind', [
  /** The file holds several rigs or fleets and none was named: ask again with names. */
  z.object({ kind: z.literal('choose'), targets: z.array(targetSchema).readonly() }),
  z.object({
    kind: z.literal('documents'),
    files: z.array(documentFileSchema).readonly(),
    /** Why something could not be written, each a sentence for people. Empty when all is there. */
    problems: z.array(z.string()).readonly(),
    /** What is to be known of the papers that are there, each a sentence for people. */
    notes: z.array(z.string()).readonly().optional(),
  }),
]);
export type DocumentsReply = Readonly<z.infer<typeof documentsReplySchema>>;

/** Request from the client: write up one file. */
export const papersAsk = ask('rigseam/documents', documentsRequestSchema, documentsReplySchema);
