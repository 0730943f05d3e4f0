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

/** Where a declaration stands. It holds none of its records: a thousand rigs are paired before the first is looked at. */
export interface Place {
  readonly kind: Declaration['kind'];
  readonly name: string;
  readonly at: Declaration['at'];
  /** What a rig says that it was called before. */
  readonly formerly: readonly string[];
  readonly file: string;
}

/** Whether two spans are the same: a file that was forgotten is read anew, into other objects. */
export const sameSpan = (a: Declaration['at'], b: Declaration['at']): boolean => a[0] === b[0] && a[1] === b[1];

/** A declaration with its records. */
export function declarationAt({ project }: Side, { file, at }: Pick<Place, 'file' | 'at'>): Declaration {
  return project.records(file)?.declarations.find((one) => sameSpan(one.at, at)) as Declaration;
}

export interface Block {
  readonly declaration: Declaration;
  readonly file: string;
}

/** A rig's own declaration and its histories, wherever they stand. */
export function blocksOf(side: Side, place: Place): readonly Block[] {
  const { files } = side;
  const { records } = side.project;
  const { file } = place;
  const declaration = declarationAt(side, place);
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
    ({ kind, name, file }) => [`${kind} ${name}\n${file}`],
    ({ kind, name }) => [`${kind} ${name}`],
    ({ formerly }) => formerly.map((name) => `rig ${name}`),
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

/** What two sides declare, and where results may differ. */
export interface Survey {
  readonly before: readonly Place[];
  readonly after: readonly Place[];
  /** Of one side or both. A file that reads the same texts on both sides says the same. */
  readonly touched: ReadonlySet<string>;
}

/** Reads each file of both sides once, in the order of their names, and forgets it again. */
export function survey(before: Side, after: Side): Survey {
  const found = { before: [] as Place[], after: [] as Place[] };
  const touched = new Set<string>();
  for (const file of [...new Set([...before.paths, ...after.paths])].sort()) {
    const old = before.project.dependsOn(file);
    const now = after.project.dependsOn(file);
    found.before.push(...placesIn(before, file));
    found.after.push(...placesIn(after, file));
    const same =
      old.size === now.size &&
      [...now].every((path) => old.has(path) && before.project.text(path) === after.project.text(path));
    if (!same) touched.add(file);
    for (const { project } of [before, after]) for (const path of same ? now : [file]) project.release(path);
  }
  return { ...found, touched };
}

const placesIn = ({ project }: Side, file: string): readonly Place[] =>
  (project.records(file)?.declarations ?? []).map((one) => ({
    kind: one.kind,
    name: one.name,
    at: one.at,
    formerly: formerNames(one),
    file,
  }));
