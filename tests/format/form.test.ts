// The form: indents, columns, comments, blank lines, and what is left alone.
import { describe, expect, it } from 'vitest';
import { format } from '../../language/format/index.ts';
import { exampleFile } from '../worked-example/text.ts';
import { inForm } from './texts.ts';

const lines = (...some: string[]) => `${some.join('\n')}\n`;

describe('the form', () => {
  it.each(['yard/materials.rig', 'yard/policy.rig', 'rigs/models.rig', 'rigs/heron.rig', 'yard/fleet.rig'] as const)(
    'of the worked example is its own: %s',
    (path) => expect(format(exampleFile(path))).toEqual({ edits: [], left: [] }),
  );

  it('has a yard stand like a heading in its fleet', () => {
    const text = lines(
      'fleet Shore {',
      '  rigs         "rigs/*.rig"',
      '  yard Harbour {',
      '    crew         Ladder 2 for 8 h each on mon to fri',
      '    serves       Coastal',
      '  }',
      '  crew         2 for 8 h each on mon to fri',
      '}',
    );
    expect(inForm(text.replaceAll(/ {2,}/g, ' '))).toBe(text);
  });

  it('is two blanks a level, and the statement word in a width of its class', () => {
    expect(
      inForm(
        lines(
          'rig   Heron like   Alder28{',
          'unit "1042"',
          '\tsealed 2026-04-20   bath-vent ,skylight with GreyLap used 2 cartridges',
          'inspected 2026-04-18 {',
          'rest sound',
          '      }',
          '   tape front with EdgeTape4 after 2027-04-15   ',
          ' }',
          'policy Yard {',
          'tax 6.5% on materials',
          '}',
        ),
      ),
    ).toBe(
      lines(
        'rig Heron like Alder28 {',
        '  unit         "1042"',
        '  sealed    2026-04-20 bath-vent, skylight with GreyLap used 2 cartridges',
        '  inspected 2026-04-18 {',
        '    rest        sound',
        '  }',
        '  tape     front with EdgeTape4 after 2027-04-15',
        '}',
        'policy Yard {',
        '  tax            6.5 % on materials',
        '}',
      ),
    );
  });

  it('moves the columns of a run in steps of four, so that a longer name seldom rewrites its neighbours', () => {
    const model = (name: string) =>
      lines(
        'model Alder {',
        `  opening ${name} 16 in by 16 in at 18 ft, 2 ft of abs`,
        '  opening vent 16 in by 16 in at 18 ft, 2 ft of abs',
        '}',
      );
    const second = (name: string) => inForm(model(name)).split('\n')[2];
    const forms = Array.from({ length: 24 }, (_, n) => second('x'.repeat(n + 1)));
    expect(second('x')).toBe('  opening      vent        16 in by 16 in      at 18 ft, 2 ft  of abs');
    expect(new Set(forms).size).toBe(5);
    expect(forms.slice(0, 11).every((form) => form === forms[0])).toBe(true);
  });

  it('aligns like lines only: a blank line, a comment line or another word ends the run', () => {
    const long = '  opening a-very-long-name 16 in by 16 in';
    const short = '  opening vent 16 in by 16 in';
    const alone = '  opening      vent        16 in by 16 in';
    const below = (...between: string[]) =>
      inForm(lines('model Alder {', long, ...between, short, '}'))
        .trimEnd()
        .split('\n')
        .at(-2);
    expect(below()).toBe('  opening      vent                16 in by 16 in');
    expect(below('')).toBe(alone);
    expect(below('  # the bath')).toBe(alone);
    expect(below('  drain spout')).toBe(alone);
  });

  it('keeps columns that people made, and mends the line that fell out of them', () => {
    expect(
      inForm(
        lines(
          'rig Heron {',
          '  tape     rear              with WipeAlcohol, SeamStrip4  after 2027-04-15',
          '  tape     front             with WipeAlcohol, SeamStrip4  after 2027-04-15',
          '  tape     roadside with WipeAlcohol after 2027-04-15',
          '}',
        ),
      ),
    ).toBe(
      lines(
        'rig Heron {',
        '  tape     rear        with WipeAlcohol, SeamStrip4    after 2027-04-15',
        '  tape     front       with WipeAlcohol, SeamStrip4    after 2027-04-15',
        '  tape     roadside    with WipeAlcohol                after 2027-04-15',
        '}',
      ),
    );
    expect(inForm(lines('rig Heron {', '  tape     front  with EdgeTape4', '}'))).toContain('front with');
  });

  it('leaves comments on their lines, in their columns where they fit', () => {
    expect(
      inForm(
        lines(
          '      # of the yard',
          'policy Yard {',
          '# in season',
          'inspect every 6 months       # spring',
          'season 04-15 to 10-15        # frost before',
          'real-interest 3 %# in real terms',
          '    # the end',
          '}# last',
        ),
      ),
    ).toBe(
      lines(
        '# of the yard',
        'policy Yard {',
        '  # in season',
        '  inspect        every 6 months  # spring',
        '  season         04-15 to 10-15  # frost before',
        '  real-interest  3 %  # in real terms',
        '  # the end',
        '}  # last',
      ),
    );
  });

  it('keeps single blank lines, none at the start and the end of a block', () => {
    expect(inForm('\n\nrig A {\n\n\n  unit         "1"\n \n\t\n  built        2016\n\n}\n\n\n\nrig B\n\n\n')).toBe(
      'rig A {\n  unit         "1"\n\n  built        2016\n}\n\nrig B\n',
    );
  });

  it('keeps one-line blocks on their line, and the line breaks of what goes on', () => {
    expect(inForm('rig A { unit "1"    built 2016 }\n')).toBe('rig A { unit "1"  built 2016 }\n');
    expect(
      inForm(
        lines(
          'policy Yard {',
          'follow-up hairline within 6 months,',
          'cracked within 30 days',
          'source "common practice"',
          '}',
        ),
      ),
    ).toBe(
      lines(
        'policy Yard {',
        '  follow-up      hairline within 6 months,',
        '                 cracked within 30 days',
        '    source "common practice"',
        '}',
      ),
    );
  });

  it('respells nothing', () => {
    const text = lines(
      'sealant A {',
      '  bead         1 in by 1/4 in',
      '  coats        at most 4',
      '  labor   "x"',
      '}',
    );
    expect(inForm(text)).toBe(text);
  });
});

