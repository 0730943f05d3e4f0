import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { beforeAll, describe, expect, it } from 'vitest';
import { createOnigScanner, createOnigString, loadWASM } from 'vscode-oniguruma';
import { INITIAL, parseRawGrammar, Registry } from 'vscode-textmate';
import { printGrammar } from '../../client/syntaxes/grammar.ts';
import { vocabulary } from '../../language/statements/vocabulary.ts';

const file = new URL('../../client/syntaxes/rig.tmLanguage.json', import.meta.url);

/** The innermost scope of each token that has one, by the editor's own engine: `word scope`. */
let coloured: (text: string) => string[];

beforeAll(async () => {
  const wasm = createRequire(import.meta.url).resolve('vscode-oniguruma/release/onig.wasm');
  await loadWASM(readFileSync(wasm).buffer as ArrayBuffer);
  const registry = new Registry({
    onigLib: Promise.resolve({ createOnigScanner, createOnigString }),
    loadGrammar: async () => parseRawGrammar(printGrammar(vocabulary), 'rig.tmLanguage.json'),
  });
  const grammar = await registry.loadGrammar('source.rig');
  if (!grammar) throw new Error('the grammar did not load');
  coloured = (text) => {
    let state = INITIAL;
    return text.split('\n').flatMap((line) => {
      const result = grammar.tokenizeLine(line, state);
      state = result.ruleStack;
      return result.tokens.flatMap(({ startIndex, endIndex, scopes }) => {
        const scope = scopes.at(-1)!;
        const word = line.slice(startIndex, endIndex).trim();
        return scope === 'source.rig' || word === '' ? [] : [`${word} ${scope.replace(/\.rig$/, '')}`];
      });
    });
  };
});

describe('the TextMate grammar', () => {
  it('is the one that the statement table gives (npm run generate:colours)', () => {
    expect(readFileSync(file, 'utf8')).toBe(printGrammar(vocabulary));
  });

  it('colours a declaration and its name', () => {
    expect(coloured('rig Heron like Alder28 under Yard {')).toEqual([
      'rig storage.type',
      'Heron entity.name.type',
      'like keyword.operator.expression',
      'under keyword.operator.expression',
      '{ punctuation.section.block.begin',
    ]);
  });

  it('colours a record: verb, date, item, condition, quantity', () => {
    expect(
      coloured('  inspected 2026-04-18 by "R. Adeyemi" {\n    curbside    hairline  from 6 ft to 2 1/2 in'),
    ).toEqual([
      'inspected keyword.control.verb',
      '2026-04-18 constant.numeric.date',
      'by keyword.operator.expression',
      '" string.quoted.double',
      'R. Adeyemi string.quoted.double',
      '" string.quoted.double',
      '{ punctuation.section.block.begin',
      'curbside variable.language.side',
      'hairline constant.language.condition',
      'from keyword.operator.expression',
      '6 constant.numeric',
      'ft keyword.other.unit',
      'to keyword.operator.expression',
      '2 1/2 constant.numeric',
      'in keyword.other.unit',
    ]);
  });

  it('finds the statements of a block on one line, and money and rates', () => {
    expect(
      coloured('primer  EdgePrimer { container 1 qt at 24 USD  covers 100 sq-ft per gal  needed-on tpo }'),
    ).toEqual([
      'primer storage.type',
      'EdgePrimer entity.name.type',
      '{ punctuation.section.block.begin',
      'container keyword.other.statement',
      '1 constant.numeric',
      'qt keyword.other.unit',
      'at keyword.operator.expression',
      '24 constant.numeric',
      'USD keyword.other.unit',
      'covers keyword.other.statement',
      '100 constant.numeric',
      'sq-ft keyword.other.unit',
      'per keyword.operator.expression',
      'gal keyword.other.unit',
      'needed-on keyword.other.statement',
      'tpo support.constant.surface',
      '} punctuation.section.block.end',
    ]);
  });

  it('does not find words inside names', () => {
    expect(coloured('  opening rear-vent-2 x')).toEqual(['opening keyword.other.statement']);
  });

  it('ends a text with its line, and knows comments and documentation', () => {
    expect(coloured('  unit "10\n  built 2016-03  # a note')).toEqual([
      'unit keyword.other.statement',
      '" string.quoted.double',
      '10 string.quoted.double',
      'built keyword.other.statement',
      '2016-03 constant.numeric.date',
      '# a note comment.line.number-sign',
    ]);
    expect(coloured('  ## the front cap\n  cap front')[0]).toBe('## the front cap comment.line.documentation');
  });

  it('colours a season', () => {
    expect(coloured('  season 04-15 to 10-15').slice(1)).toEqual([
      '04-15 constant.numeric.date',
      'to keyword.operator.expression',
      '10-15 constant.numeric.date',
    ]);
  });
});
