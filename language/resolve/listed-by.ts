// Which fleets have the rigs of a file: asked by front doors, which know of all files. No result depends on it.
import type { FileRecords } from '../records/file.ts';
import { patternIn, patternsIn } from './claims.ts';

/**
 * The names of the fleets in some files that list a file, each once, sorted. A fleet has all rigs of a file that it lists.
 */
export function fleetsThatList(
  path: string,
  files: Iterable<string>,
  records: (path: string) => FileRecords | undefined,
): readonly string[] {
  const names = new Set<string>();
  for (const file of files) {
    for (const declaration of records(file)?.declarations ?? []) {
      if (declaration.kind !== 'fleet') continue;
      if (patternsIn(declaration).some((written) => patternIn(file, written).fits(path))) names.add(declaration.name);
    }
  }
  return [...names].sort();
}
