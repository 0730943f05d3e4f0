import { describe, expect, it } from 'vitest';
import { largestFile } from '../../language/grammar/limits.ts';
import { createRigServices, type RigLexingReport } from '../../language/grammar/services.ts';
import { mostProblems, readFile } from '../../language/records/file.ts';

// What no person would write, but a program, a merge or a wrong click may bring: a place and a reason for each, no crash.

const { rig } = createRigServices();

/** A bound that only a runaway reader breaks, on any machine. */
const seconds = 5;

/** Reads a text both ways, within bounds. */
function bounded(text: string) {
  const start = performance.now();
  const records = readFile(text);
  const tree = rig.parser.LangiumParser.parse(text);
  expect((performance.now() - start) / 1000).toBeLessThan(seconds);
  expect([...tree.parserErrors, ...tree.lexerErrors].map((error) => error.message)).toEqual([]);
  expect(records.problems.length).toBeLessThanOrEqual(mostProblems + 1);
  for (const { at } of records.problems) {
    expect(at[0]).toBeGreaterThanOrEqual(0);
    expect(at[0]).toBeLessThanOrEqual(at[1]);
    expect(at[1]).toBeLessThanOrEqual(text.length);
  }
  return {
    ...records,
    rules: [...new Set(records.problems.map(({ rule }) => rule))],
    report: tree.lexerReport as RigLexingReport,
  };
}

describe('a file that holds nothing', () => {
  it.each([
    ['nothing', ''],
    ['a byte order mark', '\ufeff'],
    ['blank lines', '\n \t\r\n\r'],
    ['a remark', '# nothing yet'],
  ])('is right: %s', (_, text) => {
    expect(bounded(text)).toMatchObject({ uses: [], declarations: [], problems: [] });
  });
});

describe('a file that is refused', () => {
  it('is not text', () => {
    const { problems, declarations, report } = bounded('rig Heron {\n  vin "\0\u0001\u0002"\n}');
    expect(problems).toMatchObject([{ rule: 'not-text', at: [19, 20] }]);
    expect(declarations).toEqual([]);
    expect(report.problems).toEqual(problems);
  });

  it('is too large', () => {
    const text = 'rig Heron {\n  washed 2026-04-17\n}\n'.repeat(170_000);
    expect(text.length).toBeGreaterThan(5_000_000);
    const { problems, report } = bounded(text);
    expect(problems).toMatchObject([{ rule: 'file-too-large', at: [0, 0] }]);
    expect(problems[0]?.message).toMatch(/5\.\d MB; at most 4 MB/);
    expect(report.problems).toEqual(problems);
  });

  it('is read up to the limit', () => {
    const text = `rig Heron\n#${' '.repeat(largestFile - 11)}`;
    expect(text.length).toBe(largestFile);
    expect(bounded(text)).toMatchObject({ problems: [], declarations: [{ name: 'Heron' }] });
  });
});

describe('a file of one thing without end', () => {
  it('may be opening braces', () => {
    const { rules, problems } = bounded('{'.repeat(10_000));
    expect(rules).toContain('nested-too-deep');
    expect(rules).toContain('missing-heading');
    expect(problems.length).toBeLessThan(50);
  });

  it('may be blocks in blocks', () => {
    const { rules, declarations } = bounded(`${'rig A {\n'.repeat(10_000)}${'}\n'.repeat(10_000)}fleet B`);
    expect(rules).toContain('nested-too-deep');
    // What follows the tangle is read again.
    expect(declarations.map(({ name }) => name)).toEqual(['A', 'B']);
  });

  it('may be closing braces', () => {
    const { rules, problems } = bounded('}'.repeat(10_000));
    expect(rules).toEqual(['stray-brace', 'too-many-problems']);
    expect(problems).toHaveLength(mostProblems + 1);
    expect(problems.at(-1)).toMatchObject({
      message: expect.stringContaining('9500 more problems'),
      at: [mostProblems, mostProblems + 1],
    });
  });

  it('may be a line of a megabyte', () => {
    const text = `rig Heron {\n  sealed 2026-04-20 ${'bath-vent, '.repeat(100_000)}skylight with GreyLap\n}`;
    expect(text.length).toBeGreaterThan(1_000_000);
    const { problems, declarations } = bounded(`${text}\nrig Teal`);
    expect(problems).toMatchObject([{ rule: 'line-too-long' }, { rule: 'missing-value' }]);
    expect(declarations.map(({ name }) => name)).toEqual(['Heron', 'Teal']);
  });

  it('may be a list of two thousand seams, which is read', () => {
    const { problems, declarations } = bounded(`rig A {\n  sealed 2026-04-20 ${'bath-vent, '.repeat(1999)}skylight\n}`);
    expect(problems).toEqual([]);
    expect(declarations[0]?.statements[0]).toMatchObject({ targets: { length: 2000 } });
  });

  it('may be a word of a megabyte', () => {
    expect(bounded('a'.repeat(1_000_000)).rules).toEqual(['unknown-statement']);
    expect(bounded(`rig A {\n ${'seale'.repeat(200_000)} }`).rules).toEqual(['unknown-statement']);
  });

  it('may be quotes', () => {
    expect(bounded('"'.repeat(100_000)).rules).toEqual(['line-too-long', 'unknown-statement']);
    expect(bounded('"\n'.repeat(100_000)).rules).toEqual(['unknown-statement', 'too-many-problems']);
    expect(bounded(`rig A {\n  unit ${'"'.repeat(100_000)}\n}`).rules).toContain('misplaced');
  });

  it('may be digits, backslashes, curly quotes or hash signs', () => {
    for (const [piece, wrong] of [
      ['9', 1],
      ['\\', 1],
      ['\u201c', 1],
      ['#', 0],
      ['1 1/', 1],
      ['1,', 1],
      ['-', 1],
      ['9\u2033', 1],
    ] as const) {
      const { problems } = bounded(`rig A {\n  unit ${piece.repeat(100_000)}\n}`);
      expect({ piece, wrong: problems.length >= wrong }).toEqual({ piece, wrong: true });
    }
  });
});

