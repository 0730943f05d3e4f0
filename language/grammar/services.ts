// The Langium services of the grammar: they give an open file its syntax tree, from the same tokens as a closed one.
import type { TokenType, TokenVocabulary } from 'chevrotain';
import {
  createDefaultCoreModule,
  createDefaultSharedCoreModule,
  createParser,
  DEFAULT_TOKENIZE_OPTIONS,
  type DefaultSharedCoreModuleContext,
  EmptyFileSystem,
  inject,
  type LangiumCoreServices,
  LangiumParser,
  type LangiumSharedCoreServices,
  type Lexer,
  type LexerResult,
  type LexingReport,
  type Module,
  type PartialLangiumCoreServices,
  type TokenBuilder,
  type TokenizeOptions,
} from 'langium';
import { layoutOptions } from '../statements/layout-kinds.ts';
import { RigGeneratedModule, RigGeneratedSharedModule } from './generated/module.ts';
import { layout } from './layout.ts';
import { refusal } from './limits.ts';
import type { Problem } from './problem.ts';
import { lex, tokenTypes } from './tokens.ts';

/**
 * What lexing found. `diagnostics` stays empty, or Langium would show every problem a second time: the records of a
 * file carry the same problems with their fixes.
 */
export interface RigLexingReport extends LexingReport {
  readonly problems: readonly Problem[];
}

/** The token types of the closed files' lexer, so that there is one lexer. */
class RigTokenBuilder implements TokenBuilder {
  buildTokens(): TokenVocabulary {
    return [...tokenTypes];
  }
}

/** Lexer and layout pass in one. Text that is refused (too large, not text) has no tokens. Never fails. */
class RigLexer implements Lexer {
  readonly definition = Object.fromEntries(tokenTypes.map((type) => [type.name, type]));

  tokenize(text: string, options: TokenizeOptions = DEFAULT_TOKENIZE_OPTIONS): LexerResult {
    const refused = refusal(text);
    if (refused) return { tokens: [], hidden: [], errors: [], report: report([refused]) };
    const { tokens, comments } = lex(text);
    const laid = layout(tokens, { ...layoutOptions, partial: options.mode === 'partial' });
    return { tokens: laid.tokens, hidden: comments, errors: [], report: report(laid.problems) };
  }
}

const report = (problems: readonly Problem[]): RigLexingReport => ({ diagnostics: [], problems });

/** Braces and line ends come from the layout pass alone: a parser that invents one moves statements to other blocks. */
const neverInvented = new Set(['{', '}', 'EOL']);

class RigParser extends LangiumParser {
  constructor(services: LangiumCoreServices) {
    super(services);
    // Chevrotain's own hook for what recovery may insert; Langium hands over no way to override it.
    Object.assign(this.wrapper, {
      canTokenTypeBeInsertedInRecovery: (type: TokenType) => !neverInvented.has(type.name),
    });
  }
}

function rigParser(services: LangiumCoreServices): LangiumParser {
  const parser = createParser(services.Grammar, new RigParser(services), services.parser.Lexer.definition);
  parser.finalize();
  return parser;
}

/** What is ours among the services of the language. A text keeps its quotes in the tree: `lines.ts` takes them off. */
export const RigModule: Module<LangiumCoreServices, PartialLangiumCoreServices> = {
  parser: {
    TokenBuilder: () => new RigTokenBuilder(),
    Lexer: () => new RigLexer(),
    ValueConverter: () => ({ convert: (input) => input }),
    LangiumParser: rigParser,
  },
};

/** The services of the language without an editor: in tests, or in a browser worker with the file system of its host. */
export function createRigServices(context: DefaultSharedCoreModuleContext = EmptyFileSystem): {
  readonly shared: LangiumSharedCoreServices;
  readonly rig: LangiumCoreServices;
} {
  const shared = inject(createDefaultSharedCoreModule(context), RigGeneratedSharedModule);
  const rig = inject(createDefaultCoreModule({ shared }), RigGeneratedModule, RigModule);
  shared.ServiceRegistry.register(rig);
  return { shared, rig };
}
