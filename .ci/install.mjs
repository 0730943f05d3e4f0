// Makes a fresh clone ready: installs the pinned packages when they are absent or not those of the lock file.
// Plain JavaScript for any Node from 20 on, since nothing is installed when it starts.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';

const installed = 'node_modules/.package-lock.json';
const read = (file) => JSON.parse(readFileSync(file, 'utf8')).packages;

/** The first reason to install, or undefined when all that the lock file asks for is there. */
function reasonToInstall() {
  if (!existsSync(installed)) return 'nothing is installed yet';
  const there = read(installed);
  const stale = Object.entries(read('package-lock.json')).find(
    ([path, wanted]) =>
      path !== '' && !wanted.optional && !wanted.devOptional && there[path]?.version !== wanted.version,
  );
  if (stale) return `${stale[0].replace(/^.*node_modules\//, '')} ${stale[1].version} is not installed`;
  return existsSync('node_modules/.bin/node') ? undefined : 'the pinned Node is not installed';
}

const reason = reasonToInstall();
if (reason) {
  console.log(`Installing packages (${reason}): npm ci`);
  const { status } = spawnSync('npm ci', { stdio: 'inherit', shell: true });
  if (status !== 0) {
    console.error('npm ci failed: the packages could not be installed. Is there a connection to an npm registry?');
    process.exit(1);
  }
}
