import * as z from 'zod';
import { type DocumentFile, fileNameSchema } from '../protocol/index.ts';
import { bytesOf, toBase64 } from './bytes.ts';

// Which of the files that we are about to write may be written, so that nothing a person typed is ever lost.

/** The file beside the papers that remembers what we wrote there. */
export const recordFileName = '.rigseam-written.json';

const fingerprintSchema = z.string().regex(/^[0-9a-f]{64}$/);

const recordSchema = z.object({
  version: z.literal(1),
  /** File name to the fingerprint of what we wrote last. */
  files: z.record(fileNameSchema, fingerprintSchema),
  /** The same of what is being written: when that is cut off, either may stand there. */
  writing: z.record(fileNameSchema, fingerprintSchema).optional(),
});

/** File name to the fingerprint of what we wrote last. */
export type WrittenRecord = Readonly<Record<string, string>>;

/** What is to be done with one file. `ask`: a person has edited it. */
export type Decision = 'create' | 'unchanged' | 'replace' | 'ask';

/**
 * Reads the record of an output folder. Absent, damaged or of a later version it is empty, which errs on the safe
 * side: every file that differs then counts as edited by a person.
 */
export const readRecord = (text: string | undefined): WrittenRecord => parsed(text)?.files ?? {};

/** What a delivery was about to write that was cut off before it could say so. */
export const readWriting = (text: string | undefined): WrittenRecord => parsed(text)?.writing ?? {};

function parsed(text: string | undefined): z.infer<typeof recordSchema> | undefined {
  if (text === undefined) return undefined;
  try {
    return recordSchema.parse(JSON.parse(text));
  } catch {
    return undefined;
  }
}

/** The text of the record file, its names in order so that it merges well. */
export function printRecord(record: WrittenRecord, writing: WrittenRecord = {}): string {
  const inOrder = (all: WrittenRecord) =>
    Object.fromEntries(Object.entries(all).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)));
  const still = Object.keys(writing).length > 0 ? { writing: inOrder(writing) } : {};
  return `${JSON.stringify({ version: 1, files: inOrder(record), ...still }, null, 2)}\n`;
}

/** SHA-256 of what a file holds, as hex. In a text line ends count as `\n`: a checkout that converts them is no edit. */
export async function fingerprint(file: DocumentFile): Promise<string> {
  const bytes = bytesOf('text' in file ? { ...file, text: file.text.replace(/\r\n?/g, '\n') } : file);
  // The copy has a buffer of its own, which the digest asks for.
  const digest = new Uint8Array(await globalThis.crypto.subtle.digest('SHA-256', new Uint8Array(bytes)));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** The bytes of the disk as a file of the same kind: a mark of byte order counts as text. */
const alike = (bytes: Uint8Array, { name, ...next }: DocumentFile): DocumentFile =>
  'text' in next
    ? { name, text: new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes) }
    : { name, base64: toBase64(bytes) };

/**
 * Decides on one file.
 * @param existing the bytes that stand there now, undefined when there is no such file
 * @param recorded the fingerprint of what we wrote there last, undefined when we never did
 * @param next the file to write
 */
export async function decide(
  existing: Uint8Array | undefined,
  recorded: string | undefined,
  next: DocumentFile,
): Promise<Decision> {
  if (existing === undefined) return 'create';
  if (same(existing, bytesOf(next))) return 'unchanged';
  const current = await fingerprint(alike(existing, next));
  // Equal but for the line ends: ours, whoever wrote it.
  return current === recorded || current === (await fingerprint(next)) ? 'replace' : 'ask';
}

const same = (a: Uint8Array, b: Uint8Array): boolean => a.length === b.length && a.every((byte, i) => byte === b[i]);

/** The name for writing beside an edited file: `Heron.estimate.md` gives `Heron.estimate.new.md`, then `.new2.md` … */
export function besideName(name: string, attempt: number): string {
  const mark = attempt > 1 ? `.new${attempt}` : '.new';
  const dot = name.lastIndexOf('.');
  return dot > 0 ? name.slice(0, dot) + mark + name.slice(dot) : name + mark;
}

/** One file and what is to be done with it. */
export interface PlannedFile {
  readonly file: DocumentFile;
  readonly decision: Decision;
}
