// Which files may declare a fleet.
import type { Files } from '../language/resolve/project.ts';

/** Those of some files, sorted; told by their text alone, so that the rest need not be read closely. */
export function fleetFilesAmong(paths: Iterable<string>, { read }: Pick<Files, 'read'>): readonly string[] {
  return [...new Set(paths)].filter((path) => /\bfleet\b/.test(read(path) ?? '')).sort();
}
