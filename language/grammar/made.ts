// Tokens that the layout pass makes: they stand for nothing in the text and have no width.
import { createTokenInstance, type IToken, type TokenType } from 'chevrotain';

/** A token right behind another, so that "is expected here" points to the cursor. */
export function madeAfter(token: IToken, type: TokenType): IToken {
  const end = token.endOffset as number;
  const line = token.endLine as number;
  const at = token.endColumn as number;
  return made(createTokenInstance(type, '', end + 1, end, line, line, at + 1, at));
}

/** A token right before another. */
export function madeBefore(token: IToken, type: TokenType): IToken {
  const line = token.startLine as number;
  const at = token.startColumn as number;
  return made(createTokenInstance(type, '', token.startOffset, token.startOffset - 1, line, line, at, at - 1));
}

/** The parser makes no syntax node for such a token. */
function made(token: IToken): IToken {
  return Object.assign(token, { isInsertedInRecovery: true });
}

/** Gives a token another type. */
export function retag(token: IToken, type: TokenType): void {
  token.tokenType = type;
  token.tokenTypeIdx = type.tokenTypeIdx as number;
}