describe('what is damaged', () => {
  it('keeps the words of a line that is not understood as they stand, and says where it is', () => {
    const text = lines('rig A {', '    vin     "1"', ' sealled   2026-04-20    bath-vent', '  built   "2016   ', '}');
    expect(inForm(text)).toBe(
      lines('rig A {', '  vin          "1"', '  sealled   2026-04-20    bath-vent', '  built   "2016   ', '}'),
    );
    expect(format(text).left.map(({ at }) => text.slice(...at))).toEqual([
      'sealled   2026-04-20    bath-vent',
      'built   "2016   ',
    ]);
  });

  it('leaves indents alone from the declaration on in which the braces do not balance', () => {
    const text = lines('rig A {', '   unit    "1"', '   }', 'rig B {', '     unit   "2"', 'rig C {', ' unit  "3"', '}');
    expect(inForm(text)).toBe(
      lines(
        'rig A {',
        '  unit         "1"',
        '}',
        'rig B {',
        '     unit         "2"',
        'rig C {',
        ' unit         "3"',
        '}',
      ),
    );
    expect(format(text).left).toMatchObject([{ at: [text.indexOf('rig B'), text.indexOf('rig B') + 3] }]);
  });
});

describe('a large text', () => {
  it.each([
    ['findings', `history A {\n inspected 2026-04-18 {\n${'rest sound # x\n'.repeat(150_000)}}\n}\n`],
    ['unknown lines', 'nothing known\n'.repeat(150_000)],
    ['braces', '}\n'.repeat(150_000)],
    ['blank lines', `rig A\n${'\n'.repeat(300_000)}rig B\n`],
    ['one line', `rig A { drain a ${'note "x" '.repeat(2000)}}\n`],
    ['columns that people made', `rig A {\n${'tape a  with B  after 2026-01-01\n'.repeat(60_000)}}\n`],
  ])(
    'of %s is formatted in seconds',
    (_what, text) => {
      const { edits } = format(text);
      expect(edits.every(({ at: [start, end] }) => start <= end)).toBe(true);
    },
    10_000,
  );
});

describe('a range', () => {
  it('touches its lines only, and gives them the form that they have in the whole', () => {
    const text = lines('rig A {', 'unit "1"', '', '', 'built 2016', 'vin "1"', '}').replaceAll('\n', '\r\n');
    const whole = inForm(text).split('\r\n');
    for (let first = 0; first < 7; first++) {
      const { edits } = format(text, { first, last: first });
      expect(edits.every(({ line }) => line === first)).toBe(true);
      for (const { at } of edits) {
        expect(text.slice(0, at[0]).split('\n').length - 1).toBe(first);
        expect(text.slice(0, at[1]).trimEnd().split('\n').length - 1).toBeLessThanOrEqual(first);
      }
    }
    expect(format(text, { first: 4, last: 4 }).edits).toHaveLength(2);
    expect(whole[3]).toBe('  built        2016');
  });
});
