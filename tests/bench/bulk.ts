// `rigseam check` over many generated rigs, beside the peer that a user would pick: the same records as YAML with a JSON
// Schema through the `yaml` and `ajv` packages. Whole processes, cold, alternating; wall time and peak memory.
import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { rigOf, rigText, rigYaml, sharedRig, yamlSchema } from './records.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

interface Run {
  readonly seconds: number;
  readonly peakMb: number;
  readonly output: string;
}

/** Runs a program to its end. The peak is the resident set's high-water mark as the kernel counts it, read while it runs. */
function run(args: readonly string[]): Promise<Run> {
  return new Promise((done, failed) => {
    const start = performance.now();
    const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] });
    let output = '';
    let peakMb = 0;
    child.stdout.on('data', (chunk) => {
      output += chunk;
    });
    const poll = setInterval(() => {
      try {
        const line = readFileSync(`/proc/${child.pid}/status`, 'utf8').match(/VmHWM:\s+(\d+)/);
        if (line) peakMb = Number(line[1]) / 1024;
      } catch {
        // It has just ended, or this system has no such file.
      }
    }, 10);
    child.on('error', failed);
    child.on('close', () => {
      clearInterval(poll);
      done({ seconds: (performance.now() - start) / 1000, peakMb, output });
    });
  });
}

const median = (values: readonly number[]) => [...values].sort((a, b) => a - b)[values.length >> 1] as number;

export async function bulk(count = 2000, rounds = 3): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'rigseam-bench-'));
  try {
    for (const part of ['rig/rigs', 'rig/yard', 'yaml']) mkdirSync(join(folder, part), { recursive: true });
    for (const [path, text] of Object.entries(sharedRig)) writeFileSync(join(folder, 'rig', path), text);
    writeFileSync(join(folder, 'schema.json'), JSON.stringify(yamlSchema));
    let [rigBytes, yamlBytes] = [0, 0];
    for (let i = 0; i < count; i++) {
      const rig = rigOf(i, 5);
      const [text, yaml] = [rigText(rig), rigYaml(rig)];
      rigBytes += text.length;
      yamlBytes += yaml.length;
      writeFileSync(join(folder, 'rig/rigs', `${rig.name}.rig`), text);
      writeFileSync(join(folder, 'yaml', `${rig.name}.yaml`), yaml);
    }
    const ours: Run[] = [];
    const peers: Run[] = [];
    for (let i = 0; i < rounds; i++) {
      ours.push(await run([join(root, 'dist/rigseam.js'), 'check', join(folder, 'rig'), '--today', '2026-11-25']));
      peers.push(
        await run([join(root, 'tests/bench/yaml-check.ts'), join(folder, 'yaml'), join(folder, 'schema.json')]),
      );
    }
    const [mine, peer] = [median(ours.map((r) => r.seconds)), median(peers.map((r) => r.seconds))];
    const [myMb, peerMb] = [Math.max(...ours.map((r) => r.peakMb)), Math.max(...peers.map((r) => r.peakMb))];
    console.log(`\nBulk check of ${count} rigs, whole processes, cold, median of ${rounds}`);
    console.log(
      `  rigseam check      ${mine.toFixed(2)} s  ${(rigBytes / 1e6).toFixed(1)} MB of .rig   ${(rigBytes / 1e6 / mine).toFixed(1)} MB/s  peak ${myMb.toFixed(0)} MB  (${ours[0]?.output.trim().split('\n').at(-1)})`,
    );
    console.log(
      `  yaml + ajv         ${peer.toFixed(2)} s  ${(yamlBytes / 1e6).toFixed(1)} MB of .yaml  ${(yamlBytes / 1e6 / peer).toFixed(1)} MB/s  peak ${peerMb.toFixed(0)} MB  (${peers[0]?.output.trim()})`,
    );
    console.log(
      `  same records: ${(peer / mine).toFixed(1)} times as fast as the peer; by bytes ${(rigBytes / mine / (yamlBytes / peer)).toFixed(1)} times; memory ${(myMb / peerMb).toFixed(2)} times the peer's`,
    );
    console.log(
      '  (the peer checks shapes only; rigseam also resolves models and materials, folds histories and works out due dates)',
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
