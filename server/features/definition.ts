// Go to definition: from a name to what it stands for, also in other files.
import type { DefinitionProvider } from 'langium/lsp';
import { isLibrary } from '../../language/resolve/origin.ts';
import { meaningAt } from '../cursor/meaning.ts';
import { rangeOf, uriOf } from '../places.ts';
import { type Features, hereIn } from './here.ts';
import { targetsOf } from './targets.ts';

export const definitions = (features: Features): DefinitionProvider => ({
  getDefinition(document, { position }) {
    const here = hereIn(features, document);
    const meaning = meaningAt(here.lines.lines, here.document.offsetAt(position));
    if (!meaning) return undefined;
    const originSelectionRange = rangeOf(here.document, meaning.at);
    return targetsOf(features, here.path, meaning)
      .filter(({ file }) => !isLibrary(file) || features.can.showsTexts)
      .map(({ file, at, whole }) => ({
        originSelectionRange,
        targetUri: uriOf(file),
        targetRange: rangeOf(here.texts.of(file), whole),
        targetSelectionRange: rangeOf(here.texts.of(file), at),
      }));
  },
});
