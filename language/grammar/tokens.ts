// The lexer of the language: token types made from the grammar's terminals, one for open and closed files.
import { Lexer as ChevrotainLexer, createToken, type IToken, type TokenType } from 'chevrotain';
import { terminals } from './generated/terminals.ts';

/** Tokens that only the layout pass makes. */
const made = new Set(['UNKNOWN', 'CLAUSE', 'UNIT', 'PER']);

// A pattern that begins with a complement set makes Chevrotain drop its first-character table for the whole lexer
// (2.5 times slower): these two say what they may start with.
const startsWith = (ok: RegExp) =>
  Array.from({ length: 0x10000 }, (_, code) => code).filter((code) => ok.test(String.fromCharCode(code)));
const hints: Record<string, RegExp> = { WS: /[^\S\r\n]/, BAD: /[^\s{},#"A-Za-z0-9%]/ };

function tokenType(name: string, pattern: RegExp | string, hidden = false): TokenType {
  const hint = hints[name];
  return createToken({
    name,
    pattern: made.has(name) ? ChevrotainLexer.NA : pattern,
    ...(name === 'WS' ? { group: ChevrotainLexer.SKIPPED } : hidden ? { group: 'hidden' } : {}),
    ...(hint ? { start_chars_hint: startsWith(hint) } : {}),
    line_breaks: name === 'EOL',
  });
}

const keywords = ['{', '}', ','].map((word) => tokenType(word, word));
const named = terminals.map((t) => tokenType(t.name, new RegExp(t.pattern), t.hidden));

/** All token types in lexer order: braces and comma, then the terminals as the grammar lists them. */
export const tokenTypes: readonly TokenType[] = [...keywords, ...named];

const byName = new Map(tokenTypes.map((type) => [type.name, type]));

/** The token type of that name; a name that the grammar does not have is a bug. */
export function tokenNamed(name: string): TokenType {
  const type = byName.get(name);
  if (!type) throw new Error(`no token type ${name}`);
  return type;
}

const lexer = new ChevrotainLexer([...tokenTypes], {
  positionTracking: 'full',
  ensureOptimizations: true,
  skipValidations: false,
});

/** The tokens of a text, comments apart. Never fails: whatever no other token takes is one BAD token. */
export function lex(text: string): { readonly tokens: IToken[]; readonly comments: IToken[] } {
  const result = lexer.tokenize(text);
  return { tokens: result.tokens, comments: result.groups.hidden ?? [] };
}
