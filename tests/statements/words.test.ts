import { describe, expect, it } from 'vitest';
import { readFile } from '../../language/records/file.ts';
import { allTables, vocabulary } from '../../language/statements/vocabulary.ts';
import { clauseWords, conditions, defects, sets, sides } from '../../language/statements/words.ts';
import { fileWith } from './rows.ts';

const table = (name: string) => allTables().find((each) => each.name === name)!;

/** Words that mean something elsewhere, and none that is reserved. */
const likelyNames = [
  ...new Set([
    ...vocabulary.statements,
    ...vocabulary.units.filter((unit) => /^[A-Za-z]/.test(unit)),
    ...conditions,
    ...Object.keys(defects),
    ...sides,
    ...Object.keys(sets),
    ...vocabulary.surfaces,
    ...vocabulary.days,
    'wall',
    'never',
    'none',
    'indoor',
    'wet',
    'not-seen',
  ]),
].filter((word) => !clauseWords.has(word));

const named = (word: string) => `
tape ${word} { width 4 in }
sealant S like ${word} { family hybrid }
model ${word} {
  joint ${word} 26 ft
  opening ${word}-2 16 in by 16 in of ${word}
}
policy ${word} { spare 5 % }
rig ${word} like ${word} under ${word} {
  slide ${word}-3 11 ft by 3 ft on roadside
  washed 2026-04-17
  sealed 2026-04-20 ${word}, ${word}-2 from 1 ft to 2 ft with ${word} used 2 cartridges lot "K2231"
  inspected 2026-04-18 {
    ${word} sound
    ${word}-2, ${word} cracked from 1 ft to 2 ft
  }
  tape ${word} with ${word}
}
`;

describe('words of the language', () => {
  it.each(likelyNames)('may be a name: %s', (word) => {
    const { problems, declarations } = readFile(named(word));
    expect(problems).toEqual([]);
    const rig = declarations.find((declaration) => declaration.kind === 'rig');
    expect(rig).toMatchObject({ name: word, like: { name: word }, under: { name: word } });
    expect(rig?.statements.map((statement) => statement.word)).toEqual([
      'slide',
      'washed',
      'sealed',
      'inspected',
      'tape',
    ]);
    expect(rig?.statements[2]).toMatchObject({
      targets: [{ name: word }, { name: `${word}-2`, stretch: {} }],
      materials: [{ name: word, used: [{}] }],
    });
    expect(rig?.statements[3]).toMatchObject({ findings: [{ targets: [{ name: word }] }, {}] });
  });

  it.each([...clauseWords])('is refused as a name with a reason: %s', (word) => {
    for (const line of [`joint ${word} 26 ft`, `gasket ${word}`]) {
      const { problems } = readFile(fileWith(table('model'), line));
      expect(problems.length).toBeGreaterThan(0);
      expect(problems[0]?.message).toMatch(/`.+`/);
    }
  });

  it.each([
    ['policy', 'labor 48 USD per h', 'labour 48 USD per h'],
    ['policy', 'bead-line center', 'bead-line centre'],
    ['sealant', 'grade self-leveling', 'grade self-levelling'],
    ['surface', 'group molded', 'group moulded'],
  ])('are read in both spellings: in a %s, %s', (block, american, british) => {
    const read = (line: string) => {
      const { problems, declarations } = readFile(fileWith(table(block), line));
      expect(problems).toEqual([]);
      return declarations[0]?.statements.map(({ at, spans, ...said }) => said);
    };
    expect(read(american)).toEqual(read(british));
  });

  it('keeps a surface as it is spelt, and finds it in both', () => {
    const { problems, declarations } = readFile(fileWith(table('tape'), 'bonds-to fiberglass, aluminum, fibreglass'));
    expect(problems).toEqual([]);
    expect(declarations[0]?.statements[0]).toMatchObject({
      surfaces: [{ name: 'fiberglass' }, { name: 'aluminum' }, { name: 'fibreglass' }],
    });
  });

  it.each([
    ['1 cartridge', '1 cartridges'],
    ['2 rolls of 50 ft', '2 roll of 50 ft'],
  ])('are one word in singular and plural: %s', (one, other) => {
    const used = (amount: string) => {
      const { problems, declarations } = readFile(
        fileWith(table('rig'), `sealed 2026-04-20 all with GreyLap used ${amount}`),
      );
      expect(problems).toEqual([]);
      const [record] = declarations[0]?.statements ?? [];
      return JSON.stringify(record, (key, value) =>
        ['at', 'spans', 'text', 'unit'].includes(key) ? undefined : value,
      );
    };
    expect(used(one)).toBe(used(other));
  });
});
