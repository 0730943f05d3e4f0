// What the findings of a file depend on, as paths.

import { bookingPaths } from '../language/resolve/bookings.ts';
import { filesNamedBy, type Listing } from '../language/resolve/claims.ts';
import { folderOf, resolvePath } from '../language/resolve/paths.ts';
import type { Project } from '../language/resolve/project.ts';

export interface Dependencies {
  /**
   * The file itself, what it uses and what its rigs claim, and so on from there. A path that is used and not there is among
   * them: its coming changes what is found.
   */
  readonly paths: Set<string>;
  /** The files that its fleets list: what is said of a fleet depends on their rigs, and on what these depend on. */
  readonly lists: ReadonlySet<string>;
}

export function dependenciesOf(project: Project, listing: Listing, path: string): Dependencies {
  const paths = new Set([path]);
  const lists = new Set<string>();
  const tables: string[] = [];
  for (const file of paths) {
    const records = project.records(file);
    for (const use of records?.uses ?? []) paths.add(resolvePath(folderOf(file), use.path));
    for (const declaration of records?.declarations ?? []) {
      // The fleets of a file that is only used are no matter here.
      if (declaration.kind === 'fleet' && file !== path) continue;
      const named = declaration.kind === 'fleet' ? lists : paths;
      if (declaration.kind === 'fleet') tables.push(...bookingPaths(declaration, file));
      for (const one of filesNamedBy(declaration, file, listing)) named.add(one);
    }
  }
  // They hold no records, and are not followed further.
  for (const table of tables) paths.add(table);
  return { paths, lists };
}
