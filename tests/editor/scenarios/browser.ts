// The browser edition: the same packed extension in the web worker host of the workbench. Its server is a worker, and its
// files come through the editor.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Editor } from '../editor.ts';
import { eventually, type Scenario, saysError, squiggles } from '../scenario.ts';

const commandLine = fileURLToPath(new URL('../../../dist/rigseam.js', import.meta.url));

/** Processes of this machine that run our server for this editor. */
const serverProcesses = (editor: Editor) =>
  readdirSync('/proc').filter((id) => {
    try {
      const command = /^\d+$/.test(id) ? readFileSync(`/proc/${id}/cmdline`, 'utf8') : '';
      return command.includes(editor.data) && command.includes('server.cjs');
    } catch {
      return false; // it has ended
    }
  });

const rigFile = (editor: Editor, name: string) => join(editor.workspace, 'rigs', `${name}.rig`);
const linesOf = (path: string) => readFileSync(path, 'utf8').trimEnd().split('\n');

export const browser: Scenario = {
  name: 'browser',
  workspace: 'examples/fleet',
  settings: { 'remote.extensionKind': { 'rigseam.rigseam': ['web'] } },
  steps: [
    {
      name: 'open a rig that is made of three files: a lens, no alarm, no process',
      async run(editor) {
        await editor.open('rigs/fell.rig');
        await eventually(
          'a lens over the rig',
          async () =>
            (await editor.page.locator('.codelens-decoration', { hasText: /write estimate and schedule/i }).count()) >
            0,
          40,
        );
        assert.equal(await squiggles(editor), 0, 'the example has no error');
        assert.deepEqual(serverProcesses(editor), []);
      },
    },
    {
      name: 'a wrong seam is said while it is typed',
      async run(editor) {
        const lines = linesOf(rigFile(editor, 'fell'));
        await editor.goTo(lines.length, 1);
        await editor.type('  sealed    2026-08-01 fridge-vnt with DeckLap\n');
        await eventually('one squiggle', async () => (await squiggles(editor)) === 1);
        await eventually('the message', () => saysError(editor, /no seam/));
      },
    },
    {
      name: 'completion knows the materials of another file',
      async run(editor) {
        const line = linesOf(rigFile(editor, 'fell')).length;
        await editor.goTo(line, '  sealed    2026-08-01 fridge-vnt with DeckLap'.length + 1);
        for (let i = 0; i < 'Lap'.length; i++) await editor.press('Backspace');
        await editor.press('Control+Space');
        const row = editor.page.locator('.suggest-widget .monaco-list-row', { hasText: 'DeckLap' });
        await row.first().waitFor();
        await editor.screenshot('03a-offered');
        await editor.press('Escape');
        await editor.command('File: Revert File');
        await eventually('no squiggle', async () => (await squiggles(editor)) === 0);
      },
    },
    {
      name: 'a closed file that changes on disk is read anew, and one that goes is missed',
      async run(editor) {
        const [moor, models] = [rigFile(editor, 'moor'), rigFile(editor, 'models')];
        const before = readFileSync(moor, 'utf8');
        writeFileSync(moor, before.replace(/^\s*built .*$/m, '  built        2019-13'));
        await eventually('the mistake in moor.rig', () => saysError(editor, /no month 13/));
        writeFileSync(moor, before);
        await eventually('it is mended', async () => !(await saysError(editor, /no month 13/)));
        renameSync(models, `${models}.away`);
        await eventually('models.rig is missed', () => saysError(editor, /models\.rig/));
        renameSync(`${models}.away`, models);
        await eventually('it is back', async () => !(await saysError(editor, /models\.rig/)));
      },
    },
    {
      name: 'the papers of the fleet, the same bytes as from the command line',
      async run(editor) {
        await editor.open('yard/fleet.rig');
        await editor.command('Rigseam: Write Estimate and Schedule');
        const out = join(editor.workspace, 'rigseam-out');
        await editor.page.locator('.tab', { hasText: 'Highmeadow.estimate.md' }).waitFor({ timeout: 90_000 });
        await eventually('the last paper', async () => existsSync(join(out, 'Highmeadow.estimate.xlsx')), 30);
        assert.equal(await editor.page.getByText('solver of linear programs could not be loaded').count(), 0);
        const other = mkdtempSync(join(tmpdir(), 'rigseam-papers-'));
        execFileSync(process.execPath, [commandLine, 'write', 'yard/fleet.rig', '--out', other], {
          cwd: editor.workspace,
        });
        const names = readdirSync(other).sort();
        assert.deepEqual(readdirSync(out).sort(), names);
        for (const name of names)
          assert.ok(readFileSync(join(out, name)).equals(readFileSync(join(other, name))), `${name} differs`);
        rmSync(other, { recursive: true });
      },
    },
  ],
};
