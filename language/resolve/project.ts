// A workspace of `.rig` files: reads on demand, keeps what it read, and knows what depends on what. Files come from outside
// (a front door's file system, open editors, a test); a result depends only on files reachable from the one asked about.
import { libraryFiles } from '../library/index.ts';
import type {
  Declaration,
  FileRecords,
  FleetDeclaration,
  MaterialDeclaration,
  PolicyDeclaration,
  RigDeclaration,
} from '../records/file.ts';
import { readFile } from '../records/file.ts';
import { canonical } from '../statements/words.ts';
import { basesBy, standardMaterials } from './bases.ts';
import { bookingPaths, bookingsBy, bookingTables, withBookings } from './bookings.ts';
import { filesNamedBy, historiesOf, patternIn, patternsIn } from './claims.ts';
import { bookedByRig, resolveFleet } from './fleet.ts';
import { chainOf, circleProblem, linesThatHold } from './like.ts';
import type { Located } from './located.ts';
import { resolveMaterial, resolveSurface } from './material.ts';
import {
  closureOf,
  type Entry,
  type Names,
  namesIn,
  namesReachedTwice,
  type Reading,
  tableOfFile,
  tableOfFiles,
  useCircles,
  usedFiles,
} from './names.ts';
import { resolvePolicy } from './policy.ts';
import type { Files, Project, ResolvedRig } from './project-form.ts';
import { resolveRig } from './rig.ts';
import type { FleetFrame, Policy, RigView } from './types.ts';

export type { Files, Project, ResolvedFleet, ResolvedRig } from './project-form.ts';

const libraryTexts = new Map(libraryFiles.map(({ path, text }) => [path, text]));

