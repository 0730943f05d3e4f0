// `npm test`: everything that can be checked without an editor, and at the end a list of what was run.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';

const results = 'tests/artefacts/vitest.json';

/** The steps in their order. What later steps need comes first; a failed step does not hide the others. */
const steps = [
  { name: 'generate the parser', command: 'npm run --silent generate:parser' },
  { name: 'check the types', command: 'tsc --noEmit -p . && tsc --noEmit -p client/pages' },
  { name: 'check format and lint', command: 'biome ci .' },
  { name: 'bundle', command: 'node esbuild.mjs' },
  { name: 'tests', command: `vitest run --reporter=default --reporter=json --outputFile.json=${results}` },
] as const;

mkdirSync('tests/artefacts', { recursive: true });
rmSync(results, { force: true });

const report = steps.map(({ name, command }) => {
  console.log(`\n== ${name}: ${command}`);
  const start = performance.now();
  const passed = spawnSync(command, { stdio: 'inherit', shell: true }).status === 0;
  return { name, passed, seconds: (performance.now() - start) / 1000 };
});

console.log('\n== What was run');
for (const { name, passed, seconds } of report) {
  const count = name === 'tests' ? `, ${counts()}` : '';
  console.log(`${passed ? 'passed' : 'FAILED'}  ${name}${count} (${seconds.toFixed(1)} s)`);
}
console.log(`\nNot run here: the tests in a real editor (npm run test:editor) and the benchmark (npm run bench).`);
process.exitCode = report.every(({ passed }) => passed) ? 0 : 1;

function counts(): string {
  try {
    const { numPassedTests, numTotalTests, testResults } = JSON.parse(readFileSync(results, 'utf8'));
    return `${numPassedTests} of ${numTotalTests} tests in ${testResults.length} files`;
  } catch {
    return 'no result';
  }
}
