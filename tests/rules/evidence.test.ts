import { describe, expect, it } from 'vitest';
import { mended, rigWith, said, under } from './asked.ts';

const text = rigWith(
  'edge curbside',
  'inspected 2026-04-18 paper "report.pdf" {',
  '  curbside cracked photo "crack-1.jpg", "crack-2.jpg"',
  '}',
);
const there = (...paths: string[]) => ({ exists: (path: string) => paths.includes(path) });

describe('photos and papers', () => {
  it('are looked for beside the file of the record', () => {
    const files = { 'rigs/a.rig': text };
    const all = there('rigs/report.pdf', 'rigs/crack-1.jpg', 'rigs/crack-2.jpg');
    expect(said('evidence-missing', files, all)).toEqual([]);
    const findings = said('evidence-missing', files, there('rigs/crack-1.jpg'));
    expect(findings.map((finding) => [finding.severity, under(text, finding)])).toEqual([
      ['information', 'paper "report.pdf"'],
      ['information', 'photo "crack-1.jpg", "crack-2.jpg"'],
    ]);
    expect(findings[1]?.message).toContain('`crack-2.jpg`');
    expect(findings[1]?.message).not.toContain('`crack-1.jpg`');
  });

  it('are looked for beside a claimed history, not beside the rig', () => {
    const files = {
      'a.rig': 'rig Heron { edge curbside\n records "heron/*.rig" }\n',
      'heron/2026.rig': 'history Heron { washed 2026-04-18 photo "clean.jpg" }\n',
    };
    expect(said('evidence-missing', files, there('heron/clean.jpg'))).toEqual([]);
    expect(said('evidence-missing', files, there('clean.jpg'))).toMatchObject([{ file: 'heron/2026.rig' }]);
  });

  it('are not asked for where no files can be seen', () => {
    expect(said('evidence-missing', text)).toEqual([]);
  });
});

describe('backslashes', () => {
  it('are mended in photos, papers and patterns', () => {
    for (const [line, after] of [
      ['washed 2026-04-18 photo "a\\b.jpg", "c.jpg"', 'photo "a/b.jpg", "c.jpg"'],
      ['washed 2026-04-18 paper "a\\b.pdf" by "R. Adeyemi"', 'paper "a/b.pdf" by "R. Adeyemi"'],
      ['records "heron\\*.rig"', 'records "heron/*.rig"'],
      ['inspected 2026-04-18 {\n curbside cracked photo "a\\b.jpg"\n}', 'photo "a/b.jpg"'],
    ] as const) {
      const slip = rigWith('edge curbside', line);
      const [finding, ...more] = said('wrong-path', slip);
      expect(more).toEqual([]);
      const better = mended(slip, finding!);
      expect(better).toContain(after);
      expect(said('wrong-path', better)).toEqual([]);
    }
  });

  it('in a fleet are mended too', () => {
    expect(said('wrong-path', 'fleet Yard { rigs "..\\rigs\\*.rig" }\n')).toHaveLength(1);
  });
});
