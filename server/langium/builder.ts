// Builds open documents: those that were edited, then those whose findings are out of date.
import {
  type BuildOptions,
  DefaultDocumentBuilder,
  type DocumentState,
  type LangiumDocument,
  type LangiumSharedCoreServices,
  OperationCancelled,
  type URI,
  UriUtils,
} from 'langium';
import type { CancellationToken } from 'vscode-languageserver';
import { pathOf } from '../places.ts';
import type { Session } from '../session.ts';

export class RigDocumentBuilder extends DefaultDocumentBuilder {
  private readonly session: Session;

  constructor(services: LangiumSharedCoreServices, session: Session) {
    super(services);
    this.session = session;
  }

  /** Langium would check every document with an unknown name again on each keystroke; the session knows what is affected. */
  protected override shouldRelink(document: LangiumDocument): boolean {
    return this.session.stale.has(pathOf(document.uri));
  }

  /** What was edited has the lowest state: it is checked and shown first. */
  protected override sortDocuments(documents: LangiumDocument[]): LangiumDocument[] {
    return documents.sort((a, b) => a.state - b.state);
  }

  protected override async buildDocuments(
    documents: LangiumDocument[],
    options: BuildOptions,
    token: CancellationToken,
  ): Promise<void> {
    await super.buildDocuments(documents, options, token);
    if (this.session.isSmall) this.session.checkTogether();
  }

  /** Nothing waits for the workspace: what is known of closed files does not come from here. */
  protected override awaitBuilderState(): Promise<void> {
    return Promise.resolve();
  }

  /** An open document is always built in the end; only for one that is not open there is nothing to wait for. */
  protected override awaitDocumentState(state: DocumentState, uri: URI, token: CancellationToken): Promise<URI> {
    const document = this.langiumDocuments.getDocument(uri);
    const isPending = this.textDocuments?.get(uri) !== undefined && (document === undefined || document.state < state);
    if (!isPending) return super.awaitDocumentState(state, uri, token);
    return new Promise((resolve, reject) => {
      const built = this.onDocumentPhase(state, (done) => {
        if (UriUtils.equals(done.uri, uri)) settle(() => resolve(uri));
      });
      const cancelled = token.onCancellationRequested(() => settle(() => reject(OperationCancelled)));
      const settle = (how: () => void) => {
        built.dispose();
        cancelled.dispose();
        how();
      };
    });
  }
}
