import { FileSystemError, Uri, workspace } from 'vscode';
import type { Folder } from '../language/documents/delivery.ts';

/** A folder of papers on whatever file system the workspace lives on. */
export function folderAt(uri: Uri): Folder {
  return {
    async read(name) {
      try {
        return await workspace.fs.readFile(Uri.joinPath(uri, name));
      } catch (error) {
        if (error instanceof FileSystemError && error.code === 'FileNotFound') return undefined;
        throw error;
      }
    },
    async write(name, bytes) {
      // The editor makes the folders that are missing.
      await workspace.fs.writeFile(Uri.joinPath(uri, name), bytes);
    },
  };
}

/** The folder that output folders are relative to: the file's workspace folder, else the folder of the file itself. */
export function homeOf(file: Uri): Uri {
  return workspace.getWorkspaceFolder(file)?.uri ?? Uri.joinPath(file, '..');
}
