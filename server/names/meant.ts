// What a name stands for: one thing, whichever of the places it is asked from.
import { allLines, type Declaration } from '../../language/records/file.ts';
import { filesNamedBy } from '../../language/resolve/claims.ts';
import { type Entry, type Namespace, namespaceOf } from '../../language/resolve/names.ts';
import { isLibrary } from '../../language/resolve/origin.ts';
import { basesOf } from '../../language/resolve/references.ts';
import { canonical } from '../../language/statements/words.ts';
import type { Session } from '../session.ts';
import { nameNow, type RigEntry, rigsReading, rootOf } from './items-of.ts';
import type { Mention } from './mentions.ts';

export interface Meant {
  readonly kind: Namespace | 'item' | 'bay' | 'yard' | 'crew' | 'rule';
  /** As it is declared. */
  readonly name: string;
  /** The declaration, or of an item the one that first describes it; a rule has none. */
  readonly entry: Entry | undefined;
  readonly isBuiltIn: boolean;
  /** Of a bay: where the block of its yard begins, for two yards may each have a bay of one name. */
  readonly within?: number;
}

/** Whether two are the same thing. */
export function isSame(a: Meant, b: Meant): boolean {
  if (a.kind !== b.kind || a.name !== b.name || a.entry?.file !== b.entry?.file || a.within !== b.within) return false;
  return a.entry?.declaration.nameAt[0] === b.entry?.declaration.nameAt[0];
}

/** The declaration around a mention, as a record. */
export function entryAround(session: Session, path: string, { outer }: Mention): Entry | undefined {
  const start = outer.line.at[0];
  const declaration = session.project.records(path)?.declarations.find(({ at }) => at[0] === start);
  return declaration && { declaration, file: path };
}

/** What a mention in a file means; undefined for a name that nothing has. `files`: where rigs of histories are looked for. */
export function meantBy(
  session: Session,
  path: string,
  mention: Mention,
  files: Iterable<string> = [],
): Meant | undefined {
  const { name, role } = mention;
  if (role === 'rule') return { kind: 'rule', name, entry: undefined, isBuiltIn: true };
  const entry = entryAround(session, path, mention);
  if (!entry) return undefined;
  const { declaration } = entry;
  switch (role) {
    case 'declaration':
      return declared(entry);
    case 'history':
      return declared(rigsReading(session, path, name, files)[0]);
    case 'bay': {
      const yard = mention.outer.line.block?.find(
        ({ head, block, whole }) => head === 'yard' && block && whole[0] <= mention.at[0] && mention.at[1] <= whole[1],
      );
      return { kind: role, name, entry, isBuiltIn: false, ...(yard ? { within: yard.at[0] } : {}) };
    }
    case 'yard':
      return { kind: role, name, entry, isBuiltIn: false };
    case 'crew':
    case 'of-crew':
      return hasCrew(declaration, name) ? { kind: 'crew', name, entry, isBuiltIn: false } : undefined;
    case 'served':
      return declared(visible(session, path, name, ['group'], declaration) ?? listed(session, entry, name));
    case 'material':
    case 'surface':
    case 'policy':
    case 'group': {
      const at = declaration.kind === 'history' ? rigsReading(session, path, declaration.name, files)[0]?.file : path;
      return declared(visible(session, at ?? path, name, [role], declaration));
    }
    case 'base':
      return declared(visible(session, path, name, basesOf(declaration), declaration));
    case 'rig':
      return declared(listed(session, entry, name));
    default:
      return item(session, path, mention, entry, files);
  }
}

function declared(entry: Entry | undefined): Meant | undefined {
  const kind = entry && namespaceOf(entry.declaration);
  if (!kind) return undefined;
  return { kind, name: entry.declaration.name, entry, isBuiltIn: isLibrary(entry.file) };
}

function visible(
  session: Session,
  path: string,
  name: string,
  namespaces: readonly Namespace[],
  from: Declaration,
): Entry | undefined {
  const names = session.project.names(path);
  for (const namespace of namespaces) {
    const found =
      names.find(namespace, namespace === 'surface' ? canonical(name) : name) ?? names.find(namespace, name);
    // A rig may be like the model of its own name.
    if (found && (found.declaration !== from || namespaces.length === 1)) return found;
  }
  return undefined;
}

function hasCrew(declaration: Declaration, name: string): boolean {
  for (const line of allLines(declaration))
    if (line.word === 'crew' && (line as { readonly name?: { readonly name: string } }).name?.name === name)
      return true;
  return false;
}

/** A rig of the fleet that lists it. */
function listed(session: Session, { declaration, file }: Entry, name: string): Entry | undefined {
  for (const path of filesNamedBy(declaration, file, session.files)) {
    const found = session.project.records(path)?.declarations.find((d) => d.kind === 'rig' && d.name === name);
    if (found) return { declaration: found, file: path };
  }
  return undefined;
}

function item(
  session: Session,
  path: string,
  { name, at, role }: Mention,
  { declaration, file }: Entry,
  files: Iterable<string>,
): Meant | undefined {
  const rigs: readonly RigEntry[] =
    declaration.kind === 'rig' || declaration.kind === 'model'
      ? [{ declaration, file }]
      : declaration.kind === 'history'
        ? rigsReading(session, path, declaration.name, files)
        : [];
  if (role === 'former') {
    const [rig] = rigs;
    const line = rig?.declaration.statements.find((s) => s.word === 'formerly' && s.name.at[0] === at[0]);
    if (rig && line?.word === 'formerly' && !line.now) return declared(rig);
  }
  for (const rig of rigs) {
    const now = nameNow(session, rig, name);
    const root = rootOf(session, rig, now, role === 'dropped');
    if (root) return { kind: 'item', name: now, entry: root, isBuiltIn: false };
  }
  return undefined;
}
