// The repository of an operator of many rigs, with a mistake in one rig of fifty: `rigseam check` as a process, cold and with
// its cache; beside it the limits (reading, lexing) and the peer (the same records as YAML through `yaml` and `ajv`); the
// editor's server in that workspace; purchase and schedule of one fleet. Each at several sizes, with how it grows.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { writeTexts } from '../generator/on-disk.ts';
import { type Sown, sownWorkspace } from '../generator/sown.ts';
import { asOf, placedRigs, workspaceOf } from '../generator/workspace.ts';
import { rigYaml, yamlSchema } from '../generator/yaml.ts';
import { printGrowth } from './growth.ts';
import { median, type Run, run } from './process.ts';
import { type EditorFigures, inEditor } from './scale-editor.ts';

const path = (name: string) => fileURLToPath(new URL(name, import.meta.url));
const commandLine = path('../../dist/rigseam.js');
const rigTextHook = new URL('../../.ci/rig-text.mjs', import.meta.url).href;
const seed = 11;

interface Checks {
  readonly files: number;
  readonly sown: number;
  readonly rigMb: number;
  readonly yamlMb: number;
  readonly cold: readonly Run[];
  /** Empty where the command line has no cache. */
  readonly warm: readonly Run[];
  readonly filling: Run | undefined;
  readonly peer: readonly Run[];
  readonly limits: readonly { readonly reading: number; readonly lexing: number }[];
}

interface Size extends Checks {
  readonly editor: EditorFigures;
}