export function createProject(files: Files): Project {
  const read = new Map<string, FileRecords | null>();
  // Results about files that others use; dropped together when one of them changes.
  let shared = newShared();
  const used = new Set<string>();
  /** Names by file, for as long as the file's records are kept. */
  const visible = new Map<string, Names>();

  const records = (path: string): FileRecords | undefined => {
    const known = read.get(path);
    if (known !== undefined) return known ?? undefined;
    const text = libraryTexts.get(path) ?? files.read(path);
    const got = text === undefined ? null : readFile(text);
    read.set(path, got);
    return got ?? undefined;
  };
  const reading: Reading = { records, inside: (path) => files.inside(path) };
  const empty: FileRecords = { uses: [], declarations: [], problems: [] };

  const library = tableOfFiles(libraryTexts.keys(), reading);
  const libraryNames = namesIn([library]);
  const standardPolicy = libraryNames.find('policy', 'Standard');
  if (!standardPolicy) throw new Error('the built-in library has no policy Standard');
  const standard = standardMaterials(libraryNames);

  const usesOf = (path: string) => {
    const got = records(path);
    return got ? usedFiles(path, got, reading) : { files: new Map(), problems: [] };
  };

  const names = (path: string): Names => {
    if (libraryTexts.has(path)) return libraryNames;
    const known = visible.get(path);
    if (known) return known;
    const uses = [...usesOf(path).files.keys()].sort();
    const key = uses.join('\n');
    let base = shared.tables.get(key);
    if (!base) {
      const closure = closureOf(uses, reading);
      for (const file of closure) used.add(file);
      base = { table: tableOfFiles(closure, reading), closure };
      shared.tables.set(key, base);
    }
    const made = namesIn([tableOfFile(path, records(path) ?? empty), base.table, library]);
    visible.set(path, made);
    return made;
  };
  const closure = (path: string): ReadonlySet<string> => {
    names(path);
    return shared.tables.get([...usesOf(path).files.keys()].sort().join('\n'))?.closure ?? new Set();
  };

  const bases = basesBy((file) => names(file));

  const remembered = <D extends Declaration, T>(
    cache: Map<Declaration, unknown>,
    entry: Entry<D>,
    make: () => T,
  ): T => {
    // Only what other files share is worth remembering; a rig file's own declarations go with it.
    if (!used.has(entry.file) && !libraryTexts.has(entry.file)) return make();
    if (!cache.has(entry.declaration)) cache.set(entry.declaration, make());
    return cache.get(entry.declaration) as T;
  };

  const materialOf = (entry: Entry<MaterialDeclaration>) =>
    remembered(shared.resolved, entry, () => resolveMaterial(entry, bases.material, standard));
  const policyOf = (entry: Entry<PolicyDeclaration>) =>
    remembered(shared.resolved, entry, () => resolvePolicy(entry, bases.policy, standardPolicy));
  const material = (path: string, name: string) => {
    const entry = names(path).find('material', name);
    return entry && materialOf(entry);
  };
  const materialNames = (path: string) => [...names(path).all('material')].map(([name]) => name);
  const surface = (path: string, name: string) => {
    const entry = names(path).find('surface', canonical(name)) ?? names(path).find('surface', name);
    return entry && remembered(shared.resolved, entry, () => resolveSurface(entry, bases.surface));
  };
  const policy = (path: string, name: string | undefined) =>
    policyOf((name !== undefined && names(path).find('policy', name)) || standardPolicy);

  /** The policy of a rig: its `under`, else that of its group, else its base's in the same way, else the built-in one; never the fleet's. */
  const policyOfRig = (entry: Entry<RigDeclaration>): Policy => {
    for (const link of chainOf(entry, bases.rig).chain) {
      const { under } = link.declaration;
      if (under) return policy(link.file, under.name);
      const stated = link.declaration.statements.find((s) => s.word === 'group');
      const group = stated?.word === 'group' ? names(link.file).find('group', stated.group.name) : undefined;
      if (group?.declaration.under) return policy(group.file, group.declaration.under.name);
    }
    return policy(entry.file, undefined);
  };

  const viewOf = (entry: Entry<RigDeclaration>): ResolvedRig => {
    const { rig, problems } = resolveRig({
      entry,
      baseOf: bases.rig,
      policy: policyOfRig(entry),
      histories: historiesOf(entry, files, reading),
    });
    const visible = names(entry.file);
    return {
      rig,
      problems,
      material: (name) => {
        const found = visible.find('material', name);
        return found && materialOf(found);
      },
      surface: (name) => surface(entry.file, name),
      materialNames: () => materialNames(entry.file),
    };
  };

  const bookings = bookingsBy((path) => files.read(path));
  const beside = (folder: string) => files.beside?.(folder) ?? [];
  const frameOf = (path: string, declaration: FleetDeclaration): FleetFrame => ({
    ...resolveFleet({ declaration, file: path }, policy(path, declaration.under?.name)),
    tables: bookingTables(declaration, path, { bookings: bookings.of, beside }),
  });

  /** The files that the rigs of a file depend on: what is used, and the histories that are claimed. */
  const rigDependsOn = (path: string): Set<string> => {
    const out = new Set([path, ...closure(path)]);
    for (const declaration of records(path)?.declarations ?? []) {
      if (declaration.kind === 'rig') for (const file of filesNamedBy(declaration, path, files)) out.add(file);
    }
    return out;
  };

  const project: Project = {
    records,
    text: (path) => libraryTexts.get(path) ?? files.read(path),
    names,
    material,
    surface,
    policy,
    rigs: (path) =>
      (records(path)?.declarations ?? []).flatMap((declaration) =>
        declaration.kind === 'rig' || declaration.kind === 'model' ? [viewOf({ declaration, file: path })] : [],
      ),
    fleets: (path) =>
      (records(path)?.declarations ?? []).flatMap((declaration) => {
        if (declaration.kind !== 'fleet') return [];
        const entries = filesNamedBy(declaration, path, files).flatMap((file) =>
          (records(file)?.declarations ?? []).flatMap((d) => (d.kind === 'rig' ? [{ declaration: d, file }] : [])),
        );
        const rigs = entries.map((entry) => viewOf(entry).rig);
        const frame = withBookings(
          frameOf(path, declaration),
          rigs.map(({ name, identity }) => ({ name, ...identity })),
        );
        const fleet = { ...frame, rigs };
        const booked = bookedByRig(frame);
        const views = fleet.rigs.map((rig, i): RigView => {
          const { file } = entries[i] as Entry;
          return {
            rig,
            material: (name) => material(file, name),
            surface: (name) => surface(file, name),
            materialNames: () => materialNames(file),
            booked: booked.get(rig.name) ?? [],
          };
        });
        return [{ fleet, views }];
      }),
    fleetFrames: (path) =>
      (records(path)?.declarations ?? []).flatMap((declaration) =>
        declaration.kind === 'fleet'
          ? [{ fleet: frameOf(path, declaration), declaration, files: filesNamedBy(declaration, path, files) }]
          : [],
      ),
    problems: (path) => {
      const got = records(path);
      if (!got) return [];
      const uses = usesOf(path);
      const out: Located[] = [
        ...got.problems.map((problem) => ({ ...problem, file: path })),
        ...uses.problems,
        ...useCircles(path, uses.files, reading),
        ...namesReachedTwice(path, got, uses.files, reading),
      ];
      for (const declaration of got.declarations) {
        if (
          declaration.kind === 'rig' ||
          declaration.kind === 'model' ||
          declaration.kind === 'history' ||
          declaration.kind === 'group' ||
          declaration.kind === 'fleet'
        )
          continue;
        const entry = { declaration, file: path } as Entry<MaterialDeclaration>;
        const baseOf = (
          declaration.kind === 'policy' ? bases.policy : declaration.kind === 'surface' ? bases.surface : bases.material
        ) as typeof bases.material;
        const { chain, circle } = chainOf(entry, baseOf);
        const round = circle && circleProblem(entry, circle);
        if (round) out.push(round);
        out.push(...linesThatHold(chain.slice(0, 1), () => true).problems);
      }
      return out;
    },
    dependsOn: (path) => {
      const out = rigDependsOn(path);
      for (const declaration of records(path)?.declarations ?? []) {
        if (declaration.kind === 'fleet') for (const file of bookingPaths(declaration, path)) out.add(file);
        for (const file of filesNamedBy(declaration, path, files)) {
          out.add(file);
          // A whole yard may stand in one file, that its own fleet lists.
          if (declaration.kind === 'fleet' && file !== path) for (const deeper of rigDependsOn(file)) out.add(deeper);
        }
      }
      return out;
    },
    patterns: (path) =>
      (records(path)?.declarations ?? []).flatMap(patternsIn).map((written) => patternIn(path, written).whole),
    changed: (paths) => {
      let mine = false;
      for (const path of paths) {
        // A file that was looked for and not there counts as used: its coming changes what others see.
        if (used.has(path) || read.get(path) === null) mine = true;
        read.delete(path);
        visible.delete(path);
        bookings.forget(path);
      }
      if (mine) {
        visible.clear();
        shared = newShared();
        used.clear();
      }
    },
    release: (path) => {
      // That a file is not there is kept: names of open files were made without it, and go when it comes.
      if (used.has(path) || read.get(path) === null) return;
      read.delete(path);
      visible.delete(path);
    },
  };
  return project;
}

function newShared() {
  return {
    tables: new Map<
      string,
      { readonly table: ReturnType<typeof tableOfFile>; readonly closure: ReadonlySet<string> }
    >(),
    resolved: new Map<Declaration, unknown>(),
  };
}
