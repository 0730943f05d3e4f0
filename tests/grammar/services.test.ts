import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createRigServices } from '../../language/grammar/services.ts';
import { linesOfText } from '../../language/records/file.ts';
import { wholeExample } from '../worked-example/text.ts';
import { states, textOf } from './states.ts';
import { parsed, read } from './syntax-tree.ts';

// The parser of an open file and the token reader of a closed one must say the same of every text.

const { rig } = createRigServices();

/** Compares the two on a text. Cheap: one string each. */
function differs(text: string): string | undefined {
  const tree = parsed(rig, text);
  const lines = linesOfText(text);
  const left = JSON.stringify([tree.lines, tree.problems, tree.invalid]);
  const right = JSON.stringify([read(text, lines), lines.problems, []]);
  return left === right ? undefined : `${JSON.stringify(text)}\n${left}\n${right}`;
}

describe('the parser of an open file', () => {
  it('reads the worked example', () => {
    const tree = parsed(rig, wholeExample);
    expect(tree.invalid).toEqual([]);
    expect(tree.problems).toEqual([]);
    expect(tree.lines.map((line) => line.head)).toEqual([
      'tape',
      'sealant',
      'primer',
      'cleaner',
      'policy',
      'model',
      'use',
      'use',
      'use',
      'rig',
      'use',
      'use',
      'use',
      'fleet',
    ]);
    expect(differs(wholeExample)).toBeUndefined();
  });

  it('needs unbounded look-ahead in one decision only, where greedy is right', () => {
    // A decision that calls `adaptivePredict` reports errors at its start, not where the text goes wrong.
    const parser: unknown = Reflect.get(rig.parser.LangiumParser, 'wrapper');
    const { lookAheadFuncsCache, shortRuleNameToFull } = parser as {
      lookAheadFuncsCache: Record<string, Record<string, unknown>>;
      shortRuleNameToFull: Record<string, string>;
    };
    const decisions = Object.entries(lookAheadFuncsCache).flatMap(([rule, functions]) =>
      Object.values(functions).map((decide) => ({ rule: shortRuleNameToFull[rule]?.replace('\u200b', ''), decide })),
    );
    expect(decisions.length).toBeGreaterThanOrEqual(10);
    // `8 ft 2 in` is one quantity of two terms, never two quantities.
    const deep = decisions.filter(({ decide }) => String(decide).includes('adaptivePredict'));
    expect(deep.map(({ rule }) => rule)).toEqual(['Quantity']);
  });

  it('never invents a brace or a line end', () => {
    const parser: unknown = Reflect.get(rig.parser.LangiumParser, 'wrapper');
    const { canTokenTypeBeInsertedInRecovery: may } = parser as {
      canTokenTypeBeInsertedInRecovery(type: unknown): boolean;
    };
    const { definition } = rig.parser.Lexer;
    expect(['{', '}', 'EOL', 'WORD'].map((name) => may(definition[name]))).toEqual([false, false, false, true]);
  });

  it('gives line ends at the cursor to completion, which lexes half a text', () => {
    const tokens = (text: string) =>
      rig.parser.Lexer.tokenize(text, { mode: 'partial' }).tokens.map((token) => token.tokenType.name);
    expect(tokens('rig Heron {\n  vin "1"')).toEqual(['WORD', 'WORD', '{', 'WORD', 'STRING']);
    expect(tokens('rig Heron {\n  vin "1"\n  ')).toEqual(['WORD', 'WORD', '{', 'WORD', 'STRING', 'EOL']);
  });

  it('keeps comments out of the tree and in reach', () => {
    const { hidden } = rig.parser.Lexer.tokenize('# one\nrig Heron # two\n');
    expect(hidden.map((token) => token.image)).toEqual(['# one', '# two']);
  });
});

describe('the two readers', () => {
  it.each(states)('agree on a half-typed state: $name', (state) => {
    expect(differs(textOf(state, wholeExample).text)).toBeUndefined();
  });

  it('agree when any line is cut, or lacks a character', () => {
    const lines = wholeExample.split('\n');
    let n = 0;
    for (const [i, line] of lines.entries())
      for (let at = line.search(/\S/); at >= 0 && at < line.length; at += 9)
        for (const typed of [line.slice(0, at + 1), line.slice(0, at) + line.slice(at + 1)]) {
          n++;
          expect(differs([...lines.slice(0, i), typed, ...lines.slice(i + 1)].join('\n'))).toBeUndefined();
        }
    expect(n).toBeGreaterThan(800);
  });

  const odd = [
    '\ufeff',
    '\r',
    '\r\n',
    '\t',
    '\u00a0',
    '\u2028',
    '\0',
    '\ud83d\ude90',
    '\ud800',
    '\udc00',
    '\v',
    '\u0001unit',
    'é',
    '屋',
    '½',
  ];
  const marks = [
    '{',
    '}',
    '{}',
    '}{',
    ',',
    ',,',
    '"',
    '\\',
    '#',
    '##',
    '%',
    '$',
    '/',
    '-',
    '--',
    ':',
    '<',
    '\n',
    '\n\n',
  ];

  it.each(odd.map((text) => [JSON.stringify(text), text]))('agree where %s stands anywhere', (_, text) => {
    const whole = wholeExample.slice(0, 420);
    for (let at = 0; at <= whole.length; at += 7) {
      const there = whole.slice(0, at) + text + whole.slice(at);
      if (text === '\0')
        expect(parsed(rig, there)).toMatchObject({ lines: [], problems: [{ rule: 'not-text' }], invalid: [] });
      else expect(differs(there)).toBeUndefined();
    }
  });

  it('agree on damaged files', () => {
    const edit = fc.record({
      at: fc.double({ min: 0, max: 1, noNaN: true }),
      cut: fc.nat(30),
      put: fc.constantFrom(...odd.filter((text) => text !== '\0'), ...marks, 'rig', 'with', 'per', '14 in', '2026-'),
    });
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 8 }), (edits) => {
        const text = edits.reduce((done, { at, cut, put }) => {
          const start = Math.floor(at * done.length);
          return done.slice(0, start) + put + done.slice(start + cut);
        }, wholeExample);
        expect(differs(text)).toBeUndefined();
      }),
      { seed: 28, numRuns: 300 },
    );
  });

  it('agree on texts of nothing but marks', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(...marks, ...odd.filter((text) => text !== '\0'), 'rig', 'A', '1')),
        (pieces) => {
          expect(differs(pieces.join(''))).toBeUndefined();
          expect(differs(pieces.join(' '))).toBeUndefined();
        },
      ),
      { seed: 7, numRuns: 400 },
    );
  });
});
