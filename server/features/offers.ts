// The items of completion for each kind of thing that may stand at a place.
import { type CompletionItem, CompletionItemKind, InsertTextFormat, type Range } from 'vscode-languageserver';
import { allLines, type Declaration } from '../../language/records/file.ts';
import type { Names, Namespace } from '../../language/resolve/names.ts';
import { isLibrary } from '../../language/resolve/origin.ts';
import { folderOf, relativeTo, resolvePath } from '../../language/resolve/paths.ts';
import { basesOf } from '../../language/resolve/references.ts';
import { catalogue } from '../../language/rules/catalogue.ts';
import { materialKinds } from '../../language/statements/file.ts';
import { sets } from '../../language/statements/words.ts';
import type { Offered } from '../cursor/expected.ts';
import type { Standing, Statement } from '../cursor/standing.ts';
import { documentedBy } from './documented.ts';
import { declarationAround, type Features, type Here, rigAround } from './here.ts';
import { isUsedWith, materialStandings } from './material-order.ts';
import { namedAround, walkedItems } from './seam-order.ts';

/** What is written around the cursor, and the range that a completion replaces. */
export interface Written {
  readonly here: Here;
  readonly around: readonly Statement[];
  /** The statement that the cursor stands in. */
  readonly statement?: Statement;
  readonly range: Range;
  /** Where the cursor is. */
  readonly offset: number;
}

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
            detail: detailOf(declaration, file),
            ...(declaration.doc === undefined ? {} : { documentation: declaration.doc }),
            // What was declared by hand is meant more often than what is built in.
            sortText: `0${isLibrary(file) ? '~' : ''}${name}`,
          }),
        ),
    );
  const detailOf = ({ kind }: Declaration, file: string) =>
    `${kind}, ${isLibrary(file) ? 'built in' : relativeTo(folderOf(here.path), file)}`;
  switch (offer.kind) {
    case 'words':
      return offer.words.map((word) => item(word, CompletionItemKind.EnumMember));
    case 'units':
      return offer.units.map((unit, i) => item(unit, CompletionItemKind.Unit, { sortText: `0${i}` }));
    case 'seams':
      return seamItems(features, written, item, slot.inside?.includes('all') ?? false);
    case 'materials':
      return materialItems(features, written, item, detailOf, offer.of);
    case 'surfaces':
      return named(['surface'], CompletionItemKind.Value);
    case 'policies':
      return named(['policy'], CompletionItemKind.Module);
    case 'groups':
      return named(['group'], CompletionItemKind.Module);
    case 'crews': {
      const fleet = declarationAround(features, here.path, around);
      return fleet ? crewsIn(fleet).map((name) => item(name, CompletionItemKind.Class, { detail: 'crew' })) : [];
    }
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
      return [...catalogue].map(([rule, { severity }]) =>
        item(rule, CompletionItemKind.Event, {
          detail: severity,
          ...documentedBy(features, { kind: 'rule', name: rule }),
        }),
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

/** The names of the crews of a fleet and its yards. */
function crewsIn(declaration: Declaration): readonly string[] {
  return [...allLines(declaration)].flatMap((line) => {
    const { name } = line as { readonly name?: { readonly name: string } };
    return line.word === 'crew' && name ? [name.name] : [];
  });
}

type MakeItem = (label: string, kind: CompletionItemKind, rest?: Partial<CompletionItem>) => CompletionItem;

/** First what may lie there, of the kind that the verb is about; last what the rules would refuse, with what they say. */
function materialItems(
  features: Features,
  written: Written,
  item: MakeItem,
  detailOf: (declaration: Declaration, file: string) => string,
  of: readonly string[] | undefined,
): CompletionItem[] {
  const { here, around, statement } = written;
  const names = namesFor(features, written);
  const standingOf = materialStandings(features, here, around, statement);
  return [...names.all('material')].flatMap(([name, { declaration, file }]) => {
    const { kind } = declaration;
    if (of && !of.includes(kind)) return [];
    const { rank, short, why } = standingOf(name);
    const isMeant = isUsedWith(statement?.line.head ?? '', kind);
    const group = rank === 3 ? '3' : isMeant ? `0${rank}` : '1';
    return item(name, CompletionItemKind.Value, {
      detail: [detailOf(declaration, file), ...(short === '' ? [] : [short])].join('; '),
      sortText: `${group}${isLibrary(file) ? '~' : ''}${name}`,
      ...documentedBy(features, { kind: 'material', name, path: fileOfNames(features, written), why }),
    });
  });
}

/** Names as they are seen where they will be looked up: those of a history by its rig. */
export const namesFor = (features: Features, written: Written): Names =>
  features.session.project.names(fileOfNames(features, written));

function fileOfNames(features: Features, { here, around }: Written): string {
  const declaration = declarationAround(features, here.path, around);
  const rig = declaration?.kind === 'history' ? rigAround(features, here.path, around) : undefined;
  return rig?.view.rig.file ?? here.path;
}

function seamItems(features: Features, written: Written, item: MakeItem, withSets: boolean): CompletionItem[] {
  const { here, around, statement, offset } = written;
  const rig = rigAround(features, here.path, around)?.view.rig;
  if (!rig) return [];
  const kinds = new Set<string>(rig.items.map(({ kind }) => kind));
  const walked = walkedItems(rig, namedAround(here, around, statement, offset));
  const seams = walked.map(({ item: { name, kind, origin }, isNamed }, i) => {
    const from = origin.file === rig.file ? [] : [`from ${relativeTo(folderOf(here.path), origin.file)}`];
    return item(name, CompletionItemKind.Field, {
      detail: [kind, ...from, ...(isNamed ? ['named here already'] : [])].join(', '),
      sortText: `0${String(i).padStart(5, '0')}`,
      ...documentedBy(features, { kind: 'seam', name, path: rig.file, rig: rig.name }),
    });
  });
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
