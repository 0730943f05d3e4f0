// Hands over to the server the files that it cannot read itself: all in a browser, else those of file systems that only the
// editor knows.
import { type Disposable, FileType, RelativePattern, Uri, type WorkspaceFolder, workspace } from 'vscode';
import { type FilesSlice, isRead, skippedFolders } from '../language/protocol/index.ts';
import { inBrowser } from './place.ts';

/** How many files are read at once and sent together. */
const sliceSize = 100;

/** Whether the server cannot read what lies there. */
const isMirrored = ({ scheme }: Uri): boolean => inBrowser || scheme !== 'file';

/** Whether the server must wait for files before it can judge any. */
export const needsMirror = (): boolean => (workspace.workspaceFolders ?? []).some(({ uri }) => isMirrored(uri));

/** The text of a file as the server reads it from a disk; undefined where there is none or it cannot be read. */
export async function textOf(uri: Uri): Promise<string | undefined> {
  try {
    // This takes a mark of byte order off, as editors do.
    return new TextDecoder().decode(await workspace.fs.readFile(uri));
  } catch {
    return undefined;
  }
}

/** Keeps the server's copy of the workspace fresh once {@link Mirror.fill} has made it. */
export interface Mirror extends Disposable {
  /** Hands over all folders: to a server that has just started. */
  fill(): Promise<void>;
}

/** `send` may reject: a server that has gone needs no files, and the next one is filled anew. */
export function mirrorTo(send: (slice: FilesSlice) => Promise<unknown>): Mirror {
  let watchers: Disposable[] = [];
  let last: Promise<void> = Promise.resolve();
  /** One after the other: the end of one must not be taken for the end of all. */
  const handOver = (places: readonly Uri[], gone: readonly Uri[] = []): Promise<void> => {
    last = last.then(() => handOverNow(places, gone));
    return last;
  };
  const handOverNow = async (places: readonly Uri[], gone: readonly Uri[]) => {
    try {
      if (gone.length > 0) await send({ ...nothing, gone: gone.map(String), more: places.length > 0 });
      let waiting: Entry[] = [];
      for (const place of places) {
        for await (const entry of filesIn(place)) {
          waiting.push(entry);
          if (waiting.length < sliceSize) continue;
          await send({ ...nothing, ...(await sliceOf(waiting)), more: true });
          waiting = [];
        }
      }
      if (places.length > 0) await send({ ...nothing, ...(await sliceOf(waiting)), more: false });
    } catch {
      // The server has gone.
    }
  };
  const came = (uri: Uri) => void handOver([uri]);
  const watch = () => {
    for (const watcher of watchers) watcher.dispose();
    watchers = foldersToMirror().map((folder) => {
      const watcher = workspace.createFileSystemWatcher(new RelativePattern(folder, '**/*'));
      watcher.onDidCreate(came);
      // Of a photo the name is known already.
      watcher.onDidChange((uri) => isRead(uri.path) && came(uri));
      watcher.onDidDelete((uri) => void handOver([], [uri]));
      return watcher;
    });
  };
  // Not every file system of an editor's tells what happens to it: what is done in the editor is known anyhow.
  const moved = (to: readonly Uri[], from: readonly Uri[] = []) => {
    const [came, gone] = [to.filter(isMirrored), from.filter(isMirrored)];
    if (came.length + gone.length > 0) void handOver(came, gone);
  };
  const subscriptions = [
    workspace.onDidRenameFiles(({ files }) =>
      moved(
        files.map(({ newUri }) => newUri),
        files.map(({ oldUri }) => oldUri),
      ),
    ),
    workspace.onDidCreateFiles(({ files }) => moved(files)),
    workspace.onDidDeleteFiles(({ files }) => moved([], files)),
    workspace.onDidChangeWorkspaceFolders(({ added }) => {
      watch();
      moved(added.map(({ uri }) => uri));
    }),
  ];
  return {
    async fill() {
      watch();
      if (needsMirror()) await handOver(foldersToMirror().map(({ uri }) => uri));
    },
    dispose() {
      for (const each of [...watchers, ...subscriptions]) each.dispose();
    },
  };
}

const nothing = { texts: [], names: [], gone: [] } as const;

const foldersToMirror = (): WorkspaceFolder[] =>
  (workspace.workspaceFolders ?? []).filter(({ uri }) => isMirrored(uri));

interface Entry {
  readonly uri: Uri;
  /** Its text is needed; of others the name is enough. */
  readonly isText: boolean;
}

/** A file, or the files in a folder and below it. As on a disk, links to `.rig` files are not followed. */
async function* filesIn(place: Uri): AsyncGenerator<Entry> {
  const waiting: [uri: Uri, type: FileType][] = [[place, await typeOf(place)]];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    const [uri, type] = next;
    if (type === FileType.Directory) {
      const entries = await workspace.fs.readDirectory(uri).then(
        (found) => found,
        () => [], // a folder that cannot be read holds nothing
      );
      for (const [name, kind] of entries)
        if (!(kind === FileType.Directory && skippedFolders.has(name))) waiting.push([Uri.joinPath(uri, name), kind]);
    } else if (type !== FileType.Unknown) {
      const isText = isRead(uri.path);
      if (!isText || type === FileType.File) yield { uri, isText };
    }
  }
}

const typeOf = (uri: Uri): Thenable<FileType> =>
  workspace.fs.stat(uri).then(
    ({ type }) => type,
    () => FileType.Unknown,
  );

async function sliceOf(entries: readonly Entry[]): Promise<Pick<FilesSlice, 'texts' | 'names'>> {
  const texts = await Promise.all(
    entries.filter(({ isText }) => isText).map(async ({ uri }) => ({ uri: uri.toString(), text: await textOf(uri) })),
  );
  return {
    texts: texts.flatMap(({ uri, text }) => (text === undefined ? [] : [{ uri, text }])),
    names: entries.flatMap(({ uri, isText }) => (isText ? [] : [uri.toString()])),
  };
}