export async function scale(sizes: readonly number[] = [100, 1000]): Promise<void> {
  const cached = (await run([commandLine, 'check', '--help'])).output.includes('--cache');
  const all: Size[] = [];
  for (const rigs of sizes) {
    const folder = mkdtempSync(join(tmpdir(), 'rigseam-scale-'));
    try {
      mkdirSync(join(folder, 'rig/.git'), { recursive: true });
      const sown = sownWorkspace({ rigs, seed }, 50);
      const checks = await checksOf(folder, sown, rigs, cached);
      all.push({ ...checks, editor: await inEditor(join(folder, 'rig'), sown, rigs > 5000 ? 64 : 44) });
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  }
  print(sizes, all);
  await fleetOf([100, 300, 1000]);
}

async function checksOf(folder: string, { texts, expected }: Sown, rigs: number, cached: boolean): Promise<Checks> {
  const rigBytes = writeTexts(join(folder, 'rig'), texts);
  const yaml = [...placedRigs({ rigs, seed })].map(({ rig }) => [`yaml/${rig.name}.yaml`, rigYaml(rig)] as const);
  const yamlBytes = writeTexts(folder, yaml);
  writeFileSync(join(folder, 'schema.json'), JSON.stringify(yamlSchema));
  const args = [commandLine, 'check', join(folder, 'rig'), '--today', asOf, '--format', 'compact'];
  const withCache = [...args, '--cache', join(folder, 'cache')];
  const check = async (how: readonly string[]) => {
    const done = await run(how);
    const findings = done.output.split('\n').filter((line) => /: (error|warning|information|hint) /.test(line)).length;
    if (findings !== expected.length)
      throw new Error(`${expected.length} findings were sown among ${rigs} rigs, and ${findings} told`);
    return done;
  };
  const [cold, warm, peer]: [Run[], Run[], Run[]] = [[], [], []];
  const limits: { reading: number; lexing: number }[] = [];
  const filling = cached ? await check(withCache) : undefined;
  for (let round = 0; round < (rigs > 5000 ? 2 : 3); round++) {
    limits.push(JSON.parse((await run([path('./scale-limits.ts'), join(folder, 'rig')])).output));
    cold.push(await check(args));
    if (cached) warm.push(await check(withCache));
    // The peer takes minutes on ten thousand: once is enough for a ratio of this size.
    if (round === 0 || rigs < 5000)
      peer.push(await run([path('./yaml-check.ts'), join(folder, 'yaml'), join(folder, 'schema.json')]));
  }
  if (!peer.every(({ output }) => output.includes(': 0 findings')))
    throw new Error(`the peer finds the YAML wrong: ${peer[0]?.output}`);
  const [rigMb, yamlMb] = [rigBytes / 1e6, yamlBytes / 1e6];
  return { files: texts.size, sown: expected.length, rigMb, yamlMb, cold, warm, filling, peer, limits };
}

function print(sizes: readonly number[], all: readonly Size[]): void {
  const seconds = (runs: readonly Run[]) => (runs.length === 0 ? undefined : median(runs.map((one) => one.seconds)));
  const peak = (runs: readonly Run[]) => (runs.length === 0 ? undefined : Math.max(...runs.map((one) => one.peakMb)));
  const over = (a: number | undefined, b: number | undefined) =>
    a === undefined || b === undefined ? undefined : a / b;
  const row = (name: string, of: (size: Size) => number | undefined, digits = 2) => ({
    name,
    values: all.map(of),
    digits,
  });
  const perSecond = (runs: (size: Size) => readonly Run[]) => (size: Size) => over(size.rigMb, seconds(runs(size)));
  const peerRate = (size: Size) => over(size.yamlMb, seconds(size.peer));
  console.log('\nA repository of many rigs with ten years of records each, a mistake in one rig of fifty, all found');
  printGrowth(sizes, [
    row('files of .rig', (size) => size.files, 0),
    row('  MB', (size) => size.rigMb),
    row('  mistakes sown and found', (size) => size.sown, 0),
    row('reading alone, s', (size) => median(size.limits.map(({ reading }) => reading)), 3),
    row('lexing alone, s', (size) => median(size.limits.map(({ lexing }) => lexing)), 3),
    row('rigseam check, cold, s', (size) => seconds(size.cold)),
    row(
      '  MB/s',
      perSecond((size) => size.cold),
      1,
    ),
    row('  peak MB', (size) => peak(size.cold), 0),
    row('rigseam check, filling its cache, s', (size) => size.filling?.seconds),
    row('rigseam check, warm, s', (size) => seconds(size.warm)),
    row(
      '  MB/s',
      perSecond((size) => size.warm),
      1,
    ),
    row('  peak MB', (size) => peak(size.warm), 0),
    row('yaml + ajv, s', (size) => seconds(size.peer)),
    row('  MB of .yaml', (size) => size.yamlMb),
    row('  MB/s', peerRate),
    row('  peak MB', (size) => peak(size.peer), 0),
    row('cold against the peer: times by MB/s', (size) => over(perSecond((s) => s.cold)(size), peerRate(size)), 1),
    row('  times by rigs', (size) => over(seconds(size.peer), seconds(size.cold)), 1),
    row('warm against the peer: times by MB/s', (size) => over(perSecond((s) => s.warm)(size), peerRate(size)), 1),
    row('editor: first findings of the open file, s from start', ({ editor }) => editor.first),
    row('  all findings of the workspace, s from start', ({ editor }) => editor.all),
    row('  keystroke to findings, p50 ms', ({ editor }) => editor.p50, 1),
    row('  keystroke to findings, p95 ms', ({ editor }) => editor.p95, 1),
    row('  files that use the shared materials', ({ editor }) => editor.dependants, 0),
    row('  edit of these to its own findings, s', ({ editor }) => editor.own, 3),
    row('  to those of the last file that uses them, s', ({ editor }) => editor.last),
    row('  peak MB of the server', ({ editor }) => editor.peakMb, 0),
  ]);
  console.log('  (the peer checks shapes only, of the rigs alone; rates are of the bytes that each reads)');
}

/** One fleet of all rigs: what it buys together, and when the work is done. */
async function fleetOf(sizes: readonly number[]): Promise<void> {
  const runs: Readonly<Record<string, number>>[] = [];
  for (const rigs of sizes) {
    const folder = mkdtempSync(join(tmpdir(), 'rigseam-scale-'));
    try {
      writeTexts(folder, workspaceOf({ rigs, seed, depot: rigs }));
      const args = [
        '--import',
        rigTextHook,
        path('./scale-fleet.ts'),
        folder,
        join(folder, 'depots/Depot001/fleet.rig'),
      ];
      runs.push(JSON.parse((await run(args)).output));
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  }
  const row = (name: string, key: string, digits = 2) => ({ name, values: runs.map((one) => one[key]), digits });
  console.log('\nOne fleet of them');
  printGrowth(sizes, [
    row('reading and resolving all rigs, s', 'reading'),
    row('estimates of each, s', 'estimates'),
    row('one purchase for all, s', 'purchase'),
    row('  materials', 'materials', 0),
    row('schedule, s', 'schedule'),
    row('  visits', 'visits', 0),
    row('  work without a day', 'unplaced', 0),
  ]);
}
