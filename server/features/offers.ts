// The items of completion for each kind of thing that may stand at a place.
import { type CompletionItem, CompletionItemKind, InsertTextFormat, type Range } from 'vscode-languageserver';
import type { Names, Namespace } from '../../language/resolve/names.ts';
import { isLibrary } from '../../language/resolve/origin.ts';
import { folderOf, relativeTo, resolvePath } from '../../language/resolve/paths.ts';
import { basesOf } from '../../language/resolve/references.ts';
import { catalogue } from '../../language/rules/catalogue.ts';
import { materialKinds } from '../../language/statements/file.ts';
import { sets } from '../../language/statements/words.ts';
import type { Offered } from '../cursor/expected.ts';
import type { Standing, Statement } from '../cursor/standing.ts';
import { declarationAround, type Features, type Here, rigAround } from './here.ts';

/** What is written around the cursor, and the range that a completion replaces. */
export interface Written {
  readonly here: Here;
  readonly around: readonly Statement[];
  /** The statement that the cursor stands in. */
  readonly statement?: Statement;
  readonly range: Range;
}

/** The kinds of material that a statement is about: they stand first, what else may be named with it after them. */
const usedWith: ReadonlyMap<string, ReadonlySet<string>> = new Map(
  (
    [
      [['seal', 'sealed', 'rebed', 'rebedded'], ['sealant']],
      [['tape', 'taped', 'patch', 'patched'], ['tape']],
      [['wash', 'washed', 'strip', 'stripped'], ['cleaner']],
      [['primed'], ['primer']],
      [['coat', 'coated'], ['coating']],
    ] as const
  ).flatMap(([words, kinds]) => words.map((word) => [word, new Set<string>(kinds)] as const)),
);

export function offeredItems(features: Features, written: Written, offers: readonly Offered[]): CompletionItem[] {
  const items = offers.flatMap((offered) => itemsFor(features, written, offered));
  const seen = new Set<string>();
  return items.filter(({ label }) => !seen.has(label) && seen.add(label));
}

function itemsFor(features: Features, written: Written, { offer, slot }: Offered): CompletionItem[] {
  const { range, here, around } = written;
  const item = (label: string, kind: CompletionItemKind, rest: Partial<CompletionItem> = {}): CompletionItem => ({
    label,
    kind,
    textEdit: { range, newText: label },
    sortText: `0${label}`,
    ...rest,
  });
  const named = (namespaces: readonly Namespace[], kind: CompletionItemKind, only?: ReadonlySet<string>) =>
    namespaces.flatMap((namespace) =>
      [...namesFor(features, written).all(namespace)]
        .filter(([, { declaration }]) => !only || only.has(declaration.kind))
        .map(([name, { declaration, file }]) =>
          item(name, kind, {
            detail: `${declaration.kind}, ${isLibrary(file) ? 'built in' : relativeTo(folderOf(here.path), file)}`,
            ...(declaration.doc === undefined ? {} : { documentation: declaration.doc }),
            // What was declared by hand is meant more often than what is built in.
            sortText: `${fits(declaration.kind) ? '0' : '1'}${isLibrary(file) ? '~' : ''}${name}`,
          }),
        ),
    );
  const used = usedWith.get(written.statement?.line.head ?? '');
  const fits = (kind: string) => used === undefined || used.has(kind);
  switch (offer.kind) {
    case 'words':
      return offer.words.map((word) => item(word, CompletionItemKind.EnumMember));
    case 'units':
      return offer.units.map((unit, i) => item(unit, CompletionItemKind.Unit, { sortText: `0${i}` }));
    case 'seams':
      return seamItems(features, written, item, slot.inside?.includes('all') ?? false);
    case 'materials':
      return named(['material'], CompletionItemKind.Value, offer.of && new Set(offer.of));
    case 'surfaces':
      return named(['surface'], CompletionItemKind.Value);
    case 'policies':
      return named(['policy'], CompletionItemKind.Module);
    case 'bases': {
      const declaration = declarationAround(features, here.path, around);
      if (!declaration) return [];
      const { kind, name } = declaration;
      const only = (materialKinds as readonly string[]).includes(kind) ? new Set<string>([kind]) : undefined;
      return named(basesOf(declaration), CompletionItemKind.Class, only).filter(
        ({ label }) => label !== name || kind === 'rig',
      );
    }
    case 'rigs':
      return features.session
        .figures(here.path)
        .fleets.flatMap(({ fleet }) => fleet.rigs)
        .map((rig) => item(rig.name, CompletionItemKind.Class, { detail: relativeTo(folderOf(here.path), rig.file) }));
    case 'rules':
      return [...catalogue].map(([rule, { title, severity }]) =>
        item(rule, CompletionItemKind.Event, { detail: severity, documentation: title }),
      );
    case 'date': {
      const { today } = features.session.dates;
      return [item(today, CompletionItemKind.Constant, { detail: 'today', preselect: true, sortText: '0' })];
    }
    case 'text':
      return [
        item('"…"', CompletionItemKind.Text, {
          detail: slot.example,
          insertTextFormat: InsertTextFormat.Snippet,
          textEdit: { range, newText: '"$1"' },
        }),
      ];
    case 'new-name':
      return [];
  }
}

