// The features of the language server, as Langium's services.
import type { LangiumLSPServices, LangiumSharedLSPServices, LangiumSharedServices } from 'langium/lsp';
import { actions } from './actions.ts';
import { completions } from './completion.ts';
import { definitions } from './definition.ts';
import { foldings } from './folding.ts';
import { formatter } from './formatting.ts';
import type { Features } from './here.ts';
import { hints } from './hints.ts';
import { hovers } from './hover.ts';
import { lenses } from './lenses.ts';
import { links } from './links.ts';
import { documentSymbols, workspaceSymbols } from './symbols.ts';
import { virtualTexts } from './virtual-texts.ts';

export type { Features } from './here.ts';

type LspModule = {
  [K in keyof LangiumLSPServices['lsp']]?: () => NonNullable<LangiumLSPServices['lsp'][K]>;
};
type SharedLspModule = {
  [K in 'WorkspaceSymbolProvider' | 'TextDocumentContentProvider']?: (
    services: LangiumSharedServices,
  ) => NonNullable<LangiumSharedLSPServices['lsp'][K]>;
};

export function featureServices(features: Features): { readonly lsp: LspModule; readonly sharedLsp: SharedLspModule } {
  return {
    lsp: {
      CodeActionProvider: () => actions(features),
      CodeLensProvider: () => lenses(features),
      CompletionProvider: () => completions(features),
      DefinitionProvider: () => definitions(features),
      DocumentLinkProvider: () => links(features),
      DocumentSymbolProvider: () => documentSymbols(features),
      Formatter: () => formatter(features),
      FoldingRangeProvider: () => foldings(features),
      HoverProvider: () => hovers(features),
      InlayHintProvider: () => hints(features),
    },
    sharedLsp: {
      WorkspaceSymbolProvider: () => workspaceSymbols(features),
      TextDocumentContentProvider: () => virtualTexts(features),
    },
  };
}
