// Files that go, come or change between listing and reading: what is there counts, and nothing falls over.
import { spawn } from 'node:child_process';
import { mkdtempSync, realpathSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { checked, printed } from '../../server/cli/check.ts';
import { formatFiles } from '../../server/cli/format.ts';
import { asked } from '../../server/cli/paths.ts';
import { writeDocuments } from '../../server/cli/write.ts';
import { writeTexts } from '../generator/on-disk.ts';
import { asOf, workspaceOf } from '../generator/workspace.ts';
import { type CommandLine, startCommandLine } from './command-line.ts';

vi.setConfig({ testTimeout: 60_000 });

const dates = { asOf, today: asOf };
const rig = (name: string, cap = 'front') => `rig ${name} {\n    roof 20 ft by 8 ft epdm\n  cap ${cap} wide 4 in\n}\n`;

let folder: string;
beforeEach(() => {
  folder = realpathSync(mkdtempSync(join(tmpdir(), 'rigseam-vanishing-')));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('a file that goes after it was listed', () => {
  const listed = () => {
    writeTexts(folder, [
      ['heron.rig', rig('Heron', 'frnt')],
      ['wren.rig', rig('Wren', 'frnt')],
    ]);
    return asked([folder], folder);
  };

  it('is not checked, and the others are', () => {
    const what = listed();
    rmSync(join(folder, 'heron.rig'));
    const { findings } = printed(checked(what, dates));
    expect(new Set(findings.map(({ file }) => file))).toEqual(new Set(['wren.rig']));
  });

  it('is printed with what it held when it goes before the printing', () => {
    const result = checked(listed(), dates);
    rmSync(folder, { recursive: true });
    const files = printed(result).findings.map(({ file }) => file);
    expect(new Set(files)).toEqual(new Set(['heron.rig', 'wren.rig']));
  });

  it('is neither formatted nor written', async () => {
    const what = listed();
    writeFileSync(join(folder, 'wren.rig'), rig('Wren'));
    rmSync(join(folder, 'heron.rig'));
    expect(formatFiles(what, { check: false }).changed).toEqual(['wren.rig']);
    const { json, failed } = await writeDocuments(what, dates, { out: join(folder, 'out') });
    expect(failed).toBe(false);
    expect(json.written.length).toBeGreaterThan(0);
    expect(json.written.filter((name) => name.includes('Heron'))).toEqual([]);
  });
});

describe('files that come and go while they are read', () => {
  let commandLine: CommandLine;
  beforeAll(() => {
    commandLine = startCommandLine();
  });
  afterAll(() => commandLine.end());

  it('leave every command with an answer', async () => {
    writeTexts(folder, workspaceOf({ rigs: 40, seed: 6 }));
    const other = join(folder, 'depots/Depot001/Rig00003.rig');
    let on = true;
    const restless = (async () => {
      for (let i = 0; on; i++) {
        renameSync(other, `${other}.away`);
        writeFileSync(join(folder, `extra-${i % 5}.rig`), rig(`Extra${i % 5}`));
        await new Promise((done) => setTimeout(done, 3));
        renameSync(`${other}.away`, other);
        rmSync(join(folder, `extra-${(i + 2) % 5}.rig`), { force: true });
        await new Promise((done) => setTimeout(done, 3));
      }
    })();
    try {
      const cache = join(folder, 'cache');
      for (const args of [
        ['check', folder, '--format', 'json'],
        ['check', folder, '--format', 'json', '--cache', cache],
        ['check', folder, '--format', 'json', '--cache', cache],
        ['format', folder],
        ['write', folder, '--out', join(folder, 'out'), '--name', 'Rig00001'],
      ]) {
        const { code, stderr } = await ended(commandLine.bundle, [
          ...args,
          ...(args[0] === 'format' ? [] : ['--today', asOf]),
        ]);
        expect(stderr, args[0]).toBe('');
        expect([0, 1], args[0]).toContain(code);
      }
    } finally {
      on = false;
      await restless;
    }
    // And once it is quiet, what was kept says what a fresh check says.
    for (const name of [0, 1, 2, 3, 4]) rmSync(join(folder, `extra-${name}.rig`), { force: true });
    const kept = await ended(commandLine.bundle, ['check', folder, '--today', asOf, '--cache', join(folder, 'cache')]);
    expect(kept.stdout).toContain('nothing found');
  });
});

function ended(bundle: string, args: readonly string[]) {
  return new Promise<{ readonly code: number | null; readonly stdout: string; readonly stderr: string }>((done) => {
    const child = spawn(process.execPath, [bundle, ...args], { stdio: ['ignore', 'pipe', 'pipe'] });
    let [stdout, stderr] = ['', ''];
    child.stdout.on('data', (chunk) => {
      stdout += chunk;
    });
    child.stderr.on('data', (chunk) => {
      stderr += chunk;
    });
    child.once('close', (code) => done({ code, stdout, stderr }));
  });
}
