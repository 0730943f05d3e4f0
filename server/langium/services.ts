// Langium with our services: text sync, documents, cancellation and dispatch are its own, what the language means is not.
import {
  createDefaultCoreModule,
  EmptyFileSystem,
  inject,
  type LangiumCoreServices,
  type Module,
  type PartialLangiumCoreServices,
} from 'langium';
import {
  createDefaultSharedModule,
  DefaultLanguageServer,
  type LangiumLSPServices,
  type LangiumSharedServices,
  type PartialLangiumSharedServices,
} from 'langium/lsp';
import { CodeActionKind, type Connection, type InitializeParams, type InitializeResult } from 'vscode-languageserver';
import { RigGeneratedModule, RigGeneratedSharedModule } from '../../language/grammar/generated/module.ts';
import { RigModule } from '../../language/grammar/services.ts';
import type { Abilities } from '../abilities.ts';
import { fixAllKind } from '../features/actions.ts';
import { type Features, featureServices } from '../features/index.ts';
import { navigationCapabilities } from '../navigation.ts';
import type { Publisher } from '../publisher.ts';
import { pullOptions } from '../pull.ts';
import type { Session } from '../session.ts';
import { RigDocumentBuilder } from './builder.ts';
import { lineParser } from './parser.ts';
import { RigDocumentUpdates } from './updates.ts';
import { engineValidator } from './validator.ts';
import { openFilesOnly } from './workspace-manager.ts';

class RigLanguageServer extends DefaultLanguageServer {
  private readonly can: Abilities;

  constructor(services: LangiumSharedServices, can: Abilities) {
    super(services);
    this.can = can;
  }

  protected override buildInitializeResult(params: InitializeParams): InitializeResult {
    const result = super.buildInitializeResult(params);
    return {
      ...result,
      serverInfo: { name: 'rigseam' },
      capabilities: {
        ...result.capabilities,
        ...navigationCapabilities,
        completionProvider: { ...result.capabilities.completionProvider, resolveProvider: true },
        codeLensProvider: { resolveProvider: true },
        inlayHintProvider: { resolveProvider: true },
        ...(this.can.pulls ? { diagnosticProvider: pullOptions } : {}),
        codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, CodeActionKind.RefactorRewrite, fixAllKind] },
        workspace: {
          ...result.capabilities.workspace,
          workspaceFolders: { supported: true, changeNotifications: true },
        },
      },
    };
  }
}

/** The services of the language server over one connection. */
export function rigServices(
  connection: Connection,
  session: Session,
  publisher: Publisher,
  features: Features,
): { readonly shared: LangiumSharedServices; readonly updates: RigDocumentUpdates } {
  let updates: RigDocumentUpdates | undefined;
  const updatesOf = (services: LangiumSharedServices) => {
    updates ??= new RigDocumentUpdates(services, session);
    return updates;
  };
  const { lsp, sharedLsp } = featureServices(features);
  const sharedModule: Module<LangiumSharedServices, PartialLangiumSharedServices> = {
    lsp: {
      LanguageServer: (services) => new RigLanguageServer(services, features.can),
      DocumentUpdateHandler: updatesOf,
      FileOperationHandler: (services) => updatesOf(services).fileOperations,
      ...sharedLsp,
    },
    workspace: {
      DocumentBuilder: (services) => new RigDocumentBuilder(services, session),
      WorkspaceManager: openFilesOnly,
    },
  };
  const shared = inject(
    createDefaultSharedModule({ connection, ...EmptyFileSystem }),
    RigGeneratedSharedModule,
    sharedModule,
  );
  const languageModule: Module<LangiumCoreServices, PartialLangiumCoreServices> = {
    parser: { AsyncParser: () => lineParser },
    validation: { DocumentValidator: () => engineValidator(session, publisher) },
  };
  const lspModule: Module<LangiumCoreServices & LangiumLSPServices, LangiumLSPServices> = {
    lsp,
    shared: () => shared,
  };
  shared.ServiceRegistry.register(
    inject(createDefaultCoreModule({ shared }), RigGeneratedModule, RigModule, languageModule, lspModule),
  );
  return { shared, updates: updatesOf(shared) };
}
