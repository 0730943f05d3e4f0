import * as z from 'zod';

// What the extension client and the language server say to each other beyond the Language Server Protocol.
// Client and server meet only here.

/** Request from the client: write up one file. Params {@link DocumentsRequest}, result {@link DocumentsReply}. */
export const documentsMethod = 'rigseam/documents';

/** Notification from the server whenever what it says changes. Params {@link Status}. */
export const statusMethod = 'rigseam/status';

/** The command behind a code lens that writes papers; its one argument is {@link WriteArgument}. The client has it. */
export const writeCommand = 'rigseam.write';

/** A calendar date as ISO 8601, or empty for today. Whether the calendar has such a day is the server's to check. */
const asOf = z.string().regex(/^(\d{4}-\d{2}-\d{2})?$/);

/**
 * The client's settings: the `initializationOptions` of `initialize`, and the `settings.rigseam` of every later
 * `workspace/didChangeConfiguration`. Another editor may leave any of them out.
 */
export const settingsSchema = z.object({
  /** The date that figures speak of; empty is today. */
  asOf: asOf.default(''),
  inlayHints: z.boolean().default(true),
  codeLens: z.boolean().default(true),
});
export type Settings = Readonly<z.infer<typeof settingsSchema>>;

/** What a code lens hands to {@link writeCommand}; without a name the whole file is meant. */
export const writeArgumentSchema = z.object({ uri: z.string(), name: z.string().optional() });
export type WriteArgument = Readonly<z.infer<typeof writeArgumentSchema>>;

/** Asks for the papers of the named rigs and fleets of a file, as the server sees it now, unsaved text included. */
export const documentsRequestSchema = z.object({
  uri: z.string(),
  /** Absent: all, if there is only one target, else the server answers with the choice. */
  names: z.array(z.string()).readonly().optional(),
  /** The URI of the folder that they go into: the schedule that was written there before counts. */
  folder: z.string().optional(),
});
export type DocumentsRequest = Readonly<z.infer<typeof documentsRequestSchema>>;

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
  }),
]);
export type DocumentsReply = Readonly<z.infer<typeof documentsReplySchema>>;

/** What the status bar shows. Dates are ISO 8601. */
export const statusSchema = z.object({
  /** Rigs in the workspace. */
  rigs: z.int().nonnegative(),
  /** Rigs with at least one thing overdue as of `asOf`. */
  overdue: z.int().nonnegative(),
  asOf: z.iso.date(),
  today: z.iso.date(),
  /** The workspace is still being read. */
  busy: z.boolean(),
});
export type Status = Readonly<z.infer<typeof statusSchema>>;
