// Where a name leads: the place of what it stands for.

import type { Span } from '../../language/grammar/problem.ts';
import { allLines, type Declaration } from '../../language/records/file.ts';
import { patternIn } from '../../language/resolve/claims.ts';
import { sideOf } from '../../language/resolve/items.ts';
import type { Namespace } from '../../language/resolve/names.ts';
import { folderOf, resolvePath } from '../../language/resolve/paths.ts';
import { basesOf } from '../../language/resolve/references.ts';
import type { Item } from '../../language/resolve/types.ts';
import type { Ref } from '../../language/statements/slot.ts';
import { canonical } from '../../language/statements/words.ts';
import type { Meaning } from '../cursor/meaning.ts';
import type { RigFigures } from '../figures.ts';
import { declarationAround, type Features, rigAround } from './here.ts';

export interface Target {
  readonly file: string;
  /** The name of what is meant. */
  readonly at: Span;
  /** All of it. */
  readonly whole: Span;
}

/** The item of a rig that a word means: by its name, a former one, or another word for its side. */
export function itemNamed({ view: { rig } }: RigFigures, name: string): Item | undefined {
  const now = Object.entries(rig.formerly).find(([, before]) => before.includes(name))?.[0];
  const side = sideOf(name, rig.policy.curb.value);
  return rig.items.find((item) => item.name === name || item.name === now || item.name === side);
}

export function targetsOf(features: Features, path: string, meaning: Meaning): Target[] {
  if (meaning.kind === 'text') return filesOf(features, path, meaning);
  if (meaning.kind !== 'name') return [];
  const { name, offers, around } = meaning;
  const { session } = features;
  const declaration = declarationAround(features, path, around);
  // A history is read where its rig is written, and so are its names.
  const rig = rigAround(features, path, around);
  const from = declaration?.kind === 'history' ? (rig?.view.rig.file ?? path) : path;
  const declared = (namespaces: readonly Namespace[]): Target[] => {
    const names = session.project.names(from);
    for (const namespace of namespaces) {
      const entry =
        names.find(namespace, namespace === 'surface' ? canonical(name) : name) ?? names.find(namespace, name);
      if (!entry) continue;
      const { nameAt, whole } = entry.declaration;
      return [{ file: entry.file, at: nameAt, whole }];
    }
    return [];
  };
  for (const offer of offers) {
    switch (offer.kind) {
      case 'seams': {
        const item = rig && itemNamed(rig, name);
        if (item) return [{ file: item.origin.file, at: item.origin.at, whole: item.origin.at }];
        break;
      }
      case 'materials':
        return declared(['material']);
      case 'surfaces':
        return declared(['surface']);
      case 'policies':
        return declared(['policy']);
      case 'groups': {
        const groups = declared(['group']);
        if (groups.length > 0) return groups;
        break;
      }
      case 'crews':
        return declaration ? crewOf(declaration, name, path) : [];
      case 'bases':
        return declared(declaration ? basesOf(declaration) : []);
      case 'rigs':
        return session
          .figures(path)
          .fleets.flatMap(({ fleet }) => fleet.rigs)
          .filter((one) => one.name === name)
          .map((one) => ({ file: one.file, at: one.nameAt, whole: one.at }));
      case 'new-name':
        if (meaning.row.word === 'history' && rig)
          return [{ file: rig.view.rig.file, at: rig.view.rig.nameAt, whole: rig.view.rig.at }];
        break;
    }
  }
  return [];
}

/** Where a fleet declares a crew. */
function crewOf(declaration: Declaration, name: string, file: string): Target[] {
  for (const line of allLines(declaration)) {
    const own = line.word === 'crew' ? (line as { readonly name?: Ref }).name : undefined;
    if (own?.name === name) return [{ file, at: own.at, whole: line.at }];
  }
  return [];
}

/** The files behind a text: of `use` and papers the one that is named, of patterns all that fit. */
function filesOf({ session }: Features, path: string, meaning: Meaning & { readonly kind: 'text' }): Target[] {
  const start = { at: [0, 0], whole: [0, 0] } as const;
  if (meaning.row.word === 'records' || meaning.row.word === 'rigs') {
    const { folder, fits } = patternIn(path, meaning.text);
    return session.files
      .under(folder)
      .filter(fits)
      .map((file) => ({ file, ...start }));
  }
  const file = namedFile(path, meaning);
  return file !== undefined && session.files.exists(file) ? [{ file, ...start }] : [];
}

/** The path that a text names, if it is one that names a file. */
export function namedFile(path: string, meaning: Meaning & { readonly kind: 'text' }): string | undefined {
  const clause = meaning.before.findLast((part) => part.kind === 'clause');
  const word = clause?.kind === 'clause' ? clause.text : meaning.row.word;
  const isPath = word === 'use' || word === 'photo' || word === 'paper';
  return isPath ? resolvePath(folderOf(path), meaning.text) : undefined;
}
