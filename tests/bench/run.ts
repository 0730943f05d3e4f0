// `npm run bench`: every benchmark, or those named. Build first (`npm run build`); times are for comparing within one run.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { bulk } from './bulk.ts';
import { keystroke } from './keystroke.ts';
import { scale } from './scale.ts';
import { workspace } from './workspace.ts';

const script = (name: string) => () => {
  const rigText = new URL('../../.ci/rig-text.mjs', import.meta.url).href;
  const file = fileURLToPath(new URL(name, import.meta.url));
  const { status } = spawnSync(process.execPath, ['--import', rigText, file], { stdio: 'inherit' });
  if (status !== 0) throw new Error(`${name} failed`);
};
const benches: Readonly<Record<string, () => void | Promise<void>>> = {
  keystroke: () => keystroke(),
  workspace: () => workspace(),
  bulk: () => bulk(),
  scale: () => scale(),
  'scale-10000': () => scale([100, 1000, 10_000]),
  reading: script('./reading.ts'),
  cutting: script('./cutting.ts'),
  fleets: script('./fleets.ts'),
  schedule: script('./schedule.ts'),
};

/** Minutes long: only where it is named. */
const long = new Set(['scale-10000']);
const named = process.argv.slice(2);
for (const name of named.length > 0 ? named : Object.keys(benches).filter((each) => !long.has(each))) {
  const bench = benches[name];
  if (!bench) {
    console.error(`There is no benchmark \`${name}\`; there are ${Object.keys(benches).join(', ')}.`);
    process.exit(2);
  }
  await bench();
}
