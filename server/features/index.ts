// The features of the language server, as Langium's services.
import type { LangiumDocument } from 'langium';
import type { LangiumLSPServices, LangiumSharedLSPServices, LangiumSharedServices } from 'langium/lsp';
import type { Lines } from '../../language/grammar/lines.ts';
import { type FileNode, fileNode } from '../langium/parser.ts';
import { pathOf, type Texts, textsFrom } from '../places.ts';
import type { Session } from '../session.ts';

/** What every feature works with. */
export interface Features {
  readonly session: Session;
  /** The documents of open editors. */
  readonly open: Texts;
}

/** An open document as a feature sees it. */
export interface Here {
  readonly path: string;
  readonly text: string;
  readonly document: LangiumDocument['textDocument'];
  readonly lines: Lines;
  /** Texts of other files, for places in them. */
  readonly texts: Texts;
}

export function hereIn({ session, open }: Features, document: LangiumDocument): Here {
  const path = pathOf(document.uri);
  const now = open.of(path) ?? document.textDocument;
  const text = now.getText();
  let reading: Lines | undefined;
  return {
    path,
    text,
    document: now,
    get lines() {
      // The tree is that of the text before, for as long as a build waits behind a keystroke.
      const node = document.parseResult.value as FileNode;
      reading ??= node.text === text ? node.reading : fileNode(text).reading;
      return reading;
    },
    texts: textsFrom((other) => session.project.text(other), open),
  };
}

type LspModule = {
  [K in keyof LangiumLSPServices['lsp']]?: () => NonNullable<LangiumLSPServices['lsp'][K]>;
};
type SharedLspModule = {
  [K in 'WorkspaceSymbolProvider' | 'TextDocumentContentProvider']?: (
    services: LangiumSharedServices,
  ) => NonNullable<LangiumSharedLSPServices['lsp'][K]>;
};

export function featureServices(_features: Features): { readonly lsp: LspModule; readonly sharedLsp: SharedLspModule } {
  return { lsp: {}, sharedLsp: {} };
}
