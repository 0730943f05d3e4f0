// Go to definition: from a name to what it stands for, also in other files.
import type { DefinitionProvider } from 'langium/lsp';
import type { Position } from 'vscode-languageserver';
import type { Whole } from '../../language/records/statement.ts';
import { isLibrary } from '../../language/resolve/origin.ts';
import { itemWords } from '../../language/statements/roof.ts';
import { meaningAt } from '../cursor/meaning.ts';
import { rangeOf, uriOf } from '../places.ts';
import { type Features, hereIn } from './here.ts';
import { pointedAt } from './references.ts';
import { type Target, targetsOf } from './targets.ts';

export const definitions = (features: Features): DefinitionProvider => ({
  getDefinition(document, { position }) {
    const here = hereIn(features, document);
    const meaning = meaningAt(here.lines.lines, here.document.offsetAt(position));
    if (!meaning) return undefined;
    const originSelectionRange = rangeOf(here.document, meaning.at);
    const targets = targetsOf(features, here.path, meaning);
    return (targets.length > 0 ? targets : droppedItem(features, here.path, position))
      .filter(({ file }) => !isLibrary(file) || features.can.showsTexts)
      .map(({ file, at, whole }) => ({
        originSelectionRange,
        targetUri: uriOf(file),
        targetRange: rangeOf(here.texts.of(file), whole),
        targetSelectionRange: rangeOf(here.texts.of(file), at),
      }));
  },
});

/** An item that is dropped here is none of this rig: it is described by what the rig is like. */
function droppedItem(features: Features, path: string, position: Position): Target[] {
  const meant = pointedAt(features, path, position)?.meant;
  if (meant?.kind !== 'item' || !meant.entry) return [];
  const { declaration, file } = meant.entry;
  for (const statement of declaration.statements as readonly Whole[]) {
    const { name, names } = statement as { name?: string | { name: string }; names?: readonly string[] };
    const said = [typeof name === 'object' ? name.name : name, ...(names ?? [])];
    if (itemWords.has(statement.word) && said.includes(meant.name))
      return [{ file, at: statement.at, whole: statement.at }];
  }
  return [];
}
