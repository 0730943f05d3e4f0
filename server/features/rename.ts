// Rename: another name for a thing, everywhere that it is named.
import { LSPErrorCodes, type Position, type Range, ResponseError, type WorkspaceEdit } from 'vscode-languageserver';
import { meaningAt } from '../cursor/meaning.ts';
import type { Meant } from '../names/meant.ts';
import { refusalOf } from '../names/new-name.ts';
import { renaming } from '../names/rename.ts';
import { rangeOf, textsFrom, uriOf } from '../places.ts';
import { type Features, hereAt } from './here.ts';
import { type Pointed, pointedAt } from './references.ts';

/** The name to be changed, or an error that says why it cannot be. */
export function prepareRename(
  features: Features,
  path: string,
  position: Position,
): { readonly range: Range; readonly placeholder: string } {
  const { here, mention } = renameable(features, path, position);
  return { range: rangeOf(here.document, mention.at), placeholder: mention.name };
}

/** The edits of a rename, with the versions of the open texts that they fit; what cannot be is an error that says why. */
export function rename(
  features: Features,
  path: string,
  position: Position,
  name: string,
): { readonly edit: WorkspaceEdit; readonly caution?: string } {
  const { meant } = renameable(features, path, position);
  const got = renaming(features, path, meant, name.trim().normalize('NFC'));
  if (typeof got === 'string') throw refused(got);
  const { session, open, can } = features;
  const texts = textsFrom((file) => session.project.text(file), open);
  const newText = name.trim().normalize('NFC');
  const changes = [...got.places].map(([file, spans]) => ({
    uri: uriOf(file),
    version: open.of(file)?.version ?? null,
    edits: spans.map((at) => ({ range: rangeOf(texts.of(file), at), newText })),
  }));
  const edit: WorkspaceEdit = can.editsVersions
    ? { documentChanges: changes.map(({ uri, version, edits }) => ({ textDocument: { uri, version }, edits })) }
    : { changes: Object.fromEntries(changes.map(({ uri, edits }) => [uri, edits])) };
  return got.caution === undefined ? { edit } : { edit, caution: got.caution };
}

function renameable(features: Features, path: string, position: Position): Pointed & { readonly meant: Meant } {
  const pointed = pointedAt(features, path, position);
  if (!pointed) throw refused(nothingToRename(features, path, position));
  const { meant, mention } = pointed;
  if (!meant) throw refused(`Nothing of the name \`${mention.name}\` is known here, so there is nothing to rename.`);
  const refusal = refusalOf(meant);
  if (refusal) throw refused(refusal);
  if (mention.role === 'former' || (meant.name !== mention.name && meant.kind !== 'surface'))
    throw refused(
      `\`${mention.name}\` is a former name of \`${meant.name}\`: the records that go by it need it as it is.`,
    );
  return { ...pointed, meant };
}

function nothingToRename(features: Features, path: string, position: Position): string {
  const here = hereAt(features, path);
  const meaning = here && meaningAt(here.lines.lines, here.document.offsetAt(position));
  if (meaning?.kind === 'statement' || meaning?.kind === 'clause' || meaning?.kind === 'name')
    return `\`${here?.text.slice(...meaning.at)}\` is a word of the language: it cannot be renamed.`;
  return 'There is no name here that could be changed.';
}

const refused = (sentence: string) => new ResponseError(LSPErrorCodes.RequestFailed, sentence);
