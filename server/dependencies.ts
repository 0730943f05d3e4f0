// What the findings of a file depend on, as paths.
import { filesNamedBy, type Listing } from '../language/resolve/claims.ts';
import { folderOf, resolvePath } from '../language/resolve/paths.ts';
import type { Project } from '../language/resolve/project.ts';

/**
 * The file itself, what it uses and what it names by patterns, and so on from there. A path that is used and not there
 * is among them: its coming changes what is found. A yard in one file may name that very file.
 */
export function dependenciesOf(project: Project, listing: Listing, path: string): Set<string> {
  const paths = new Set([path]);
  for (const file of paths) {
    const records = project.records(file);
    for (const use of records?.uses ?? []) paths.add(resolvePath(folderOf(file), use.path));
    for (const declaration of records?.declarations ?? [])
      for (const named of filesNamedBy(declaration, file, listing)) paths.add(named);
  }
  return paths;
}
