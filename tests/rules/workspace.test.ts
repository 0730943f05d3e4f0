import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { examined } from '../../language/rules/check.ts';
import type { Finding } from '../../language/rules/finding.ts';
import { summaryOf, workspaceFindings } from '../../language/rules/workspace.ts';
import { projectOf, today } from '../project/workspace.ts';
import { mended, under } from './asked.ts';

const dates = { asOf: today, today };

const summaries = (texts: Readonly<Record<string, string>>) => {
  const project = projectOf(texts);
  return Object.keys(texts).map((path) => summaryOf(project, path, examined(project, path, dates).silences));
};
const across = (texts: Readonly<Record<string, string>>): Finding[] => workspaceFindings(summaries(texts));
const rules = (texts: Readonly<Record<string, string>>) => across(texts).map(({ rule }) => rule);

const washed = 'history Heron { washed 2026-04-17 }\n';

describe('a history', () => {
  it('that its rig claims is read, and so is one beside it', () => {
    expect(rules({ 'rigs/heron.rig': 'rig Heron { records "heron/*.rig" }\n', 'rigs/heron/2026.rig': washed })).toEqual(
      [],
    );
    expect(rules({ 'rigs/heron.rig': `rig Heron { field membrane }\n${washed}` })).toEqual([]);
  });

  it('that its rig does not claim is told, with the line to add', () => {
    const texts = { 'rigs/heron.rig': 'rig Heron { field membrane }\n', 'rigs/heron/2026.rig': washed };
    const [finding, ...more] = across(texts);
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ rule: 'history-unclaimed', severity: 'warning', file: 'rigs/heron/2026.rig' });
    expect(finding?.message).toContain('Add `records "heron/*.rig"` to the rig Heron in ../heron.rig.');
    expect(under(washed, finding!)).toBe('Heron');
  });

  it('beside its rig or above it is named by its file, so that no other is claimed', () => {
    const rig = 'rig Heron { field membrane }\n';
    expect(across({ 'rigs/heron.rig': rig, 'rigs/log.rig': washed })[0]?.message).toContain('records "log.rig"');
    expect(across({ 'rigs/heron.rig': rig, 'log.rig': washed })[0]?.message).toContain('records "../log.rig"');
    expect(across({ 'rigs/heron.rig': rig, 'log/a.rig': washed })[0]?.message).toContain('records "../log/*.rig"');
  });

  it('that two rigs claim is an error', () => {
    const rig = 'rig Heron { records "log/*.rig" }\n';
    const findings = across({ 'a.rig': rig, 'b.rig': rig, 'log/2026.rig': washed });
    expect(findings).toMatchObject([{ rule: 'history-claimed-twice', severity: 'error', file: 'log/2026.rig' }]);
    expect(findings[0]?.related).toHaveLength(2);
  });

  it('of no rig is told, and mended to the nearest name', () => {
    const texts = {
      'heron.rig': 'rig Heron { records "log/*.rig" }\n',
      'log/a.rig': washed.replace('Heron', 'Herron'),
    };
    const [finding] = across(texts);
    expect(finding?.rule).toBe('history-of-no-rig');
    expect(rules({ ...texts, 'log/a.rig': mended(texts['log/a.rig'], finding!) })).toEqual([]);
  });

  it('under a former name of its rig is read', () => {
    const texts = { 'a.rig': 'rig Gull { formerly Heron\n records "log/*.rig" }\n', 'log/a.rig': washed };
    expect(rules(texts)).toEqual([]);
  });
});

describe('something unused', () => {
  const model = 'model Alder28 { roof 28 ft by 8 ft epdm }\n';
  const tape = 'tape Strip4 { width 4 in }\n';
  const policy = 'policy Yard { currency USD }\n';

  it('is a hint where nobody else can use it', () => {
    const text = `${model}${tape}${policy}rig Heron { cap front }\n`;
    const findings = across({ 'a.rig': text });
    expect(findings.map((finding) => under(text, finding))).toEqual(['Alder28', 'Strip4', 'Yard']);
    expect(new Set(findings.map(({ severity }) => severity))).toEqual(new Set(['hint']));
  });

  it('is nothing that is used', () => {
    const text = `${model}${tape}${policy}rig Heron like Alder28 under Yard { tape front with Strip4 }\n`;
    expect(rules({ 'a.rig': text })).toEqual([]);
  });

  it('is nothing in a file that others use, nor in one of materials alone', () => {
    const shared = `${model}${tape}rig Heron like Alder28\n`;
    expect(rules({ 'a.rig': shared, 'b.rig': 'use "a.rig"\nrig Teal like Alder28\n' })).toEqual([]);
    expect(rules({ 'materials.rig': tape })).toEqual([]);
  });

  it('is nothing that a claimed history refers to', () => {
    const rig = `${tape}rig Heron { records "log/*.rig" }\n`;
    const log = 'history Heron { taped 2026-05-01 all with Strip4 }\n';
    expect(rules({ 'a.rig': rig, 'log/a.rig': log })).toEqual([]);
    expect(rules({ 'a.rig': rig, 'log/a.rig': washed })).toEqual(['unused-declaration']);
  });

  it('is not concluded from a file that cannot be read whole', () => {
    expect(rules({ 'a.rig': `${tape}rig Heron { tape front with\n }\n` })).toEqual([]);
  });
});

