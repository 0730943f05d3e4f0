// What is like what, upwards and downwards.
import { type Position, SymbolKind, type TypeHierarchyItem } from 'vscode-languageserver';
import type { Declaration } from '../../language/records/file.ts';
import { linesOfText } from '../../language/records/file.ts';
import { type Entry, namespaceOf } from '../../language/resolve/names.ts';
import { isLibrary } from '../../language/resolve/origin.ts';
import { basesOf } from '../../language/resolve/references.ts';
import { type Meant, meantBy } from '../names/meant.ts';
import { mentionsIn } from '../names/mentions.ts';
import { filesKnown, mentionsOfThing } from '../names/search.ts';
import { pathOf, rangeOf, textsFrom, uriOf } from '../places.ts';
import type { Features } from './here.ts';
import { pointedAt } from './references.ts';

/** What has no declaration of its own. */
const parts: ReadonlySet<string> = new Set(['item', 'bay', 'yard', 'crew']);

/** The declaration that is named at a position, if its kind can be like another. */
export function prepareHierarchy(features: Features, path: string, position: Position): TypeHierarchyItem[] | null {
  const entry = pointedAt(features, path, position)?.meant;
  if (!entry?.entry || parts.has(entry.kind) || basesOf(entry.entry.declaration).length === 0) return null;
  return shown(features, [entry.entry]);
}

/** What a declaration is like: one at most. */
export function likeWhat(features: Features, item: TypeHierarchyItem): TypeHierarchyItem[] {
  const entry = entryOf(features, item);
  const mention = entry && likeOf(features, entry);
  const base = mention && meantBy(features.session, entry.file, mention)?.entry;
  return base ? shown(features, [base]) : [];
}

/** All that is directly like a declaration, in all files. */
export function whatIsLike(features: Features, item: TypeHierarchyItem): TypeHierarchyItem[] {
  const entry = entryOf(features, item);
  const meant = entry && meantOf(entry);
  if (!entry || !meant) return [];
  const { project } = features.session;
  const files = filesKnown(features, [entry.file]);
  const like = mentionsOfThing(features, meant, files).flatMap(({ file, mention }) => {
    if (mention.role !== 'base') return [];
    const declaration = project.records(file)?.declarations.find(({ at }) => at[0] === mention.outer.line.at[0]);
    return declaration ? [{ declaration, file }] : [];
  });
  return shown(features, like);
}

function meantOf(entry: Entry): Meant | undefined {
  const kind = namespaceOf(entry.declaration);
  return kind && { kind, name: entry.declaration.name, entry, isBuiltIn: isLibrary(entry.file) };
}

/** The declaration behind an item, by its kind and name: the text may have moved since the item was made. */
function entryOf({ session }: Features, { uri, name, detail }: TypeHierarchyItem): Entry | undefined {
  const file = pathOf(uri);
  const declaration = session.project.records(file)?.declarations.find((d) => d.name === name && d.kind === detail);
  return declaration && { declaration, file };
}

function likeOf({ session }: Features, { file, declaration }: Entry) {
  const { lines } = linesOfText(session.project.text(file) ?? '');
  for (const mention of mentionsIn(lines.filter((line) => line.at[0] === declaration.at[0])))
    if (mention.role === 'base') return mention;
  return undefined;
}

const kinds: Partial<Record<Declaration['kind'], SymbolKind>> = {
  rig: SymbolKind.Class,
  model: SymbolKind.Interface,
  policy: SymbolKind.Module,
  surface: SymbolKind.Struct,
};

function shown({ session, open, can }: Features, entries: readonly Entry[]): TypeHierarchyItem[] {
  const texts = textsFrom((file) => session.project.text(file), open);
  return entries
    .filter(({ file }) => !isLibrary(file) || can.showsTexts)
    .map(({ declaration: { name, kind, whole, nameAt }, file }) => ({
      name,
      kind: kinds[kind] ?? SymbolKind.Object,
      detail: kind,
      uri: uriOf(file),
      range: rangeOf(texts.of(file), whole),
      selectionRange: rangeOf(texts.of(file), nameAt),
    }));
}
