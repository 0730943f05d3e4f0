// One language server over one connection.
import {
  addCodeActionHandler,
  addCodeLensHandler,
  addCompletionHandler,
  addDocumentLinkHandler,
  addDocumentSymbolHandler,
  addDocumentUpdateHandler,
  addFileOperationHandler,
  addFoldingRangeHandler,
  addFormattingHandler,
  addGotoDefinitionHandler,
  addHoverHandler,
  addInlayHintHandler,
  addTextDocumentContentRequestHandler,
  addWorkspaceSymbolHandler,
  type LangiumSharedServices,
} from 'langium/lsp';
import {
  type Connection,
  DidChangeWatchedFilesNotification,
  type InitializeParams,
  WatchKind,
  type WorkDoneProgressServerReporter,
} from 'vscode-languageserver';
import {
  type DocumentsReply,
  type DocumentsRequest,
  isOfSheets,
  papersAsk,
  rulesAsk,
  type Settings,
  settingsSchema,
  statusMethod,
} from '../language/protocol/index.ts';
import { relativeTo } from '../language/resolve/paths.ts';
import type { Finding } from '../language/rules/finding.ts';
import { abilities } from './abilities.ts';
import { answer } from './answer.ts';
import { serveAuthoring } from './authoring.ts';
import { type BackgroundPace, backgroundChecks, type Progress } from './background.ts';
import { serveComparisons } from './compared.ts';
import { documentsFor } from './documents.ts';
import { resolveCompletion } from './features/documented.ts';
import { resolveHint } from './features/hints.ts';
import { resolveLens } from './features/lenses.ts';
import { serveCalendars } from './fleet-calendar.ts';
import { fleetFilesAmong } from './fleet-files.ts';
import { awaitsFiles, serveMirror } from './from-client.ts';
import type { Host } from './host.ts';
import { rigServices } from './langium/services.ts';
import { serveNavigation } from './navigation.ts';
import { pathOf, rangeOf, type Texts, textsFrom } from './places.ts';
import { diagnosticsPublisher } from './publisher.ts';
import { answerPulls } from './pull.ts';
import { refresher } from './refresh.ts';
import { serveRoofPlans } from './roof-plan.ts';
import { ruleNames } from './rule-pages.ts';
import { createSession, type Session } from './session.ts';
import { staleNotices } from './stale.ts';
import { statusSender } from './status.ts';
import { serveTables } from './tables.ts';

/** How long what is not urgent waits for more of its kind, in milliseconds. */
export interface Pace extends BackgroundPace {
  readonly status: number;
  readonly refresh: number;
}
const calm: Pace = { dependants: 200, progress: 400, status: 250, refresh: 300 };

/** Serves one editor until it says goodbye. */
export function startServer(connection: Connection, host: Host, pace: Pace = calm): void {
  const session = createSession(host.clock, host.disk, settingsSchema.parse({}), (path, error) => {
    const said = error instanceof Error ? (error.stack ?? error.message) : String(error);
    connection.console.error(`${path} could not be checked: ${said}`);
  });
  const open: Texts = { of: (path) => openDocuments.get(path) };
  const openDocuments = new Map<string, NonNullable<ReturnType<Texts['of']>>>();
  const can = abilities();
  const publisher = diagnosticsPublisher(connection, session, open, can);
  const features = { session, open, can };
  const { shared, updates } = rigServices(connection, session, publisher, features);
  const status = statusSender(
    session,
    () => background.busy || session.held,
    pace.status,
    (said) => void connection.sendNotification(statusMethod, said),
  );
  const background = backgroundChecks(session, workDoneProgress(connection), pace, status.changed);
  const refresh = refresher(connection, pace.refresh);

  const documents = shared.workspace.TextDocuments;
  documents.onDidOpen(({ document }) => {
    const path = pathOf(document.uri);
    openDocuments.set(path, document);
    publisher.opened(path);
  });
  documents.onDidClose(({ document }) => {
    const path = pathOf(document.uri);
    openDocuments.delete(path);
    publisher.closed(path);
  });
  session.onFindings((paths) => {
    publisher.publish(paths);
    status.changed();
  });
  session.onStale(() => {
    updates.build();
    background.wake();
  });
  session.onStale(refresh.later);

  const handleAll = [
    addDocumentUpdateHandler,
    addFileOperationHandler,
    addCompletionHandler,
    addDocumentSymbolHandler,
    addGotoDefinitionHandler,
    addFoldingRangeHandler,
    addFormattingHandler,
    addCodeActionHandler,
    addHoverHandler,
    addInlayHintHandler,
    addCodeLensHandler,
    addDocumentLinkHandler,
    addWorkspaceSymbolHandler,
    addTextDocumentContentRequestHandler,
  ] satisfies ((connection: Connection, services: LangiumSharedServices) => void)[];
  for (const handle of handleAll) handle(connection, shared);

  answerPulls(connection, session, publisher);
  connection.onCompletionResolve((item) => resolveCompletion(features, item));
  connection.onCodeLensResolve((lens) => resolveLens(features, lens));
  connection.languages.inlayHint.resolve((hint) => resolveHint(features, hint));

  const configure = (given: unknown) => {
    session.configure(settingsFrom(given, session.settings));
    publisher.again();
    refresh.later();
    status.changed();
  };
  connection.onDidChangeConfiguration(({ settings }) => configure((settings as { rigseam?: unknown } | null)?.rigseam));

  serveNavigation(connection, features);
  serveMirror(connection, session, host.mirror);
  const stale = staleNotices(connection, session);
  serveRoofPlans(connection, features, stale);
  serveCalendars(connection, features, stale);
  serveAuthoring(connection, features);
  serveTables(connection, features);
  serveComparisons(connection, features, host);
  answer(connection, rulesAsk, ruleNames);
  answer(connection, papersAsk, async (request) => {
    await background.found();
    return papersOf(session, open, host, request);
  });

  let folders: readonly string[] = [];
  const setFolders = (next: readonly string[]) => {
    folders = next;
    session.setFolders(folders.map(pathOf));
    background.discover();
    status.changed();
  };
  connection.onInitialize((params) => {
    configure(params.initializationOptions ?? {});
    session.held = awaitsFiles(params.initializationOptions);
    can.initialize(params.capabilities);
    refresh.initialize(params.capabilities);
    return shared.lsp.LanguageServer.initialize(params).then((result) => {
      folders = foldersOf(params);
      return result;
    });
  });
  connection.onInitialized((params) => {
    shared.lsp.LanguageServer.initialized(params);
    setFolders(folders);
    watchEvidence(connection);
    connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
      const gone = new Set(removed.map(({ uri }) => uri));
      setFolders([...folders.filter((uri) => !gone.has(uri)), ...added.map(({ uri }) => uri)]);
    });
  });
  const stopClock = host.clock.onNewDay(() => {
    session.newDay();
    refresh.later();
    status.changed();
  });
  connection.onShutdown(() => {
    stopClock();
    background.stop();
    status.stop();
    refresh.stop();
    stale.stop();
  });

  documents.listen(connection);
  connection.listen();
}

