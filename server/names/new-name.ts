// Whether a thing may take a new name: well-formed, not a word of the language, and nobody else's.
import { lex } from '../../language/grammar/tokens.ts';
import { allLines, type Declaration } from '../../language/records/file.ts';
import type { Whole } from '../../language/records/statement.ts';
import { sideOf } from '../../language/resolve/items.ts';
import type { Namespace } from '../../language/resolve/names.ts';
import { isLibrary } from '../../language/resolve/origin.ts';
import { fileNamespaces, isRefusedForFiles } from '../../language/rules/names.ts';
import { clauseWords, sets } from '../../language/statements/words.ts';
import type { Features } from '../features/here.ts';
import { chain, itemsDescribedBy, type RigEntry, rigsReading } from './items-of.ts';
import { entryAround, type Meant } from './meant.ts';
import { type Found, mentionsNamed } from './search.ts';

/** Why a thing cannot be renamed at all, as a sentence; undefined if it can. */
export function refusalOf({ kind, name, isBuiltIn }: Meant): string | undefined {
  if (kind === 'rule') return `\`${name}\` is a rule of the checker: its name is fixed.`;
  if (isBuiltIn)
    return `\`${name}\` belongs to the built-in library: its name is fixed. Declare one of your own that is like it.`;
  if (kind === 'item' && sideOf(name, 'right')) return `\`${name}\` is a side of the roof: its name is fixed.`;
  return undefined;
}

/** What is wrong with a name by itself, as a sentence. */
export function malformed({ kind }: Meant, name: string): string | undefined {
  const { tokens, comments } = lex(name);
  if (comments.length > 0 || tokens.length !== 1 || tokens[0]?.tokenType.name !== 'WORD' || tokens[0].image !== name)
    return `\`${name}\` is no name: a name begins with a letter and goes on with letters, digits, \`-\` and \`_\`.`;
  if (/-$|--/.test(name)) return `A name neither ends with a hyphen nor has two in a row: \`${name}\`.`;
  if (clauseWords.has(name))
    return `\`${name}\` is a word of the language and no name; write another, such as \`${name}-1\`.`;
  if (kind === 'item' && (sideOf(name, 'right') || Object.hasOwn(sets, name)))
    return `\`${name}\` already means something on every roof; write another, such as \`${name}-1\`.`;
  if (kind === 'material' && name === 'unknown') return '`unknown` stands for a material that nobody knows.';
  if (namesFiles(kind) && isRefusedForFiles(name))
    return `\`${name}\` cannot be the name of a file on every machine, and outputs are files; write another, such as \`${name}-1\`.`;
  return undefined;
}

const namesFiles = (kind: Meant['kind']) => (fileNamespaces as readonly string[]).includes(kind);

/** Who has the name already where the thing is declared or named, as a sentence. */
export function clash(
  features: Features,
  meant: Meant,
  name: string,
  found: readonly Found[],
  files: ReadonlySet<string>,
): string | undefined {
  if (meant.kind === 'item') return itemClash(features, meant, name, found, files);
  if (meant.kind === 'bay' || meant.kind === 'yard' || meant.kind === 'crew') {
    const lines = meant.entry ? linesBeside(meant.entry.declaration, meant) : [];
    const taken = lines.some((line) => {
      return line.word === meant.kind && (line as { readonly name?: { readonly name: string } }).name?.name === name;
    });
    return taken ? `This fleet already has a ${meant.kind} \`${name}\`.` : undefined;
  }
  return declarationClash(features, meant, name, found, files);
}

/** The lines among which a name has to be the only one: of a bay those of its yard, else all of the fleet. */
function linesBeside(declaration: Declaration, { kind, within }: Meant): readonly Whole[] {
  if (kind !== 'bay') return [...allLines(declaration)];
  const statements = declaration.statements as readonly (Whole & { readonly lines?: readonly Whole[] })[];
  return within === undefined ? statements : (statements.find(({ at }) => at[0] === within)?.lines ?? []);
}

function declarationClash(
  { session }: Features,
  { kind, name: old, entry }: Meant,
  name: string,
  found: readonly Found[],
  files: ReadonlySet<string>,
): string | undefined {
  const { project } = session;
  // What a rig is like is looked up among rigs, then among models.
  const namespaces = (kind === 'rig' || kind === 'model' ? ['rig', 'model'] : [kind]) as Namespace[];
  for (const file of new Set(found.map((one) => one.file))) {
    for (const namespace of namespaces) {
      const other = project.names(file).find(namespace, name);
      if (other && namespace === kind)
        return isLibrary(other.file)
          ? `\`${name}\` is a name of the built-in library; it would be hidden.`
          : `\`${name}\` is already the name of a ${other.declaration.kind}.`;
      if (other && found.some((one) => one.file === file && one.mention.role === 'base'))
        return `\`${name}\` is already the name of a ${other.declaration.kind}: \`like ${name}\` would mean that.`;
    }
  }
  for (const { path, declared, rigs } of session.workspace.summaries.values()) {
    for (const key of namesFiles(kind) ? Object.keys(declared) : []) {
      const [namespace, other = ''] = key.split(' ');
      const isItself = path === entry?.file && other === old;
      if (namespace !== kind || isItself || other.toLowerCase() !== name.toLowerCase()) continue;
      if (other === name) return `There is already a ${kind} \`${name}\` in this workspace.`;
      return `\`${name}\` and \`${other}\` would differ in their case only: some machines do not tell files of these names apart.`;
    }
    if (kind === 'rig' && rigs.some((rig) => rig.formerly.includes(name)))
      return `\`${name}\` is the former name of a rig: its histories go by it.`;
  }
  // A history that nobody claims would be claimed.
  for (const file of kind === 'rig' ? files : [])
    if (
      project.text(file)?.includes(name) &&
      project.records(file)?.declarations.some((d) => d.kind === 'history' && d.name === name)
    )
      return `There is a history of \`${name}\` already.`;
  return undefined;
}

/** An item's name must be free on every roof that has it, and on every roof that is like one of these. */
function itemClash(
  features: Features,
  { entry: root }: Meant,
  name: string,
  found: readonly Found[],
  files: ReadonlySet<string>,
): string | undefined {
  const { session } = features;
  const rigsOf = (file: string, mention: Found['mention']): readonly RigEntry[] => {
    const entry = entryAround(session, file, mention);
    const { declaration } = entry ?? {};
    if (declaration?.kind === 'history') return rigsReading(session, file, declaration.name, files);
    return declaration?.kind === 'rig' || declaration?.kind === 'model' ? [{ declaration, file }] : [];
  };
  for (const { file, mention } of found)
    for (const rig of rigsOf(file, mention))
      for (const { declaration } of chain(session, rig)) {
        if (itemsDescribedBy(declaration).has(name)) return `\`${declaration.name}\` already has an item \`${name}\`.`;
        if (declaration.statements.some((s) => s.word === 'formerly' && s.now && s.name.name === name))
          return `\`${name}\` is a former name on \`${declaration.name}\`: what happened under it would be told of another item.`;
      }
  for (const file of files)
    for (const mention of mentionsNamed(features, file, name))
      for (const rig of mention.role === 'item' || mention.role === 'former' ? rigsOf(file, mention) : [])
        if (chain(session, rig).some(({ declaration }) => declaration === root?.declaration))
          return `\`${rig.declaration.name}\` already has an item \`${name}\`.`;
  return undefined;
}
