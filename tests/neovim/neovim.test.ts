// Neovim is the second client, where it is on the PATH. What it shows of every example, in its own counting of bytes, is what
// the command line says; what it never asks for does not break anything.
import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import * as z from 'zod';
import { type Bundles, bundled } from '../server/bundle.ts';

const hasNeovim = spawnSync('nvim', ['--version'], { stdio: 'ignore' }).status === 0;
const absent = 'nvim is not on the PATH: the server was spoken to by one other client only';
const severities = ['', 'error', 'warning', 'information', 'hint'];

let bundles: Bundles;
beforeAll(() => {
  if (hasNeovim) bundles = bundled();
});
afterAll(() => bundles?.remove());

const place = z.object({ line: z.int(), character: z.int() });
const printedSchema = z.object({
  findings: z.array(
    z.object({
      file: z.string(),
      rule: z.string(),
      severity: z.string(),
      range: z.object({ start: place, end: place }),
    }),
  ),
});
const shownSchema = z.array(
  z.object({
    rule: z.string(),
    severity: z.int(),
    from: z.tuple([z.int(), z.int()]),
    to: z.tuple([z.int(), z.int()]),
  }),
);
const saidSchema = z.object({
  results: z.array(z.object({ file: z.string(), open: shownSchema })),
  typed: shownSchema,
  undone: shownSchema,
  complaints: z.array(z.string()),
});

const brief = (found: z.infer<typeof shownSchema>) =>
  found
    .map(({ rule, severity, from, to }) => `${from.join(':')}-${to.join(':')} ${severities[severity]} ${rule}`)
    .sort();

/** What the command line prints of a folder, by file, with columns in bytes of UTF-8, as Neovim counts them. */
function printed(folder: string): Map<string, string[]> {
  const { stdout } = spawnSync(process.execPath, [bundles.commandLine, 'check', '--json', '.'], {
    cwd: folder,
    encoding: 'utf8',
  });
  const out = new Map<string, string[]>();
  for (const { file, rule, severity, range } of printedSchema.parse(JSON.parse(stdout)).findings) {
    const lines = readFileSync(join(folder, file), 'utf8').split('\n');
    const inBytes = ({ line, character }: z.infer<typeof place>) =>
      `${line}:${Buffer.byteLength((lines[line] ?? '').slice(0, character))}`;
    const said = `${inBytes(range.start)}-${inBytes(range.end)} ${severity} ${rule}`;
    out.set(file, [...(out.get(file) ?? []), said].sort());
  }
  return out;
}

describe.each(['examples/single', 'examples/fleet', 'tests/worked-example'])('%s', (source) => {
  test('shows the same in Neovim as on the command line', (context) => {
    if (!hasNeovim) return context.skip(absent);
    const folder = join(realpathSync(mkdtempSync(join(tmpdir(), 'rigseam-neovim-'))), 'rigs');
    cpSync(source, folder, { recursive: true });
    const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.rig'))
      .sort();
    const [first] = files as [string];
    const given = {
      command: [process.execPath, bundles.server, '--stdio'],
      folder,
      files,
      mistake: { file: first, line: 0, text: 'nonsense é here' },
    };
    const script = fileURLToPath(new URL('client.lua', import.meta.url));
    const { results, typed, undone, complaints } = saidSchema.parse(
      JSON.parse(
        execFileSync('nvim', ['--headless', '--clean', '-i', 'NONE', '-n', '-S', script], {
          env: { ...process.env, RIGSEAM_TEST: JSON.stringify(given) },
          encoding: 'utf8',
          timeout: 120_000,
        }),
      ),
    );
    expect(complaints).toEqual([]);
    expect(results.map(({ file }) => file)).toEqual(files);
    const expected = printed(folder);
    for (const { file, open } of results) expect(brief(open), file).toEqual(expected.get(file) ?? []);
    expect(brief(typed).filter((said) => said.startsWith('0:'))).toEqual([expect.stringMatching(/ error /)]);
    expect(brief(undone)).toEqual(expected.get(first) ?? []);
    rmSync(join(folder, '..'), { recursive: true });
  }, 120_000);
});
