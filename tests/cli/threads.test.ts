// Threads say what one says: the command line as a process, on a workspace of several portions.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { writeTexts } from '../generator/on-disk.ts';
import { sownWorkspace } from '../generator/sown.ts';
import { asOf } from '../generator/workspace.ts';
import { type Bundles, bundled } from '../server/bundle.ts';

let bundles: Bundles;
let folder: string;
beforeAll(() => {
  bundles = bundled();
  folder = mkdtempSync(join(tmpdir(), 'rigseam-threads-'));
  writeTexts(folder, sownWorkspace({ rigs: 120, seed: 3 }, 10).texts);
});
afterAll(() => {
  bundles.remove();
  rmSync(folder, { recursive: true, force: true });
});

it('says the same with one thread, with three, and with a cache', () => {
  const said = (...args: string[]) => {
    const call = [bundles.commandLine, 'check', '.', '--as-of', asOf, '--today', asOf, '--format', 'json', ...args];
    const { status, stdout, stderr } = spawnSync(process.execPath, call, { cwd: folder, encoding: 'utf8' });
    expect(stderr).toBe('');
    return { status, stdout };
  };
  const one = said('--threads', '1');
  expect(JSON.parse(one.stdout).findings.length).toBeGreaterThan(5);
  expect(said('--threads', '3')).toEqual(one);
  const cache = join(folder, '../rigseam-threads-cache');
  try {
    expect(said('--cache', cache, '--threads', '2')).toEqual(one);
    expect(said('--cache', cache)).toEqual(one);
  } finally {
    rmSync(cache, { recursive: true, force: true });
  }
}, 60_000);
