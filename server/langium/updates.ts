// What happens to files, in the editor and on disk, told to the session; then open documents are built again.
import { Emitter, URI } from 'langium';
import type { DocumentUpdateHandler, FileOperationHandler, LangiumSharedServices } from 'langium/lsp';
import {
  type CreateFilesParams,
  type DeleteFilesParams,
  type DidChangeWatchedFilesParams,
  FileChangeType,
  type RenameFilesParams,
  type TextDocumentChangeEvent,
} from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { pathOf } from '../places.ts';
import type { Session } from '../session.ts';

type Change = TextDocumentChangeEvent<TextDocument>;

export class RigDocumentUpdates implements DocumentUpdateHandler {
  private readonly services: LangiumSharedServices;
  private readonly session: Session;
  private readonly watched = new Emitter<DidChangeWatchedFilesParams>();
  private readonly changed = new Map<string, URI>();
  private readonly deleted = new Map<string, URI>();
  private scheduled = false;

  constructor(services: LangiumSharedServices, session: Session) {
    this.services = services;
    this.session = session;
  }

  didOpenDocument({ document }: Change): void {
    this.deleted.delete(document.uri);
    this.session.opened(pathOf(document.uri), document.getText());
  }

  didChangeContent({ document }: Change): void {
    this.session.edited(pathOf(document.uri), document.getText());
    this.changed.set(document.uri, URI.parse(document.uri));
    this.build();
  }

  /** Langium keeps a closed document as it was last typed; here the text on disk counts again. */
  didCloseDocument({ document }: Change): void {
    this.changed.delete(document.uri);
    this.deleted.set(document.uri, URI.parse(document.uri));
    this.session.closed(pathOf(document.uri));
    this.build();
  }

  didChangeWatchedFiles(params: DidChangeWatchedFilesParams): void {
    this.watched.fire(params);
    const isGone = ({ type }: { readonly type: FileChangeType }) => type === FileChangeType.Deleted;
    this.onDisk(
      params.changes.filter((change) => !isGone(change)).map(({ uri }) => uri),
      params.changes.filter(isGone).map(({ uri }) => uri),
    );
  }

  /** Watchers tell of a folder that was moved in by one event or none: the editor's own moves are told here too. */
  readonly fileOperations: FileOperationHandler = {
    fileOperationOptions: Object.fromEntries(
      ['didCreate', 'didRename', 'didDelete'].map((operation) => [
        operation,
        { filters: [{ scheme: 'file', pattern: { glob: '**/*' } }] },
      ]),
    ),
    didCreateFiles: ({ files }: CreateFilesParams) =>
      this.onDisk(
        files.map(({ uri }) => uri),
        [],
      ),
    didRenameFiles: ({ files }: RenameFilesParams) =>
      this.onDisk(
        files.map(({ newUri }) => newUri),
        files.map(({ oldUri }) => oldUri),
      ),
    didDeleteFiles: ({ files }: DeleteFilesParams) =>
      this.onDisk(
        [],
        files.map(({ uri }) => uri),
      ),
  };

  get onWatchedFilesChange() {
    return this.watched.event;
  }

  /** Builds what was edited and what is stale, once for all that happens in one turn. */
  build(): void {
    if (this.scheduled) return;
    this.scheduled = true;
    queueMicrotask(() => {
      this.scheduled = false;
      const [changed, deleted] = [[...this.changed.values()], [...this.deleted.values()]];
      this.changed.clear();
      this.deleted.clear();
      const { WorkspaceLock, DocumentBuilder } = this.services.workspace;
      void WorkspaceLock.write((token) => DocumentBuilder.update(changed, deleted, token));
    });
  }

  private onDisk(written: readonly string[], gone: readonly string[]): void {
    this.session.onDisk({ written: written.map(pathOf), gone: gone.map(pathOf) });
  }
}
