// Langium holds open files only: there is nothing to load at the start, and its requests never wait for the workspace.
import type { WorkspaceManager } from 'langium';
import type { WorkspaceFolder } from 'vscode-languageserver';

export function openFilesOnly(): WorkspaceManager {
  let folders: readonly WorkspaceFolder[] | undefined;
  return {
    initialBuildOptions: {},
    ready: Promise.resolve(),
    get workspaceFolders() {
      return folders;
    },
    initialize(params) {
      folders = params.workspaceFolders ?? undefined;
    },
    initialized: () => Promise.resolve(),
    initializeWorkspace: () => Promise.resolve(),
    searchFolder: () => Promise.resolve([]),
    shouldIncludeEntry: () => false,
  };
}
