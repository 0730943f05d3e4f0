// What the editor at the other end can do, as it says when it starts.
import { type ClientCapabilities, InsertTextMode } from 'vscode-languageserver';

export interface Abilities {
  /** It asks the server for texts that lie on no disk and shows them: the built-in library, the page of a rule. */
  readonly showsTexts: boolean;
  /** It shows a link behind the code of a diagnostic. */
  readonly linksCodes: boolean;
  /** It asks for the sum of a hint, and where it comes from, once somebody looks at it. */
  readonly resolvesHints: boolean;
  /** It asks for the documentation of an item of completion once somebody looks at it. */
  readonly resolvesDocumentation: boolean;
  /** It takes texts with stops in them. */
  readonly takesSnippets: boolean;
  /** It can be told to leave the blanks of a text with several lines as they are. */
  readonly insertsAsIs: boolean;
  /** It takes edits of many files together with the versions that they were made for. */
  readonly editsVersions: boolean;
  /** It asks for the diagnostics of a document and cannot be told. */
  readonly pulls: boolean;
}

export interface KnownAbilities extends Abilities {
  initialize(capabilities: ClientCapabilities): void;
}

/** Nothing until the editor has spoken. */
export function abilities(): KnownAbilities {
  const known: KnownAbilities = {
    ...abilitiesOf({}),
    initialize: (capabilities) => void Object.assign(known, abilitiesOf(capabilities)),
  };
  return known;
}

function abilitiesOf({ workspace, textDocument }: ClientCapabilities): Abilities {
  const { publishDiagnostics: push, diagnostic: pull, inlayHint, completion } = textDocument ?? {};
  const { completionItem } = completion ?? {};
  const resolvable = inlayHint?.resolveSupport?.properties ?? [];
  return {
    showsTexts: workspace?.textDocumentContent !== undefined,
    linksCodes: push?.codeDescriptionSupport ?? pull?.codeDescriptionSupport ?? false,
    resolvesHints: resolvable.includes('tooltip') && resolvable.includes('label.location'),
    resolvesDocumentation: completionItem?.resolveSupport?.properties.includes('documentation') ?? false,
    takesSnippets: completionItem?.snippetSupport ?? false,
    insertsAsIs: completionItem?.insertTextModeSupport?.valueSet.includes(InsertTextMode.asIs) ?? false,
    editsVersions: workspace?.workspaceEdit?.documentChanges ?? false,
    pulls: pull !== undefined && push === undefined,
  };
}
