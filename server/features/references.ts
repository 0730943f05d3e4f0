// Where a thing is named: in all files, and lit up in this one; and its other names, if somebody gives it one.
import {
  type CancellationToken,
  DocumentHighlightKind,
  type Location,
  LSPErrorCodes,
  type Position,
  ResponseError,
} from 'vscode-languageserver';
import type { Span } from '../../language/grammar/problem.ts';
import { folderOf, resolvePath } from '../../language/resolve/paths.ts';
import { type Meaning, meaningAt } from '../cursor/meaning.ts';
import { type Meant, meantBy } from '../names/meant.ts';
import { type Mention, mentionsIn } from '../names/mentions.ts';
import { filesKnown, findMentions, mentionsOfThing } from '../names/search.ts';
import { locationOf, rangeOf, textsFrom } from '../places.ts';
import { nextTurn } from '../turn.ts';
import { type Features, type Here, hereAt } from './here.ts';
import { namedFile } from './targets.ts';

export interface Pointed {
  readonly here: Here;
  readonly mention: Mention;
  readonly meant: Meant | undefined;
}

/** The name at a position of an open file, and what it means. */
export function pointedAt(features: Features, path: string, position: Position): Pointed | undefined {
  const here = hereAt(features, path);
  if (!here) return undefined;
  const offset = here.document.offsetAt(position);
  // Between two that touch, the one that begins at the cursor is meant.
  const mention = [...mentionsIn(here.lines.lines)].findLast(({ at }) => at[0] <= offset && offset <= at[1]);
  if (!mention) return undefined;
  return { here, mention, meant: meantBy(features.session, path, mention, filesKnown(features, [path])) };
}

/** So many files are read before whatever else waits gets its turn. */
const sliceOfFiles = 20;

/** Every place that names what stands at a position; of a used file, every line that uses it. */
export async function referencesAt(
  features: Features,
  path: string,
  position: Position,
  includeDeclaration: boolean,
  token: CancellationToken,
): Promise<Location[]> {
  const { session, open } = features;
  const texts = textsFrom((file) => session.project.text(file), open);
  const pointed = pointedAt(features, path, position);
  const meant = pointed?.meant;
  if (!meant) return usesOfFile(features, path, position).map(([file, at]) => locationOf(texts, file, at));
  const files = filesKnown(features, meant.entry ? [path, meant.entry.file] : [path]);
  const steps = findMentions(features, meant, files);
  let step = steps.next();
  for (let read = 1; !step.done; step = steps.next(), read++) {
    if (read % sliceOfFiles !== 0) continue;
    await nextTurn();
    if (token.isCancellationRequested) throw new ResponseError(LSPErrorCodes.RequestCancelled, 'cancelled');
  }
  return step.value
    .filter(({ declares }) => includeDeclaration || !declares)
    .map(({ file, mention }) => locationOf(texts, file, mention.at));
}

/** The same in one file: written where it is declared, read elsewhere. */
export function highlightsAt(features: Features, path: string, position: Position) {
  const pointed = pointedAt(features, path, position);
  if (!pointed?.meant) return null;
  const { here, meant } = pointed;
  return mentionsOfThing(features, meant, new Set([path])).map(({ mention, declares }) => ({
    range: rangeOf(here.document, mention.at),
    kind: declares ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
  }));
}

function usesOfFile(features: Features, path: string, position: Position): [file: string, at: Span][] {
  const here = hereAt(features, path);
  const meaning: Meaning | undefined = here && meaningAt(here.lines.lines, here.document.offsetAt(position));
  if (meaning?.kind !== 'text' || meaning.row.word !== 'use') return [];
  const meant = namedFile(path, meaning);
  const { project } = features.session;
  return [...filesKnown(features, [path])].sort().flatMap((file) => {
    if (!project.text(file)?.includes('use')) return [];
    const uses = project.records(file)?.uses ?? [];
    const mine = uses.filter((use) => resolvePath(folderOf(file), use.path) === meant);
    if (!features.session.isOpen(file)) project.release(file);
    return mine.map(({ at }): [string, Span] => [file, at]);
  });
}
