// Braces: whether they balance, and what is said where they do not, each with its fix.
import type { IToken } from 'chevrotain';
import type { Problem } from './problem.ts';
import { isClosed } from './text.ts';

/** Opening braces less closing ones. */
export function braceBalance(tokens: readonly IToken[]): number {
  let n = 0;
  for (const { tokenType } of tokens) {
    if (tokenType.name === '{') n++;
    else if (tokenType.name === '}') n--;
  }
  return n;
}

/** A problem at a token. */
export function problemAt(token: IToken, rule: string, message: string): Problem {
  return { rule, message, at: [token.startOffset, token.startOffset + token.image.length] };
}

/** `heading` opened a block that nothing closes; `last` is the last token in it. */
export function unclosedBlock(heading: IToken, last: IToken, where: string): Problem {
  const end = (last.endOffset as number) + 1;
  const indent = ' '.repeat((heading.startColumn ?? 1) - 1);
  return {
    ...problemAt(heading, 'unclosed-block', `This block is not closed: a \`}\` is missing ${where}.`),
    fixes: [{ label: 'Close the block', at: [end, end], text: `\n${indent}}`, unsure: true }],
  };
}

/** The lines below a heading are a block, but it has no brace; `last` is the last token of its line. */
export function missingOpenBrace(heading: IToken, last: IToken): Problem {
  // A text that is not closed has swallowed the brace: it is mended there.
  if (last.tokenType.name === 'STRING' && !isClosed(last.image))
    return problemAt(
      heading,
      'missing-open-brace',
      'A `{` is missing behind the text that is not closed in this line.',
    );
  const end = (last.endOffset as number) + 1;
  return {
    ...problemAt(heading, 'missing-open-brace', 'A `{` is missing at the end of this line.'),
    fixes: [{ label: 'Write `{`', at: [end, end], text: ' {' }],
  };
}

export function strayBrace(brace: IToken): Problem {
  return {
    ...problemAt(brace, 'stray-brace', 'This `}` closes nothing.'),
    fixes: [{ label: 'Remove this `}`', at: [brace.startOffset, brace.startOffset + 1], text: '' }],
  };
}
