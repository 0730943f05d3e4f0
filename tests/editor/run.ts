// The main job in a real VS Code in a real browser, with the packed extension. Installs what it needs, leaves a screenshot of
// each step in tests/artefacts/editor, and fails at the first step that does not show what it must.
import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { startEditor } from './editor.ts';
import { steps } from './main-job.ts';

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

const workspace = join(mkdtempSync(join(tmpdir(), 'rigseam-workspace-')), 'boats-and-trailers');
cpSync(join(root, 'examples/single'), workspace, { recursive: true });
rmSync(pictures, { recursive: true, force: true });

let passed = 0;
let failed = 0;
const editor = await startEditor(install, vsix, workspace, pictures);
try {
  for (const [index, { name, run }] of steps.entries()) {
    const picture = `${String(index + 1).padStart(2, '0')}-${name.replace(/[^a-z0-9]+/gi, '-').toLowerCase()}`;
    const start = Date.now();
    try {
      await run(editor);
      passed++;
      console.log(`  ok    ${name}  (${((Date.now() - start) / 1000).toFixed(1)} s)`);
    } catch (error) {
      failed++;
      console.log(`  FAIL  ${name}\n${(error as Error).message}`);
    }
    await editor.screenshot(picture);
    if (failed > 0) break; // the steps build on each other
  }
} finally {
  await editor.close();
  if (failed === 0) rmSync(workspace, { recursive: true, force: true });
}
console.log(
  `Screenshots: tests/artefacts/editor (Code ${JSON.parse(readFileSync(join(install, 'server/node_modules/code-server/lib/vscode/package.json'), 'utf8')).version})`,
);
console.log(`${passed} passed, ${failed} failed`);
if (failed > 0) process.exit(1);
