// What a declaration is like, looked up where it was written; and the built-in materials that stand behind it.
import type {
  Declaration,
  MaterialDeclaration,
  PolicyDeclaration,
  RigDeclaration,
  SurfaceDeclaration,
} from '../records/file.ts';
import type { Entry, Names, Namespace } from './names.ts';

type BaseOf<D extends Declaration> = (entry: Entry<D>) => Entry<D> | undefined;

export interface Bases {
  readonly material: BaseOf<MaterialDeclaration>;
  readonly surface: BaseOf<SurfaceDeclaration>;
  readonly policy: BaseOf<PolicyDeclaration>;
  readonly rig: BaseOf<RigDeclaration>;
}

/** `namesIn` gives the names that a file can use. */
export function basesBy(namesIn: (file: string) => Names): Bases {
  const find = <D extends Declaration>(entry: Entry<D>, namespaces: readonly Namespace[]): Entry<D> | undefined => {
    const { like } = entry.declaration;
    if (!like) return undefined;
    const names = namesIn(entry.file);
    for (const namespace of namespaces) {
      const found = names.find(namespace, like.name) as Entry<Declaration> | undefined;
      // A rig may be like the model of its own name; anything else that is like itself goes in a circle.
      if (found && (found.declaration !== (entry.declaration as Declaration) || namespaces.length === 1))
        return found as unknown as Entry<D>;
    }
    return undefined;
  };
  return {
    material: (entry) => {
      const base = find(entry, ['material']);
      return base?.declaration.kind === entry.declaration.kind ? base : undefined;
    },
    surface: (entry) => find(entry, ['surface']),
    policy: (entry) => find(entry, ['policy']),
    rig: (entry) => find(entry, entry.declaration.kind === 'rig' ? ['rig', 'model'] : ['model']),
  };
}

/** The built-in material of a kind and a family (of a cleaner: its solvent); where the family is not known, the first of the kind. */
export function standardMaterials(
  library: Names,
): (kind: string, family: string | undefined) => Entry<MaterialDeclaration> | undefined {
  const standards = new Map<string, Entry<MaterialDeclaration>>();
  for (const [, entry] of library.all('material')) {
    const { kind, statements } = entry.declaration;
    const said = statements.find((s) => s.word === 'family' || s.word === 'solvent');
    const family = said?.word === 'family' ? said.family : said?.word === 'solvent' ? said.solvent : '';
    if (!standards.has(`${kind} ${family}`)) standards.set(`${kind} ${family}`, entry);
  }
  return (kind, family) => (family === undefined ? undefined : standards.get(`${kind} ${family}`));
}
