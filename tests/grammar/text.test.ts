import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quoted, unquoted } from '../../language/grammar/text.ts';
import { lex } from '../../language/grammar/tokens.ts';

describe('a text in quotes', () => {
  it.each([
    ['"shop B"', 'shop B', true],
    ['""', '', true],
    ['"', '', false],
    ['"open', 'open', false],
    ['"six \\" wide"', 'six " wide', true],
    ['"ends with \\"', 'ends with "', false],
    ['"ends with \\\\"', 'ends with \\', true],
    ['"\\\\\\"', '\\"', false],
    ['"C:\\new"', 'C:\\new', true],
  ])('%s', (image, text, closed) => {
    expect(unquoted(image)).toEqual({ text, closed });
    expect(lex(image).tokens.map((token) => [token.tokenType.name, token.image])).toEqual([['STRING', image]]);
  });

  it('is read as it was written, whatever is in it', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'binary' }).filter((text) => !/[\r\n]/.test(text)),
        (text) => {
          expect(unquoted(quoted(text))).toEqual({ text, closed: true });
          expect(lex(`${quoted(text)} rest`).tokens.map((token) => token.image)).toEqual([quoted(text), 'rest']);
        },
      ),
      { seed: 3, numRuns: 500 },
    );
  });
});
