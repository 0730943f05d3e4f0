import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { inspectionLines, type SaidInspection, type SaidOfSeam } from '../../language/authoring/inspection-block.ts';
import { inspectionInsertion } from '../../language/authoring/inspection-place.ts';
import { readFile } from '../../language/records/file.ts';
import { check, projectOf } from '../project/workspace.ts';

const form = { indent: '  ', dateAt: 11, innerIndent: '    ' };
const seams = ['front', 'curbside', 'bath-vent'];
const said = (findings: readonly SaidOfSeam[], rest = false): SaidInspection => ({
  date: '2026-11-25',
  by: 'K. Osei',
  said: findings,
  restIsSound: rest,
});
const lines = (findings: readonly SaidOfSeam[], rest = false) => inspectionLines(said(findings, rest), seams, form);

describe('the lines of an inspection', () => {
  it('say once that the rest is sound, when every seam was spoken of', () => {
    expect(
      lines([
        { item: 'front', seen: 'sound' },
        { item: 'curbside', seen: 'hairline', stretch: '6 ft to 9 ft' },
        { item: 'curbside', seen: 'sound' },
        { item: 'bath-vent', seen: 'lifting', wet: true, moisture: '22 %', note: 'forward "lip"' },
      ]),
    ).toEqual([
      '  inspected  2026-11-25 by "K. Osei" {',
      '    curbside    sound',
      '    curbside    hairline     from 6 ft to 9 ft',
      '    bath-vent   lifting wet  moisture 22 %  note "forward \\"lip\\""',
      '    rest        sound',
      '  }',
    ]);
  });

  it('call nothing sound that nobody came to', () => {
    const stopped = lines([
      { item: 'front', seen: 'sound' },
      { item: 'curbside', seen: 'not-seen', note: 'under a tree' },
    ]);
    expect(stopped.slice(1, -1)).toEqual(['    front       sound', '    curbside    not-seen  note "under a tree"']);
    expect(lines([{ item: 'front', seen: 'chalky' }], true).slice(1, -1)).toEqual([
      '    front   chalky',
      '    rest    sound',
    ]);
  });

  it('leave out a rest that there is not', () => {
    const bad = seams.map((item): SaidOfSeam => ({ item, seen: 'cracked' }));
    expect(lines(bad, true).join()).not.toContain('rest');
    expect(lines([], true).slice(1, -1)).toEqual(['    rest    sound']);
  });

  it('name nobody where nobody wants to be named, and keep the columns of the neighbours', () => {
    const [heading, first] = inspectionLines({ ...said([{ item: 'front', seen: 'chalky' }]), by: '' }, seams, {
      indent: '\t',
      dateAt: 13,
      innerIndent: '\t\t',
      seenAt: 17,
    });
    expect(heading).toBe('\tinspected    2026-11-25 {');
    expect(first).toBe('\t\tfront            chalky');
  });
});

const roof = 'roof 20 ft by 8 ft epdm\n  cap front\n  edge curbside\n  opening bath-vent 14 in by 14 in of abs';
const finding: readonly SaidOfSeam[] = [{ item: 'bath-vent', seen: 'cracked' }];

/** The texts after an inspection was written, and where its rig has it; the rig is the first declaration of `a.rig`. */
function written(texts: Readonly<Record<string, string>>, inspection = said(finding, true)) {
  const name = readFile(texts['a.rig'] as string).declarations.find(({ kind }) => kind === 'rig')?.name;
  const blocks = Object.entries(texts).flatMap(([file, text]) =>
    readFile(text)
      .declarations.filter((one) => one.name === name && (one.kind === 'rig' || one.kind === 'history'))
      .map(({ at }) => ({ file, text, start: at[0] })),
  );
  const change = inspectionInsertion(blocks, inspection, seams);
  if (!change) throw new Error('nothing was written');
  const old = texts[change.file] as string;
  const text = old.slice(0, change.at[0]) + change.text + old.slice(change.at[1]);
  const after = { ...texts, [change.file]: text };
  const events =
    projectOf(after)
      .rigs('a.rig')
      .find(({ rig }) => rig.name === name)?.rig.events ?? [];
  const problems = Object.keys(after).flatMap((path) => readFile(after[path] as string).problems);
  expect(problems, text).toEqual([]);
  const found = events.filter(({ record, last }) => record.word === 'inspected' && last === inspection.date);
  expect(found, text).toHaveLength(1);
  expect(found[0]?.findings[0]?.places.map(({ item }) => item)).toEqual(['bath-vent']);
  return { file: change.file, text, events };
}

