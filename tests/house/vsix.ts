// `node tests/house/vsix.ts FILE.vsix`: the packed extension holds what is on the list, nothing else, and is small.
import { readFileSync } from 'node:fs';
import { strFromU8, unzipSync } from 'fflate';

/** Of everything but the solver, which weighs what it weighs. */
const limitKB = 1024;
const solver = 'extension/dist/highs.wasm';

const [file] = process.argv.slice(2);
if (file === undefined) {
  console.error('Usage: node tests/house/vsix.ts FILE.vsix');
  process.exit(2);
}

const packed = readFileSync(file);
let solverBytes = 0;
const entries = Object.entries(
  unzipSync(packed, {
    filter({ name, size }) {
      if (name === solver) solverBytes = size;
      return true;
    },
  }),
);
const prefix = 'extension/';
/** The packer renames these two. */
const listedName = (name: string) =>
  ({ 'readme.md': 'README.md', 'changelog.md': 'CHANGELOG.md', 'LICENSE.txt': 'LICENSE' })[name] ?? name;
const inside = entries.flatMap(([name]) => (name.startsWith(prefix) ? [listedName(name.slice(prefix.length))] : []));
const listed = readFileSync(new URL('vsix-files.txt', import.meta.url), 'utf8')
  .trim()
  .split('\n');

const problems = [
  ...inside.filter((name) => !listed.includes(name)).map((name) => `${name} is packed but not on the list`),
  ...listed.filter((name) => !inside.includes(name)).map((name) => `${name} is on the list but not packed`),
];
const kB = (bytes: number) => Math.round(bytes / 1024);
const rest = kB(packed.length - solverBytes);
if (rest > limitKB) problems.push(`${rest} KB beside the solver is more than the limit of ${limitKB} KB`);
for (const [name, bytes] of entries) {
  const text = /\.(c?js|json)$/.test(name) ? strFromU8(bytes) : '';
  if (text.includes('sourceMappingURL=')) problems.push(`${name} refers to a source map`);
  if (text.includes(process.cwd())) problems.push(`${name} holds a path of this machine`);
}

console.log(`${file}: ${kB(packed.length)} KB, of which the solver ${kB(solverBytes)} KB; ${inside.length} files`);
for (const name of [...inside].sort()) console.log(`  ${name}`);
for (const problem of problems) console.error(`PROBLEM  ${problem}`);
console.log(problems.length === 0 ? 'The packed extension is as listed.' : `${problems.length} problems.`);
process.exitCode = problems.length === 0 ? 0 : 1;
