// An open document as a feature sees it, and the rig that a place in it belongs to.
import type { LangiumDocument } from 'langium';
import type { Lines } from '../../language/grammar/lines.ts';
import type { Declaration } from '../../language/records/file.ts';
import type { Abilities } from '../abilities.ts';
import type { Statement } from '../cursor/standing.ts';
import type { RigFigures } from '../figures.ts';
import { type FileNode, fileNode } from '../langium/parser.ts';
import { pathOf, type Texts, textsFrom } from '../places.ts';
import type { Session } from '../session.ts';

/** What every feature works with. */
export interface Features {
  readonly session: Session;
  /** The documents of open editors. */
  readonly open: Texts;
  /** What the editor can do. */
  readonly can: Abilities;
}

export interface Here {
  readonly path: string;
  readonly text: string;
  readonly document: LangiumDocument['textDocument'];
  readonly lines: Lines;
  /** Texts of this and of other files, for places in them. */
  readonly texts: Texts;
}

export function hereIn(features: Features, document: LangiumDocument): Here {
  const path = pathOf(document.uri);
  // The tree is that of the text before, for as long as a build waits behind a keystroke.
  return hereOf(features, path, features.open.of(path) ?? document.textDocument, (text) => {
    const node = document.parseResult.value as FileNode;
    return node.text === text ? node.reading : fileNode(text).reading;
  });
}

/** The same for an open document of which only the path is known. */
export function hereAt(features: Features, path: string): Here | undefined {
  const now = features.open.of(path);
  return now && hereOf(features, path, now, (text) => fileNode(text).reading);
}

function hereOf({ session, open }: Features, path: string, now: Here['document'], read: (text: string) => Lines): Here {
  const text = now.getText();
  let reading: Lines | undefined;
  return {
    path,
    text,
    document: now,
    get lines() {
      reading ??= read(text);
      return reading;
    },
    texts: textsFrom((other) => session.project.text(other), open),
  };
}

/** The declaration around a place: the outermost statement, as a record. */
export function declarationAround(
  { session }: Features,
  path: string,
  around: readonly Statement[],
): Declaration | undefined {
  const start = around[0]?.line.at[0];
  return session.figures(path).records?.declarations.find(({ at }) => at[0] === start);
}

/** The rig or model that a place belongs to; of a history the rig that reads it, wherever that is written. */
export function rigAround(features: Features, path: string, around: readonly Statement[]): RigFigures | undefined {
  const declaration = declarationAround(features, path, around);
  if (!declaration) return undefined;
  const { session } = features;
  if (declaration.kind !== 'history')
    return session.figures(path).rigs.find(({ view }) => view.rig.at[0] === declaration.at[0]);
  for (const file of session.workspace.readersOf(path, declaration.name)) {
    const found = session
      .figures(file)
      .rigs.find(({ view: { rig } }) => rig.kind === 'rig' && rig.events.some((event) => event.file === path));
    if (found) return found;
  }
  return undefined;
}
