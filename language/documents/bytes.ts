// Papers as bytes: what stands on the disk, and how bytes travel in JSON.
import type { DocumentFile } from '../protocol/index.ts';

/** What is written to the disk: text in UTF-8, bytes as they are. */
export const bytesOf = (file: DocumentFile): Uint8Array =>
  'text' in file ? new TextEncoder().encode(file.text) : fromBase64(file.base64);

const fromBase64 = (text: string): Uint8Array => Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));

/** So many letters at once: a call takes only so many arguments. */
const chunk = 8192;

/** Base64 (RFC 4648, section 4), on any platform. */
export function toBase64(bytes: Uint8Array): string {
  let letters = '';
  for (let at = 0; at < bytes.length; at += chunk) letters += String.fromCharCode(...bytes.subarray(at, at + chunk));
  return btoa(letters);
}
