import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addRecord, chosenRigs, readStatement, rigsOf } from '../../language/authoring/added-record.ts';
import { changedLines } from '../../language/authoring/changed-lines.ts';
import { draftOver } from '../../language/authoring/draft.ts';
import { filesOf, today } from '../project/workspace.ts';

const dates = { asOf: today, today };
const rig = (name: string, ...lines: readonly string[]) =>
  `rig ${name} {\n  roof         18 ft by 8 ft  epdm\n  edge         curbside, roadside\n${lines.map((line) => `  ${line}\n`).join('')}}\n`;
const added = (texts: Readonly<Record<string, string>>, typed: string, patterns = ['*']) => {
  const read = readStatement(typed);
  if ('message' in read) throw new Error(read.message);
  const draft = draftOver(filesOf(texts), dates);
  const files = Object.keys(texts).filter((path) => path.endsWith('.rig'));
  const results = addRecord(draft, chosenRigs(rigsOf(draft, files), patterns).rigs, read.statement);
  return {
    results,
    changes: draft.changes(),
    after: Object.fromEntries(draft.changes().map(({ path, after }) => [path, after])),
  };
};
const sealed = 'sealed 2026-05-02 all with GenericSolventLap';

describe('a record for many rigs', () => {
  test('goes behind what happened before it, in form, and touches no other line', () => {
    const heron = rig(
      'Heron',
      '# before',
      'washed    2026-04-01   # with care',
      'washed    2026-06-01',
      'inspect  before 2027-01-01',
    );
    const { results, after, changes } = added({ 'heron.rig': heron, 'teal.rig': rig('Teal') }, sealed);
    expect(results.map(({ name, outcome, place }) => [name, outcome, place?.line])).toEqual([
      ['Heron', 'added', 6],
      ['Teal', 'added', 5],
    ]);
    expect(after['heron.rig']).toContain(
      '# with care\n  sealed    2026-05-02 all with GenericSolventLap\n  washed    2026-06-01',
    );
    expect(changes.flatMap(changedLines).map(({ sign }) => sign)).not.toContain('-');
  });

  test('goes into the newest history that the rig keeps', () => {
    const texts = {
      'heron.rig': rig('Heron', 'records "heron/*.rig"'),
      'heron/2025.rig': 'history Heron {\n  washed    2025-05-01\n}\n',
      'heron/2026.rig': 'history Heron {\n  washed    2026-04-01\n}\n',
    };
    expect(Object.keys(added(texts, sealed).after)).toEqual(['heron/2026.rig']);
  });

  test('is refused where it brings an error, and made for the others', () => {
    const { results, after } = added(
      { 'heron.rig': rig('Heron'), 'teal.rig': rig('Teal', 'mount feet 3 in by 4 in') },
      'sealed 2026-05-02 feet with GenericSolventLap',
    );
    expect(results).toMatchObject([
      { name: 'Heron', outcome: 'refused', why: expect.stringContaining('no seam or item `feet`') },
      { name: 'Teal', outcome: 'added' },
    ]);
    expect(Object.keys(after)).toEqual(['teal.rig']);
  });

  test('is not added twice, however it is spaced', () => {
    const first = added({ 'heron.rig': rig('Heron') }, sealed);
    const again = added(first.after, 'sealed   2026-05-02 all  with GenericSolventLap');
    expect(again.results).toMatchObject([{ outcome: 'there', place: { file: 'heron.rig', line: 5 } }]);
    expect(again.changes).toEqual([]);
  });

  test('may be a plan or have a block', () => {
    const { after } = added({ 'heron.rig': rig('Heron') }, 'inspect before 2027-05-01');
    expect(after['heron.rig']).toContain('\n  inspect  before 2027-05-01\n}');
    const block = added(
      { 'heron.rig': rig('Heron') },
      'inspected 2026-05-02 by "R. Adeyemi" {\ncurbside hairline\nrest sound\n}',
    );
    expect(block.after['heron.rig']).toContain(
      '\n  inspected 2026-05-02 by "R. Adeyemi" {\n    curbside    hairline\n    rest        sound\n  }\n',
    );
    const again = added(block.after, 'inspected 2026-05-02 by "R. Adeyemi" {\ncurbside hairline\nrest sound\n}');
    expect(again.results.map(({ outcome }) => outcome)).toEqual(['there']);
  });

  test('reaches rigs of one file, on one line, with CR LF', () => {
    const text =
      'rig Heron { roof 18 ft by 8 ft epdm  edge curbside, roadside }\r\nrig Teal {\r\n  roof 18 ft by 8 ft epdm\r\n  edge curbside, roadside\r\n}\r\n';
    const { results, after } = added({ 'yard.rig': text }, sealed);
    expect(results.map(({ outcome }) => outcome)).toEqual(['added', 'added']);
    expect(after['yard.rig']?.replaceAll('\r\n', '')).not.toContain('\n');
    expect(added(after as Record<string, string>, sealed).changes).toEqual([]);
  });

  test.each([
    ['', 'Write a record or a plan'],
    ['sealt 2026-05-02 all', 'did you mean `seal`?'],
    ['sealed 2026-13-02 all', 'There is no month 13'],
    ['washed 2026-05-02\nwashed 2026-05-03', 'One record or plan'],
    ['unit "7"', 'part of what a rig is'],
    ['washed 2026-05-02 }\nrig y { washed 2026-05-02', 'One record or plan'],
  ])('is read first: %j', (typed, says) => {
    expect(readStatement(typed)).toMatchObject({ message: expect.stringContaining(says) });
  });

  test('names rigs by patterns, and says which mean none', () => {
    const rigs = ['Heron', 'Teal', 'Tern'].map((name) => ({ file: 'a.rig', name }));
    expect(chosenRigs(rigs, ['Te*']).rigs.map(({ name }) => name)).toEqual(['Teal', 'Tern']);
    expect(chosenRigs(rigs, ['Herron', 'Teal']).unknown).toEqual(['No rig is called `Herron`; did you mean `Heron`?']);
  });

  test('always leaves every line that was there', () => {
    const line = fc.constantFrom(
      'washed 2026-01-05',
      'washed   2026-08-01 # late',
      '# a remark',
      '',
      'inspect before 2027-01-01',
      'unit "7"',
    );
    fc.assert(
      fc.property(fc.array(line, { maxLength: 6 }), (lines) => {
        const before = rig('Heron', ...lines);
        const { after } = added({ 'heron.rig': before }, sealed);
        const left = (after['heron.rig'] ?? before)
          .split('\n')
          .filter((one) => one.trim() !== '' && !one.includes('GenericSolventLap'));
        expect(left).toEqual(before.split('\n').filter((one) => one.trim() !== ''));
      }),
      { numRuns: 40 },
    );
  });
});
