// The scenarios in a real VS Code in a real browser, with the packed extension. Installs what it needs, leaves a screenshot of
// each step in tests/artefacts/editor/SCENARIO, and fails with a step that does not show what it must.
//   node tests/editor/run.ts [SCENARIO ...]     all without a name
import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { startEditor } from './editor.ts';
import type { Scenario } from './scenario.ts';
import { scenarios } from './scenarios/index.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const install = process.env.RIGSEAM_EDITOR ?? join(homedir(), '.cache', 'rigseam-editor');
const vsix = join(root, 'rigseam.vsix');
const pictures = join(root, 'tests/artefacts/editor');

if (process.platform !== 'linux' || !existsSync('/etc/debian_version')) {
  console.error('The editor test installs its browser with apt and runs on Debian only.');
  process.exit(1);
}
execFileSync('bash', [join(root, 'tests/editor/install.sh'), install], { stdio: 'inherit' });
if (!existsSync(vsix)) execFileSync('npm', ['run', '--silent', 'package'], { cwd: root, stdio: 'inherit' });

const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !scenarios.some((scenario) => scenario.name === name));
if (unknown.length > 0) {
  console.error(`No scenario ${unknown.join(', ')}. There are: ${scenarios.map(({ name }) => name).join(', ')}`);
  process.exit(2);
}

let passed = 0;
let failed = 0;
for (const scenario of scenarios) {
  if (asked.length > 0 && !asked.includes(scenario.name)) continue;
  console.log(scenario.name);
  await play(scenario);
}

/** Runs the steps of a scenario in an editor of its own, up to the first that fails. */
async function play({ name: scenario, workspace: source, files = {}, steps, ...start }: Scenario): Promise<void> {
  const workspace = join(mkdtempSync(join(tmpdir(), 'rigseam-workspace-')), 'boats-and-trailers');
  if (source === undefined) mkdirSync(workspace);
  else cpSync(join(root, source), workspace, { recursive: true });
  for (const [file, text] of Object.entries(files)) writeFileSync(join(workspace, file), text);
  const shown = join(pictures, scenario);
  rmSync(shown, { recursive: true, force: true });
  const editor = await startEditor(install, vsix, workspace, shown, start);
  let sound = true;
  try {
    for (const [index, { name, run }] of steps.entries()) {
      const picture = `${String(index + 1).padStart(2, '0')}-${name.replace(/[^a-z0-9]+/gi, '-').toLowerCase()}`;
      const begun = Date.now();
      try {
        await run(editor);
        passed++;
        console.log(`  ok    ${name}  (${((Date.now() - begun) / 1000).toFixed(1)} s)`);
      } catch (error) {
        sound = false;
        failed++;
        console.log(`  FAIL  ${name}\n${(error as Error).message}`);
      }
      await editor.screenshot(picture);
      if (!sound) break; // the steps build on each other
    }
  } finally {
    await editor.close();
    if (sound) rmSync(workspace, { recursive: true, force: true });
  }
}
console.log(
  `Screenshots: tests/artefacts/editor (Code ${JSON.parse(readFileSync(join(install, 'server/node_modules/code-server/lib/vscode/package.json'), 'utf8')).version})`,
);
console.log(`${passed} passed, ${failed} failed`);
if (failed > 0) process.exit(1);