describe('a `use` line', () => {
  const texts = {
    'materials.rig': 'tape Strip4 { width 4 in }\n',
    'all.rig': 'use "materials.rig"\nmodel Alder28 { roof 28 ft by 8 ft epdm }\n',
  };

  it('that brings nothing is a hint, and the fix removes it', () => {
    const text = 'use "all.rig"\nrig Heron { roof 28 ft by 8 ft epdm }\n';
    const [finding, ...more] = across({ ...texts, 'a.rig': text });
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ rule: 'unused-use', severity: 'hint', file: 'a.rig' });
    expect(mended(text, finding!)).toBe('rig Heron { roof 28 ft by 8 ft epdm }\n');
  });

  it('is needed for what comes through other files, and for claimed histories', () => {
    expect(rules({ ...texts, 'a.rig': 'use "all.rig"\nrig Heron { cap front\n tape front with Strip4 }\n' })).toEqual(
      [],
    );
    expect(rules({ ...texts, 'a.rig': 'use "all.rig"\nrig Heron like Alder28\n' })).toEqual([]);
    const log = { 'log/a.rig': 'history Heron { taped 2026-05-01 all with Strip4 }\n' };
    expect(rules({ ...texts, ...log, 'a.rig': 'use "all.rig"\nrig Heron { records "log/*.rig" }\n' })).toEqual([]);
  });

  it('of a rig is needed by a fleet that books it', () => {
    const rig = { 'heron.rig': 'rig Heron { roof 28 ft by 8 ft epdm }\n' };
    const fleet = 'use "heron.rig"\nfleet Yard { rigs "*.rig"\n booked Heron 2027-06-10 }\n';
    expect(rules({ ...rig, 'yard.rig': fleet })).toEqual([]);
    expect(rules({ ...rig, 'yard.rig': fleet.replace('booked Heron', 'closed') })).toEqual(['unused-use']);
  });

  it('of a file that is not there is reported elsewhere', () => {
    expect(rules({ 'a.rig': 'use "gone.rig"\nrig Heron { cap front }\n' })).toEqual([]);
  });
});

describe('the findings of a workspace', () => {
  const texts = {
    'a.rig': 'tape Strip4 { width 4 in }\nrig Heron { records "log/*.rig" }\n',
    'b.rig': 'use "a.rig"\nrig Heron { records "log/*.rig" }\n',
    'log/2026.rig': washed,
    'log/2027.rig': 'history Gull { washed 2027-04-17 }\n',
    'other/x.rig': 'use "../b.rig"\nrig Teal { cap front }\nhistory Teal { washed 2026-04-17 }\n',
  };

  it('do not depend on the order of the files', () => {
    const expected = across(texts);
    expect(expected).toHaveLength(3);
    fc.assert(
      fc.property(fc.shuffledSubarray(summaries(texts), { minLength: 5 }), (shuffled) => {
        expect(workspaceFindings(shuffled)).toEqual(expected);
      }),
      { numRuns: 30 },
    );
  });

  it('come quickly for ten thousand files', () => {
    const [rig, log] = summaries({
      'rigs/r.rig': 'use "../materials.rig"\nrig Heron { records "r/*.rig"\n tape front with Strip4 }\n',
      'rigs/r/2026.rig': washed,
    });
    const many = Array.from({ length: 5000 }, (_, i) => [
      {
        ...rig!,
        path: `rigs/r${i}.rig`,
        rigs: rig!.rigs.map((r) => ({ ...r, name: `R${i}`, claims: [`rigs/r${i}/*.rig`] })),
      },
      { ...log!, path: `rigs/r${i}/2026.rig`, histories: log!.histories.map((h) => ({ ...h, name: `R${i}` })) },
    ]).flat();
    const materials = summaries({ 'materials.rig': 'tape Strip4 { width 4 in }\n' });
    const start = performance.now();
    expect(workspaceFindings([...many, ...materials])).toEqual([]);
    // Measured at about 0.1 s; a pass that compared all with all would take minutes.
    expect(performance.now() - start).toBeLessThan(3000);
  });
});
