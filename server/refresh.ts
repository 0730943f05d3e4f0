// Asks the editor to ask again for hints and lenses, after something else than their own file has changed.
import type { ClientCapabilities, Connection } from 'vscode-languageserver';

export interface Refresher {
  initialize(capabilities: ClientCapabilities): void;
  later(): void;
  stop(): void;
}

/** Editors ask again by themselves for the file that is typed in: the others wait for a `pause`, in milliseconds. */
export function refresher(connection: Connection, pause: number): Refresher {
  let asks: readonly (() => Promise<void>)[] = [];
  let timer: NodeJS.Timeout | undefined;
  return {
    initialize({ workspace, textDocument }) {
      asks = [
        ...(workspace?.inlayHint?.refreshSupport ? [() => connection.languages.inlayHint.refresh()] : []),
        ...(workspace?.diagnostics?.refreshSupport && textDocument?.publishDiagnostics === undefined
          ? [() => connection.languages.diagnostics.refresh()]
          : []),
        ...(workspace?.codeLens?.refreshSupport
          ? [() => connection.sendRequest<void>('workspace/codeLens/refresh')]
          : []),
      ];
    },
    later() {
      clearTimeout(timer);
      if (asks.length === 0) return;
      timer = setTimeout(() => {
        // An editor that is closing no longer answers.
        for (const ask of asks) void ask().catch(() => undefined);
      }, pause);
    },
    stop: () => clearTimeout(timer),
  };
}
