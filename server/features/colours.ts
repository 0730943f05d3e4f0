// Semantic colours: of the names, which the colouring by patterns cannot tell apart. Words, figures, texts and remarks keep
// the colours that they have.
import type { Range, SemanticTokens, SemanticTokensLegend } from 'vscode-languageserver';
import { SemanticTokensBuilder } from 'vscode-languageserver';
import { isLibrary } from '../../language/resolve/origin.ts';
import { canonical, sides } from '../../language/statements/words.ts';
import { type Mention, mentionsIn, type Role } from '../names/mentions.ts';
import { declares } from '../names/search.ts';
import type { Session } from '../session.ts';
import { type Features, hereAt } from './here.ts';

export const legend: SemanticTokensLegend = {
  tokenTypes: ['type', 'class', 'interface', 'namespace', 'struct', 'enumMember', 'property', 'function'],
  tokenModifiers: ['declaration', 'defaultLibrary'],
};
const declarationBit = 1;
const libraryBit = 2;

/** The type of a name by what it is; a declared name has the type of its kind. */
const typeOfRole: Readonly<Record<Role, string>> = {
  declaration: 'type',
  history: 'class',
  item: 'property',
  bay: 'property',
  yard: 'property',
  crew: 'class',
  'of-crew': 'class',
  former: 'property',
  seam: 'property',
  dropped: 'property',
  material: 'type',
  surface: 'enumMember',
  policy: 'struct',
  group: 'struct',
  served: 'struct',
  base: 'interface',
  rig: 'class',
  rule: 'function',
};
const typeOfKind: Readonly<Record<string, string>> = {
  rig: 'class',
  model: 'interface',
  fleet: 'namespace',
  policy: 'struct',
  group: 'struct',
  surface: 'enumMember',
};

/** The colours of a text, or of the part of it that is shown. */
export function colours(features: Features, path: string, range?: Range): SemanticTokens {
  const builder = new SemanticTokensBuilder();
  const here = hereAt(features, path);
  if (!here) return builder.build();
  const from = range ? here.document.offsetAt(range.start) : 0;
  const to = range ? here.document.offsetAt(range.end) : here.text.length;
  const isBuiltIn = builtInNames(features.session, path);
  for (const mention of mentionsIn(here.lines.lines.filter(({ whole }) => whole[1] >= from && whole[0] <= to))) {
    const { at, name } = mention;
    if (at[1] < from || at[0] > to) continue;
    const type = typeOf(mention);
    // Sides and sets are words of the language where they stand for themselves: the patterns know them.
    if (type === 'property' && (sides as readonly string[]).includes(name)) continue;
    const modifiers = (declares(mention) ? declarationBit : 0) | (isBuiltIn(mention) ? libraryBit : 0);
    const { line, character } = here.document.positionAt(at[0]);
    builder.push(line, character, at[1] - at[0], legend.tokenTypes.indexOf(type), modifiers);
  }
  return builder.build();
}

function typeOf({ role, outer }: Mention): string {
  const kind = outer.row?.word ?? '';
  if (role !== 'declaration' && role !== 'base') return typeOfRole[role];
  // A rig is like a model, or like another rig: both look like what is described elsewhere.
  if (role === 'base' && kind === 'rig') return 'interface';
  return typeOfKind[kind] ?? 'type';
}

/** Whether a name of a file is one of the built-in library; each name is looked up once. */
function builtInNames({ project }: Session, path: string): (mention: Mention) => boolean {
  const names = project.names(path);
  const known = new Map<string, boolean>();
  return ({ role, name }) => {
    if (role === 'rule') return true;
    if (role !== 'material' && role !== 'surface' && role !== 'policy') return false;
    const key = `${role} ${name}`;
    let is = known.get(key);
    if (is === undefined) {
      const entry = names.find(role, name) ?? names.find(role, canonical(name));
      is = entry !== undefined && isLibrary(entry.file);
      known.set(key, is);
    }
    return is;
  };
}
