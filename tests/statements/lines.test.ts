import { describe, expect, it } from 'vitest';
import type { Declaration } from '../../language/records/file.ts';
import { readFile } from '../../language/records/file.ts';

/** The only declaration of a text that is read whole. */
function only(text: string): Declaration {
  const { problems, declarations } = readFile(text);
  expect(problems).toEqual([]);
  expect(declarations).toHaveLength(1);
  return declarations[0]!;
}

const words = (text: string) => only(text).statements.map((statement) => statement.word);

describe('a statement is a line', () => {
  it('goes on after a comma', () => {
    expect(only('tape T {\n  bonds-to epdm,\n    abs\n  width 4 in\n}').statements).toMatchObject([
      { word: 'bonds-to', surfaces: [{ name: 'epdm' }, { name: 'abs' }] },
      { word: 'width' },
    ]);
  });

  it('goes on when the next line begins with a comma or a clause word', () => {
    const text =
      'rig A {\n  sealed 2026-04-20 bath-vent\n    , skylight\n    with GreyLap\n    used 2 cartridges\n  washed 2026-04-21\n}';
    expect(only(text).statements).toMatchObject([
      {
        word: 'sealed',
        targets: [{ name: 'bath-vent' }, { name: 'skylight' }],
        materials: [{ name: 'GreyLap', used: [{}] }],
      },
      { word: 'washed' },
    ]);
  });

  it('does not go on behind a block', () => {
    const { problems, declarations } = readFile(
      'rig A {\n  inspected 2026-04-18 {\n    rest sound\n  }\n  with GreyLap\n  washed 2026-04-17\n}',
    );
    expect(problems.map(({ rule }) => rule)).toEqual(['unknown-statement']);
    expect(declarations[0]?.statements.map(({ word }) => word)).toEqual(['inspected', 'washed']);
  });

  it('does not go on after a comma when the next line begins another statement', () => {
    const { problems, declarations } = readFile('tape T {\n  bonds-to epdm,\n  width 4 in\n}');
    expect(problems.map(({ rule }) => rule)).toEqual(['missing-value']);
    expect(declarations[0]?.statements.map(({ word }) => word)).toEqual(['width']);
  });

  it('goes on after a comma in findings only when it is indented deeper', () => {
    const deeper = 'rig A {\n  inspected 2026-04-18 {\n    front,\n      rear sound\n  }\n}';
    expect(only(deeper).statements).toMatchObject([{ findings: [{ targets: [{ name: 'front' }, { name: 'rear' }] }] }]);
    const level = readFile('rig A {\n  inspected 2026-04-18 {\n    front,\n    rear sound\n  }\n}');
    expect(level.problems).toHaveLength(1);
    expect(level.declarations[0]?.statements).toMatchObject([{ findings: [{ targets: [{ name: 'rear' }] }] }]);
  });

  it('begins at a statement word in a block on one line', () => {
    expect(words('primer P { container 1 qt at 24 USD  covers 100 sq-ft per gal needed-on tpo }')).toEqual([
      'container',
      'covers',
      'needed-on',
    ]);
  });

  it('may have its brace on the next line', () => {
    expect(words('tape T\n{\n  width 4 in\n}\n')).toEqual(['width']);
    expect(words('tape T\n\n# why not\n{ width 4 in }')).toEqual(['width']);
  });

  it('may be a rig without a block', () => {
    expect(only('rig Teal like Alder28 under Yard')).toMatchObject({
      name: 'Teal',
      like: { name: 'Alder28' },
      statements: [],
    });
  });

  it.each([
    ['no line end at the end', 'tape T {\n  width 4 in\n}'],
    ['CRLF', 'tape T {\r\n  width 4 in\r\n}\r\n'],
    ['CR', 'tape T {\r  width 4 in\r}\r'],
    ['tabs', 'tape\tT\t{\n\twidth\t4\tin\n}\n'],
    ['no-break spaces', 'tape T {\n\u00a0\u00a0width\u00a04\u00a0in\n}\n'],
    ['a byte order mark', '\ufefftape T {\n  width 4 in\n}\n'],
    ['no indentation', 'tape T {\nwidth 4 in\n}\n'],
    ['no blanks', 'tape T{width 4in}'],
    ['blank lines', '\n\n\ntape T {\n\n\n  width 4 in\n\n}\n\n'],
    ['comments', '# a\ntape T { # b\n  # c\n  width 4 in # d } {\n  # e\n} # f\n# g'],
  ])('reads alike with %s', (_, text) => {
    expect(words(text)).toEqual(['width']);
  });
});