describe('what people bring from elsewhere', () => {
  it('gives the marks of a merge, each on its line', () => {
    const text = 'rig A {\n<<<<<<< HEAD\n  unit "1"\n||||||| base\n  unit "0"\n=======\n  unit "2"\n>>>>>>> other\n}\n';
    const { problems, declarations } = bounded(text);
    expect(problems.map(({ rule, at }) => [rule, text.slice(...at)])).toEqual([
      ['merge-conflict', '<<<<<<<'],
      ['merge-conflict', '|||||||'],
      ['merge-conflict', '======='],
      ['merge-conflict', '>>>>>>>'],
    ]);
    expect(declarations[0]?.statements).toHaveLength(3);
  });

  it.each([
    ['a US date', 'built 4/18/2026', '4/18/2026', '2026-04-18'],
    ['a date with the day first', 'built 18/4/2026', '18/4/2026', '2026-04-18'],
    ['a date with dots', 'built 18.4.2026', '18.4.2026', '2026-04-18'],
    ['a date that may be two', 'built 4/5/2026', '4/5/2026', undefined],
    ['a thousands comma', 'day-rate 1,450 USD', '1,450', '1450'],
    ['a dollar sign', 'day-rate $1,450.50', '$1,450.50', '1450.50 USD'],
    ['a pound sign', 'day-rate \u00a3140', '\u00a3140', '140 GBP'],
    ['curly quotes', 'unit \u201c1042\u201d', '\u201c1042\u201d', '"1042"'],
    ['inch marks', 'joint rail 14"', '14"', '14 in'],
    ['a foot mark', "joint rail 26'", "26'", '26 ft'],
    ['a prime', 'joint rail 26\u2032', '26\u2032', '26 ft'],
    ['a double prime', 'joint rail 2 1/2\u2033', '2 1/2\u2033', '2 1/2 in'],
    ['30 February', 'built 2026-02-30', '2026-02-30', undefined],
    ['an unknown unit', 'joint rail 26 furlongs', '26 furlongs', undefined],
    ['a unit misspelt', 'joint rail 26 feets', '26 feets', '26 ft'],
    ['a bare number', 'day-rate 140', '140', undefined],
  ])('names %s and says what to write', (_, line, wrong, better) => {
    const text = `rig Heron {\n  ${line}\n  washed 2026-04-17\n}\n`;
    const { problems, declarations } = bounded(text);
    expect(problems).toHaveLength(1);
    const [{ at, message, fixes }] = problems as [(typeof problems)[number]];
    expect(text.slice(...at)).toBe(wrong);
    expect(message).toMatch(better === undefined ? /`|days/ : `${better.split(' ').at(-1)}\``);
    expect(fixes?.map((fix) => fix.text)).toEqual(better === undefined ? undefined : [better]);
    expect(declarations[0]?.statements.map(({ word }) => word)).toEqual(['washed']);
    if (!fixes?.[0]) return;
    const [fix] = fixes;
    expect(readFile(text.slice(0, fix.at[0]) + fix.text + text.slice(fix.at[1])).problems).toEqual([]);
  });
});
