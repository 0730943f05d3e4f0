// Requests that go straight from the connection to their feature, and what is told of them at the start.
// Linked editing is not among them, on purpose: a name is used in other files too, and one that changes in this file only
// while it is typed breaks them with every key. Rename changes all of them at once.
import { type Connection, MessageType, type ServerCapabilities, ShowMessageNotification } from 'vscode-languageserver';
import { colours, legend } from './features/colours.ts';
import type { Features } from './features/here.ts';
import { likeWhat, prepareHierarchy, whatIsLike } from './features/hierarchy.ts';
import { highlightsAt, referencesAt } from './features/references.ts';
import { prepareRename, rename } from './features/rename.ts';
import { selectionRanges } from './features/selection.ts';
import { signatureAt } from './features/signature.ts';
import { pathOf } from './places.ts';

export const navigationCapabilities = {
  referencesProvider: true,
  documentHighlightProvider: true,
  renameProvider: { prepareProvider: true },
  typeHierarchyProvider: true,
  selectionRangeProvider: true,
  semanticTokensProvider: { legend, full: true, range: true },
  signatureHelpProvider: { triggerCharacters: [' ', ','], retriggerCharacters: [' ', ','] },
} satisfies ServerCapabilities;

export function serveNavigation(connection: Connection, features: Features): void {
  connection.onReferences(({ textDocument: { uri }, position, context }, token) =>
    referencesAt(features, pathOf(uri), position, context.includeDeclaration, token),
  );
  connection.onDocumentHighlight(({ textDocument: { uri }, position }) =>
    highlightsAt(features, pathOf(uri), position),
  );
  connection.onPrepareRename(({ textDocument: { uri }, position }) => prepareRename(features, pathOf(uri), position));
  connection.onRenameRequest(({ textDocument: { uri }, position, newName }) => {
    const { edit, caution } = rename(features, pathOf(uri), position, newName);
    if (caution !== undefined)
      void connection.sendNotification(ShowMessageNotification.type, { type: MessageType.Info, message: caution });
    return edit;
  });
  connection.languages.typeHierarchy.onPrepare(({ textDocument: { uri }, position }) =>
    prepareHierarchy(features, pathOf(uri), position),
  );
  connection.languages.typeHierarchy.onSupertypes(({ item }) => likeWhat(features, item));
  connection.languages.typeHierarchy.onSubtypes(({ item }) => whatIsLike(features, item));
  connection.onSelectionRanges(({ textDocument: { uri }, positions }) =>
    selectionRanges(features, pathOf(uri), positions),
  );
  connection.languages.semanticTokens.on(({ textDocument: { uri } }) => colours(features, pathOf(uri)));
  connection.languages.semanticTokens.onRange(({ textDocument: { uri }, range }) =>
    colours(features, pathOf(uri), range),
  );
  connection.onSignatureHelp(({ textDocument: { uri }, position, context }) =>
    signatureAt(features, pathOf(uri), position, context?.triggerKind),
  );
}
