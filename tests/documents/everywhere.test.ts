import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

// The same records and date give the same bytes: on a second run, in other time zones, under other languages. The command
// line is bundled afresh and run as a process of its own, since a process reads its zone and its language once.

const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'rigseam-everywhere-'));
const program = join(folder, 'rigseam.js');

beforeAll(async () => {
  await build({
    entryPoints: [join(root, 'server/cli.ts')],
    outfile: program,
    bundle: true,
    platform: 'node',
    format: 'esm',
    mainFields: ['module', 'main'],
    loader: { '.rig': 'text' },
    banner: {
      js: "import { createRequire as __createRequire } from 'node:module'; const require = __createRequire(import.meta.url);",
    },
    logLevel: 'error',
  });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const examples = ['examples/single/wren.rig', 'examples/fleet/yard/fleet.rig'];

/** The bytes of every paper of both examples, by file name. */
function written(name: string, environment: Readonly<Record<string, string>>): Map<string, string> {
  const out = join(folder, name);
  const { status, stderr } = spawnSync(
    process.execPath,
    [program, 'write', ...examples, '--out', out, '--as-of', '2026-11-25'],
    { cwd: root, encoding: 'utf8', env: { ...process.env, ...environment } },
  );
  expect(stderr).toBe('');
  expect(status).toBe(0);
  return new Map(readdirSync(out).map((file) => [file, readFileSync(join(out, file)).toString('base64')]));
}

it('a rig that is written with its folder names the schedule of its fleet', { timeout: 60_000 }, () => {
  const schedule = (path: string, out: string): string => {
    const call = [program, 'write', path, '--name', 'Brook', '--out', join(folder, out), '--as-of', '2026-11-25'];
    expect(spawnSync(process.execPath, call, { cwd: root, encoding: 'utf8' }).stderr).toBe('');
    return readFileSync(join(folder, out, 'Brook.schedule.md'), 'utf8');
  };
  expect(schedule('examples/fleet', 'whole')).toContain('`Highmeadow.schedule.md`');
  expect(schedule('examples/fleet/rigs/brook.rig', 'alone')).toContain('where a fleet has it');
});

describe('the papers have the same bytes', () => {
  const zones = ['UTC', 'Pacific/Auckland', 'America/St_Johns'];
  const languages = ['C', 'tr_TR.UTF-8'];
  const places = zones.flatMap((TZ) => languages.map((LANG) => ({ TZ, LANG })));

  it('on a second run, in three time zones and under two languages', { timeout: 120_000 }, () => {
    const first = written('first', { TZ: 'UTC', LANG: 'C', LC_ALL: 'C' });
    expect(first.size).toBeGreaterThan(12);
    for (const { TZ, LANG } of places) {
      const again = written(`${TZ} ${LANG}`.replaceAll('/', ' '), { TZ, LANG, LC_ALL: LANG });
      const other = [...first].filter(([file, bytes]) => again.get(file) !== bytes).map(([file]) => file);
      expect(other, `${TZ}, ${LANG}`).toEqual([]);
      expect([...again.keys()]).toEqual([...first.keys()]);
    }
  });
});
