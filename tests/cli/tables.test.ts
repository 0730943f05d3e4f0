// The commands that change many files, as processes: a dry run first, all or nothing, places of what is wrong.
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { type Bundles, bundled } from '../server/bundle.ts';

let bundles: Bundles;
beforeAll(() => {
  bundles = bundled();
});
afterAll(() => bundles.remove());

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'rigseam-tables-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const write = (files: Readonly<Record<string, string>>) => {
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
};
const read = (path: string) => readFileSync(join(folder, path), 'utf8');
const run = (...args: string[]) => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [bundles.commandLine, ...args], {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, CI: '' },
  });
  return { status, stdout, stderr };
};
const today = ['--today', '2026-11-25'];
const rig = (name: string) => `rig ${name} {\n  roof         18 ft by 8 ft  epdm\n  cap          front\n}\n`;

describe('add-record', () => {
  const sealed = 'sealed 2026-05-02 all with GenericSolventLap';

  it('shows first and writes when it is told to', () => {
    write({ 'heron.rig': `\uFEFF${rig('Heron')}`, 'rigs/teal.rig': rig('Teal') });
    const dry = run('add-record', sealed, '--rigs', '*', ...today);
    expect(dry.stdout).toContain('heron.rig:5: +   sealed    2026-05-02 all with GenericSolventLap\n');
    expect(dry.stdout).toContain('2 files would be written. Nothing was: `--write` does it.');
    expect(read('rigs/teal.rig')).toBe(rig('Teal'));
    expect(run('add-record', sealed, '--rigs', '*', '--write', ...today)).toMatchObject({ status: 0 });
    expect(read('heron.rig').startsWith('\uFEFFrig Heron')).toBe(true);
    const json = JSON.parse(run('add-record', sealed, '--rigs', 'Te*', '--json', ...today).stdout);
    expect(json).toMatchObject({
      written: false,
      rigs: [{ rig: 'Teal', outcome: 'there', place: { file: 'rigs/teal.rig', line: 5 } }],
    });
  });

  it('ends with 1 where a rig is left out, with 2 where the statement or a name means nothing', () => {
    write({ 'heron.rig': rig('Heron') });
    const refused = run('add-record', 'sealed 2026-05-02 hatch with GenericSolventLap', '--rigs', 'Heron', ...today);
    expect(refused).toMatchObject({
      status: 1,
      stdout: expect.stringContaining('Heron is left out: Heron has no seam or item `hatch`'),
    });
    expect(run('add-record', 'sealt 2026-05-02', '--rigs', 'Heron')).toMatchObject({
      status: 2,
      stderr: expect.stringContaining('did you mean'),
    });
    expect(run('add-record', sealed, '--rigs', 'Herron')).toMatchObject({
      status: 2,
      stderr: expect.stringContaining('did you mean `Heron`?'),
    });
  });
});

describe('import and export', () => {
  const table = 'rig,unit,length,width\nHeron,7,18 ft,8 ft\nTeal,8,18,8 ft\n';

  it('tells each wrong cell with its place, shows what would be written, and writes it', () => {
    write({ 'rigs.csv': table });
    const dry = run('import', 'rigs', 'rigs.csv', '--into', 'rigs', ...today);
    expect(dry.status).toBe(1);
    expect(dry.stdout).toContain('rigs.csv:3:8: error  length: ');
    expect(dry.stdout).toContain('rigs/heron.rig:1: + rig Heron {\n');
    expect(dry.stdout).toContain('1 row new, 0 already there, 1 left out.');
    expect(readdirSync(folder)).toEqual(['rigs.csv']);
    run('import', 'rigs', 'rigs.csv', '--into', 'rigs', '--write', ...today);
    expect(readdirSync(join(folder, 'rigs'))).toEqual(['heron.rig']);
    expect(run('import', 'rigs', 'rigs.csv', '--into', 'rigs', '--write', ...today).stdout).toContain(
      '0 rows new, 1 already there',
    );
  });

  it('writes what it reads', () => {
    write({ 'yard/heron.rig': rig('Heron').replace('front', 'front  note "=1+1, \\"so\\""') });
    const seams = run('export', 'seams', 'yard').stdout;
    expect(seams).toContain(`"'=1+1, ""so"""`);
    for (const kind of ['rigs', 'seams', 'inspections'])
      expect(run('export', kind, 'yard', '--out', `${kind}.csv`).status).toBe(0);
    mkdirSync(join(folder, 'new'));
    for (const kind of ['rigs', 'seams', 'inspections']) {
      const { status, stderr } = spawnSync(
        process.execPath,
        [bundles.commandLine, 'import', kind, `../${kind}.csv`, '--write', ...today],
        { cwd: join(folder, 'new'), encoding: 'utf8' },
      );
      expect([status, stderr]).toEqual([0, '']);
    }
    expect(run('export', 'seams', 'new').stdout).toBe(seams);
  });

  it('prints findings of bookings with their place in the table', () => {
    write({
      'yard.rig': 'fleet Yard {\n  rigs "rigs/*.rig"\n  bookings from "b.csv"\n}\n',
      'rigs/heron.rig': rig('Heron'),
      'b.csv': 'rig,first,last\nHern,2027-01-01,2027-01-02\n',
    });
    const { status, stdout } = run('check', '.', ...today);
    expect(status).toBe(1);
    expect(stdout).toContain(
      'b.csv:2:1  error  Row 2: No rig of Yard is called `Hern`. Did you mean `Heron`?  [booked-unknown]',
    );
  });

  it('sees that a file of bookings has changed, also where findings are kept', () => {
    const rows = (name: string) => ({ 'b.csv': `rig,first,last\n${name},2027-01-01,2027-01-02\n` });
    write({
      'yard.rig': 'fleet Yard {\n  rigs "rigs/*.rig"\n  bookings from "b.csv"\n}\n',
      'rigs/heron.rig': rig('Heron'),
    });
    const found = () => run('check', '.', '--cache', '.kept', ...today).status;
    const seen = [];
    for (const name of ['Heron', 'Hern', 'Heron']) {
      write(rows(name));
      seen.push(found(), found());
    }
    rmSync(join(folder, 'b.csv'));
    expect([...seen, found()]).toEqual([0, 0, 1, 1, 0, 0, 1]);
  });

  it('ends with 2, and in words, where it is called wrongly', () => {
    write({ 'latin.csv': 'x' });
    writeFileSync(join(folder, 'latin.csv'), Buffer.from([0x72, 0x69, 0x67, 0x0a, 0xdc, 0x0a]));
    expect(run('import', 'rigs', 'latin.csv')).toMatchObject({
      status: 2,
      stderr: expect.stringContaining('CSV UTF-8'),
    });
    expect(run('import', 'rigs', 'none.csv')).toMatchObject({
      status: 2,
      stderr: expect.stringContaining('There is no file'),
    });
    expect(run('import', 'boats', 'latin.csv')).toMatchObject({
      status: 2,
      stderr: expect.stringContaining('rigs, seams, inspections'),
    });
  });
});
