// What was written before into the folder of the papers.
import { readFile } from 'node:fs/promises';

/** The text of a file; undefined where there is none or it cannot be read: then nothing was written before. */
export async function textAt(path: string): Promise<string | undefined> {
  try {
    return await readFile(path, 'utf8');
  } catch {
    return undefined;
  }
}