/** The papers that the client asks for, from the texts as they are typed now. */
async function papersOf(
  session: Session,
  open: Texts,
  host: Host,
  { uri, names, folder, only }: DocumentsRequest,
): Promise<DocumentsReply> {
  const before = (name: string) =>
    folder === undefined ? Promise.resolve(undefined) : host.textAt(`${pathOf(folder)}/${name}`);
  const texts = textsFrom((path) => session.project.text(path), open);
  const root = session.files.roots[0] ?? '';
  const place = ({ file, at }: Finding) => {
    const { line, character } = rangeOf(texts.of(file), at).start;
    return `${relativeTo(root, file)}:${line + 1}:${character + 1}`;
  };
  // All that are found, checked or not.
  const fleetFiles = fleetFilesAmong([...session.workspace.checkedFiles(), ...session.stale], session.files);
  const reply = await documentsFor(session.project, pathOf(uri), names, session.dates, place, before, fleetFiles);
  if (only === undefined || reply.kind === 'choose') return reply;
  return { ...reply, files: reply.files.filter(({ name }) => isOfSheets(name)) };
}

/** Settings as the editor sent them; what is not understood stays as it was. */
function settingsFrom(given: unknown, before: Settings): Settings {
  const parsed = settingsSchema.safeParse(given);
  return parsed.success ? parsed.data : before;
}

function foldersOf({ workspaceFolders, rootUri }: InitializeParams): string[] {
  if (workspaceFolders) return workspaceFolders.map(({ uri }) => uri);
  return rootUri ? [rootUri] : [];
}

/**
 * Pictures and papers that come: the client watches `.rig` files and everything that goes (`client/language-server.ts`),
 * so that nothing is told twice.
 */
function watchEvidence(connection: Connection): void {
  void connection.client
    .register(DidChangeWatchedFilesNotification.type, {
      watchers: [{ globPattern: '**/*.{jpg,jpeg,png,heic,webp,gif,pdf}', kind: WatchKind.Create }],
    })
    .catch(() => undefined); // an editor that cannot be asked; such a file is then seen at the next edit
}

function workDoneProgress(connection: Connection): Progress {
  let reporter: Promise<WorkDoneProgressServerReporter> | undefined;
  // An editor that shows no progress, or that has gone meanwhile.
  const show = (how: (shown: WorkDoneProgressServerReporter) => void) =>
    void reporter?.then(how).catch(() => undefined);
  return {
    begin() {
      reporter = connection.window.createWorkDoneProgress();
      show((shown) => shown.begin('Rigseam: checking rigs', 0, undefined, false));
    },
    report(done, of) {
      show((shown) => shown.report(Math.floor((100 * done) / of), `${done} of ${of}`));
    },
    end() {
      show((shown) => shown.done());
      reporter = undefined;
    },
  };
}
