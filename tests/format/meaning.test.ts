// Formatting changes nothing but white space: tokens, comments, statements and records stay what they were.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { format } from '../../language/format/index.ts';
import { layout } from '../../language/grammar/layout.ts';
import { lex } from '../../language/grammar/tokens.ts';
import { layoutOptions } from '../../language/statements/layout-kinds.ts';
import { states, textOf } from '../grammar/states.ts';
import { factsOf } from '../records/facts.ts';
import { wholeExample } from '../worked-example/text.ts';
import { damaged, inForm, respaced, written } from './texts.ts';

/** What a text says to the reader: tokens with the ends of statements, comments, records. */
function meaning(text: string): unknown {
  const { tokens, comments } = lex(text);
  const laid = layout(tokens, layoutOptions);
  return {
    tokens: laid.tokens.map(({ tokenType, image }) => `${tokenType.name} ${image}`),
    comments: comments.map(({ image }) => image.trimEnd()),
    problems: laid.problems.map(({ rule, message }) => [rule, rule === 'unclosed-block' ? '' : message]),
    facts: factsOf(text).map(({ said }) => said.replaceAll(/\s+("|\\n)/g, '$1')),
  };
}

/** A text and what became of it, checked once and for all. */
function holds(text: string): void {
  const once = inForm(text);
  for (const { at, text: put } of format(text).edits) {
    expect(text.slice(...at)).toMatch(/^\s*$/);
    expect(put).toMatch(/^ *$/);
    expect(text.slice(...at)).not.toBe(put);
  }
  expect(meaning(once)).toEqual(meaning(text));
  expect(inForm(once)).toBe(once);
}

describe('formatting', () => {
  it.each(written)('keeps the meaning of $name and needs no second time', ({ text }) => holds(text));

  it.each(written)('leaves the line ends of $name, their mark of byte order and their last line alone', ({ text }) => {
    const windows = text.replaceAll('\n', '\r\n');
    expect(inForm(windows)).toBe(inForm(text).replaceAll('\n', '\r\n'));
    expect(inForm(text.replaceAll('\n', '\r'))).toBe(inForm(text).replaceAll('\n', '\r'));
    expect(inForm(`\ufeff${windows}`)).toBe(`\ufeff${inForm(windows)}`);
    expect(inForm(text.trimEnd())).toBe(inForm(text).trimEnd());
  });

  it.each(states)('keeps a half-typed state: $name', (state) => holds(textOf(state, wholeExample).text));

  it('keeps what is damaged', () => {
    const base = fc.constantFrom(wholeExample, ...written.map(({ text }) => text));
    fc.assert(fc.property(base.chain(damaged), holds), { seed: 1042, numRuns: 1500 });
  });

  it('keeps a text, however it is spaced', () => {
    fc.assert(fc.property(fc.constantFrom(...written.map(({ text }) => text)).chain(respaced), holds), {
      seed: 1042,
      numRuns: 300,
    });
  });

  it('keeps a text that is not read at all', () => {
    for (const text of ['', '\n', '\n\n\n', '   ', '\ufeff', 'rig \0 {', '# only\n']) holds(text);
    expect(format('rig \0 {').left).toHaveLength(1);
  });
});
