// One of the two sides of a comparison, and which of its declarations are those of the other side.
import type { Declaration } from '../records/file.ts';
import { historiesOf, type Listing } from '../resolve/claims.ts';
import type { Entry } from '../resolve/names.ts';
import type { Project } from '../resolve/project.ts';

/** A project as it is, or was. `paths` are the files that are compared; what they use is read besides. */
export interface Side {
  readonly project: Project;
  readonly files: Listing;
  readonly paths: readonly string[];
}

export interface Place {
  readonly declaration: Declaration;
  readonly file: string;
}

/** Every declaration of a kind in some files of a side, in the order of files and places. Files without one are forgotten again. */
export function declarationsOf(
  { project }: Side,
  paths: readonly string[],
  kinds: ReadonlySet<Declaration['kind']>,
): readonly Place[] {
  return paths.flatMap((file) => {
    const found = (project.records(file)?.declarations ?? []).filter(({ kind }) => kinds.has(kind));
    if (found.length === 0) project.release(file);
    return found.map((declaration) => ({ declaration, file }));
  });
}

/** A rig's own declaration and its histories, wherever they stand. */
export function blocksOf({ project: { records }, files }: Side, { declaration, file }: Place): readonly Place[] {
  if (declaration.kind !== 'rig') return [{ declaration, file }];
  return [
    { declaration, file },
    ...historiesOf({ declaration, file } as Entry<typeof declaration>, files, {
      records,
      inside: (path) => files.inside(path),
    }),
  ];
}

export interface Pair {
  readonly before?: Place;
  readonly after?: Place;
}

/**
 * Declarations of before and after that are the same one: by kind, name and file, else by kind and name, so that a moved file
 * changes nothing, else by a name that a rig says that it formerly had. Those of after first, in their order.
 */
export function paired(before: readonly Place[], after: readonly Place[]): readonly Pair[] {
  const left = new Set(before);
  const partners = new Map<Place, Place>();
  const ways: readonly ((place: Place) => readonly string[])[] = [
    ({ declaration: { kind, name }, file }) => [`${kind} ${name}\n${file}`],
    ({ declaration: { kind, name } }) => [`${kind} ${name}`],
    ({ declaration }) => formerNames(declaration).map((name) => `rig ${name}`),
  ];
  for (const [i, keysOf] of ways.entries()) {
    const known = new Map<string, Place[]>();
    const keyOf = ways[Math.min(i, 1)] as (place: Place) => readonly string[];
    for (const place of left) for (const key of keyOf(place)) known.set(key, [...(known.get(key) ?? []), place]);
    for (const place of after) {
      if (partners.has(place)) continue;
      const found = keysOf(place)
        .flatMap((key) => known.get(key) ?? [])
        .find((one) => left.has(one));
      if (!found) continue;
      partners.set(place, found);
      left.delete(found);
    }
  }
  return [
    ...after.map((place): Pair => {
      const partner = partners.get(place);
      return partner ? { before: partner, after: place } : { after: place };
    }),
    ...[...left].map((place): Pair => ({ before: place })),
  ];
}

function formerNames(declaration: Declaration): readonly string[] {
  if (declaration.kind !== 'rig') return [];
  return declaration.statements.flatMap((s) => (s.word === 'formerly' && !s.now ? [s.name.name] : []));
}

/**
 * The files, of one side or both, whose results may differ. A file that reads the same texts on both sides says the same: its
 * declarations are those of the other side, and it is forgotten again.
 */
export function touchedFiles(before: Side, after: Side): readonly string[] {
  return [...new Set([...before.paths, ...after.paths])].sort().filter((file) => {
    const old = before.project.dependsOn(file);
    const now = after.project.dependsOn(file);
    const same =
      old.size === now.size &&
      [...now].every((path) => old.has(path) && before.project.text(path) === after.project.text(path));
    if (same) for (const { project } of [before, after]) for (const path of now) project.release(path);
    return !same;
  });
}
