// `rigseam check` over many generated rigs, beside the peer that a user would pick: the same records as YAML with a JSON
// Schema through the `yaml` and `ajv` packages. Whole processes, cold, alternating; wall time and peak memory.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { median, type Run, run } from './process.ts';
import { rigOf, rigText, rigYaml, sharedRig, yamlSchema } from './records.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

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