describe('values in their places', () => {
  const model = (line: string) => only(`model A {\n  ${line}\n}`).statements[0] as unknown as Record<string, unknown>;

  it('have `wide` before or after the length', () => {
    const plain = ({ spans, at, ...said }: Record<string, unknown>) => said;
    const [postfix, prefix] = [model('cap front 5 in wide'), model('cap front wide 5 in')];
    expect(postfix.wideBefore).toEqual(prefix.wide);
    expect(plain(postfix)).toEqual({ ...plain(prefix), wide: undefined, wideBefore: prefix.wide });
    expect(model('edge curbside, roadside 3 in wide')).toMatchObject({
      names: ['curbside', 'roadside'],
      wideBefore: {},
    });
    expect(readFile('model A {\n  joint drip-rail 26 ft 4 in wide\n}').problems).toHaveLength(1);
  });

  it('have their own places in the text', () => {
    const text = 'model A {\n  opening bath-vent 16 in by 16 in at 18 ft, 2 ft of abs\n}';
    const { spans, at } = only(text).statements[0]!;
    expect(text.slice(...at)).toBe('opening bath-vent 16 in by 16 in at 18 ft, 2 ft of abs');
    const said = Object.fromEntries(Object.entries(spans).map(([field, span]) => [field, text.slice(...span)]));
    expect(said).toEqual({ name: 'bath-vent', size: '16 in by 16 in', places: 'at 18 ft, 2 ft', surface: 'of abs' });
  });

  it('may be rough dates', () => {
    const rig = only(
      'rig A {\n  built about 2016\n  in-service 2016-05\n  sealed before 2021-04-10 all with unknown\n  washed 2026-04-18 14:30\n}',
    );
    expect(rig.statements).toMatchObject([
      { date: { rough: true, first: '2016-01-01', last: '2016-12-31' } },
      { date: { rough: true, first: '2016-05-01', last: '2016-05-31' } },
      { date: { rough: true, last: '2021-04-09' }, targets: [{ name: 'all' }], materials: [{ name: 'unknown' }] },
      { date: { rough: false, time: '14:30' } },
    ]);
  });

  it('lend the unit of the second to the first of a range', () => {
    const both = only('sealant S {\n  skin 1 to 4 h\n  skin 1 h to 4 h\n}').statements as unknown as {
      span: unknown;
    }[];
    expect(both[0]?.span).toEqual(both[1]?.span);
  });
});

describe('documentation', () => {
  const text =
    '## Lies on the curb side.\n##   Two lines of it.\ntape T {\n  ## Measured.\n  width 4 in # no documentation\n  # nor this\n  roll 50 ft\n\n  ## Too far above.\n\n  end-lap 2 in\n}\n';

  it('stands directly above a declaration or a statement, after two hash signs', () => {
    const tape = only(text);
    expect(tape.doc).toBe('Lies on the curb side.\n  Two lines of it.');
    expect(tape.statements.map((statement) => statement.doc)).toEqual(['Measured.', undefined, undefined]);
  });

  it('is kept through line ends of every kind', () => {
    for (const end of ['\r\n', '\r']) expect(only(text.replaceAll('\n', end)).statements[0]?.doc).toBe('Measured.');
  });
});