describe('where an inspection is written', () => {
  it('behind the last thing that happened, with the columns of its neighbours', () => {
    const { text } = written({
      'a.rig': `rig Teal {\n  ${roof}\n\n  found     2021-04-10 all with unknown  # as bought\n  sealed    2024-06-01 all\n  inspect   before 2026-12-31\n}\n`,
    });
    expect(text).toContain(
      '  sealed    2024-06-01 all\n  inspected 2026-11-25 by "K. Osei" {\n    bath-vent   cracked\n    rest        sound\n  }\n  inspect   before',
    );
  });

  it('behind the remark of its neighbour, and before what is planned or comes later', () => {
    const { text } = written({
      'a.rig': `rig Teal {\n  ${roof}\n  found 2021-04-10 all with unknown  # as bought\n  # laid up\n  stored 2026-12-01 to 2027-03-01\n}\n`,
    });
    expect(text).toContain('# as bought\n  inspected 2026-11-25');
    expect(text).toContain('  }\n  # laid up\n  stored');
  });

  it('in front of the first record, and of its remarks, when it is older than all', () => {
    const { text } = written(
      { 'a.rig': `rig Teal {\n  ${roof}\n\n  # Bought.\n  found 2021-04-10 all with unknown\n}\n` },
      { ...said(finding, true), date: '2020-01-05' },
    );
    expect(text).toContain('abs\n\n  inspected 2020-01-05');
    expect(text).toContain('  }\n  # Bought.\n  found');
  });

  it('in the history in which the newest records stand', () => {
    const texts = {
      'a.rig': `rig Teal {\n  ${roof}\n  records "teal/*.rig"\n  found 2021-04-10 all with unknown\n}\n`,
      'teal/2025.rig': 'history Teal {\n  washed     2025-05-01\n}\n',
      'teal/2026.rig': 'history Teal {\n  washed     2026-05-01\n}\n',
    };
    expect(written(texts)).toMatchObject({
      file: 'teal/2026.rig',
      text: 'history Teal {\n  washed     2026-05-01\n  inspected  2026-11-25 by "K. Osei" {\n    bath-vent   cracked\n    rest        sound\n  }\n}\n',
    });
    expect(written(texts, { ...said(finding, true), date: '2025-12-01' }).file).toBe('teal/2025.rig');
    expect(written({ ...texts, 'teal/2025.rig': '', 'teal/2026.rig': 'history Teal {\n}\n' }).file).toBe('a.rig');
  });

  it('at the end of a rig without records, in front of its plans', () => {
    expect(written({ 'a.rig': `rig Teal {\n  ${roof}\n}\n` }).text).toMatch(
      /abs\n\n {2}inspected {4}2026-11-25[^}]+\}\n\}\n$/,
    );
    expect(written({ 'a.rig': `rig Teal {\n  ${roof}\n\n  # next\n  inspect before 2027-01-01\n}\n` }).text).toMatch(
      /\n\n {2}inspected[^}]+\}\n\n {2}# next\n {2}inspect before/,
    );
  });

  it('in a rig without a block, on one line, or whose brace stands behind the last record', () => {
    const model = `model Alder {\n  ${roof}\n}\n`;
    expect(written({ 'a.rig': `${model}rig Teal like Alder  # ours\n` }).text).toMatch(
      /rig Teal like Alder \{\n {2}inspected[^}]+\}\n\} {2}# ours\n$/,
    );
    expect(
      written({
        'a.rig': `${model}rig Teal like Alder { built 2016-03  washed 2021-04-10  inspect before 2027-01-01 }\n`,
      }).text,
    ).toMatch(
      /\{\n {2}built 2016-03\n {2}washed 2021-04-10\n {2}inspected[^}]+\}\n {2}inspect before 2027-01-01\n\}\n$/,
    );
    expect(written({ 'a.rig': `${model}rig Teal like Alder {\n  found 2021-04-10 all with unknown }\n` }).text).toMatch(
      /unknown\n {2}inspected[^}]+\}\n ?\}\n$/,
    );
  });

  it('keeps the line ends of the file', () => {
    const { text } = written({
      'a.rig': `rig Teal {\n  ${roof}\n  found 2021-04-10 all with unknown\n}\n`.replaceAll('\n', '\r\n'),
    });
    expect(text.replaceAll('\r\n', '')).not.toContain('\n');
  });

  it('adds no error to the example, and stands there as its neighbours do', () => {
    const read = (path: string) => readFileSync(`examples/single/${path}`, 'utf8');
    const texts = Object.fromEntries(
      ['wren.rig', 'wren/2024.rig', 'wren/2025.rig', 'wren/2026.rig', 'policy.rig', 'materials.rig'].map((path) => [
        path,
        read(path),
      ]),
    );
    const blocks = ['wren.rig', 'wren/2024.rig', 'wren/2025.rig', 'wren/2026.rig'].map((file) => {
      const text = texts[file] as string;
      return { file, text, start: readFile(text).declarations[0]!.at[0] };
    });
    const change = inspectionInsertion(blocks, said(finding, true), seams)!;
    expect(change.file).toBe('wren/2026.rig');
    expect(change.text).toBe(
      '\n  inspected 2026-11-25 by "K. Osei" {\n    bath-vent   cracked\n    rest        sound\n  }',
    );
    const old = texts[change.file] as string;
    const after = { ...texts, [change.file]: old.slice(0, change.at[0]) + change.text + old.slice(change.at[1]) };
    expect(check(after, 'wren.rig').filter(({ severity }) => severity === 'error')).toEqual([]);
  });
});
