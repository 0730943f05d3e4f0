// A workspace as files in a folder.
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** Writes texts below a folder and gives how many bytes they have. */
export function writeTexts(folder: string, texts: Iterable<readonly [string, string]>): number {
  const made = new Set<string>();
  let bytes = 0;
  for (const [path, text] of texts) {
    const file = join(folder, path);
    if (!made.has(dirname(file))) mkdirSync(dirname(file), { recursive: true });
    made.add(dirname(file));
    writeFileSync(file, text);
    bytes += Buffer.byteLength(text);
  }
  return bytes;
}
