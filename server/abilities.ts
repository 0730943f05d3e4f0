// What the editor at the other end can do, as it says when it starts.
import type { ClientCapabilities } from 'vscode-languageserver';

export interface Abilities {
  /** It asks the server for texts that lie on no disk and shows them: the built-in library, the page of a rule. */
  readonly showsTexts: boolean;
  /** It shows a link behind the code of a diagnostic. */
  readonly linksCodes: boolean;
  /** It asks for the diagnostics of a document and does not want to be told. */
  readonly pulls: boolean;
}

export interface KnownAbilities extends Abilities {
  initialize(capabilities: ClientCapabilities): void;
}

/** Nothing until the editor has spoken. */
export function abilities(): KnownAbilities {
  let can: Abilities = { showsTexts: false, linksCodes: false, pulls: false };
  return {
    get showsTexts() {
      return can.showsTexts;
    },
    get linksCodes() {
      return can.linksCodes;
    },
    get pulls() {
      return can.pulls;
    },
    initialize({ workspace, textDocument }) {
      const linksCodes =
        textDocument?.publishDiagnostics?.codeDescriptionSupport ?? textDocument?.diagnostic?.codeDescriptionSupport;
      can = {
        showsTexts: workspace?.textDocumentContent !== undefined,
        linksCodes: linksCodes ?? false,
        pulls: textDocument?.diagnostic !== undefined && textDocument.publishDiagnostics === undefined,
      };
    },
  };
}
