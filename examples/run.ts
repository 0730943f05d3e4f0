// `npm run example`: the main job on an example, with the command line as a person would use it.
import { spawnSync } from 'node:child_process';
import { readdirSync, statSync } from 'node:fs';

const example = 'examples/single';
const out = 'out/single';

rigseam('check', example);
rigseam('write', example, '--out', out);

console.log(`\nWritten into ${out}:`);
for (const name of readdirSync(out).filter((each) => !each.startsWith('.'))) {
  console.log(`  ${name}  ${statSync(`${out}/${name}`).size} bytes`);
}

/** Shows the command and runs it; a failure ends the whole. */
function rigseam(...words: readonly string[]): void {
  console.log(`\n$ rigseam ${words.join(' ')}`);
  const { status } = spawnSync(process.execPath, ['dist/rigseam.js', ...words], { stdio: 'inherit' });
  if (status !== 0) process.exit(status ?? 1);
}