/** Names as they are seen where they will be looked up: those of a history by its rig. */
function namesFor(features: Features, { here, around }: Written): Names {
  const declaration = declarationAround(features, here.path, around);
  const rig = declaration?.kind === 'history' ? rigAround(features, here.path, around) : undefined;
  return features.session.project.names(rig?.view.rig.file ?? here.path);
}

function seamItems(
  features: Features,
  { here, around }: Written,
  item: (label: string, kind: CompletionItemKind, rest?: Partial<CompletionItem>) => CompletionItem,
  withSets: boolean,
): CompletionItem[] {
  const rig = rigAround(features, here.path, around)?.view.rig;
  if (!rig) return [];
  const kinds = new Set<string>(rig.items.map(({ kind }) => kind));
  const seams = rig.items.map(({ name, kind, doc, origin }) =>
    item(name, CompletionItemKind.Field, {
      detail: origin.file === rig.file ? kind : `${kind}, from ${relativeTo(folderOf(here.path), origin.file)}`,
      ...(doc === undefined ? {} : { documentation: doc }),
    }),
  );
  if (!withSets) return seams;
  const words = Object.entries(sets).filter(([, kind]) => kind === undefined || kinds.has(kind));
  return [
    ...seams,
    ...words.map(([word, kind]) =>
      item(word, CompletionItemKind.Enum, {
        detail: kind === undefined ? 'seams and items' : `every ${kind}`,
        sortText: `0~${word}`,
      }),
    ),
  ];
}

/** Files for a text that names one: after `use` the other files of the workspace. */
export function pathItems(features: Features, { here, range }: Written, { statement }: Standing): CompletionItem[] {
  if (statement?.row?.word !== 'use') return [];
  const folder = folderOf(here.path);
  const used = new Set(
    features.session.figures(here.path).records?.uses.map(({ path }) => resolvePath(folder, path)) ?? [],
  );
  // The quote before the cursor stays, the one behind it as well if the editor has put it there.
  const inside: Range = { start: { ...range.start, character: range.start.character + 1 }, end: range.end };
  return [...features.session.workspace.summaries.values()]
    .filter(({ path, declared }) => path !== here.path && !used.has(path) && Object.keys(declared).length > 0)
    .map(({ path, declared }): CompletionItem => {
      const label = relativeTo(folder, path);
      return {
        label,
        kind: CompletionItemKind.File,
        detail: Object.keys(declared).slice(0, 4).join(', '),
        textEdit: { range: inside, newText: label },
      };
    });
}
