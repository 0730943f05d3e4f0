// The roof plan beside the text: opened, walked, in step with the text both ways, in three themes, large, saved, printed, and
// there again after a restart.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Frame } from 'playwright-core';
import type { Editor } from '../editor.ts';
import { eventually, lineOf, type Scenario } from '../scenario.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** The page of the plan: a frame inside the frame of its panel. */
async function planFrame({ page }: Editor): Promise<Frame> {
  let found: Frame | undefined;
  await eventually('the page of the plan', async () => {
    for (const frame of page.frames()) {
      const has = await frame.evaluate<boolean>('!!document.querySelector("#page svg")').catch(() => false);
      if (has) found = frame;
    }
    return found !== undefined;
  });
  return found as Frame;
}

const plan = async (editor: Editor) => (await planFrame(editor)).locator('#page');
const seam = async (editor: Editor, item: string) => (await plan(editor)).locator(`[id="seam-${item}"]`);
const lit = async (editor: Editor) =>
  (await planFrame(editor)).evaluate<string[]>(
    '[...document.querySelectorAll("[aria-current]")].map((one) => one.id.replace("seam-", ""))',
  );
const label = async (editor: Editor, item: string) => (await seam(editor, item)).getAttribute('aria-label');
const status = (editor: Editor) => editor.page.locator('.statusbar-item', { hasText: /^Ln \d+/ }).textContent();

async function accessible(editor: Editor): Promise<void> {
  const frame = await planFrame(editor);
  await frame.evaluate(axe);
  const found = await frame.evaluate(
    'axe.run(document).then((one) => one.violations.map(({ id, nodes }) => id + ": " + nodes.map(({ html }) => html).join()))',
  );
  assert.deepEqual(found, []);
}

/** Puts the cursor into a line of the text; the panel has no part in it. */
async function cursorAt(editor: Editor, start: string): Promise<void> {
  await editor.goTo(lineOf(editor, start), 8);
}

const themed = (name: string, theme: string, kind: string) => ({
  name,
  async run(editor: Editor) {
    editor.configure({ 'workbench.colorTheme': theme });
    const frame = await planFrame(editor);
    await eventually(`a page in ${kind}`, () => frame.evaluate<boolean>(`document.body.classList.contains('${kind}')`));
    for (const by of ['due date', 'condition']) {
      await frame.getByRole('radio', { name: by }).check();
      await accessible(editor);
      await editor.screenshot(`${kind}-${by.replace(' ', '-')}`);
    }
  },
});

export const roofPlan: Scenario = {
  name: 'roof-plan',
  workspace: 'examples/single',
  steps: [
    {
      name: 'opened beside the text, which keeps the cursor',
      async run(editor) {
        await editor.open('wren.rig');
        await cursorAt(editor, 'opening      bath-vent');
        await editor.command('Rigseam: Show Roof Plan');
        await editor.page.locator('.tab', { hasText: 'Roof of Wren' }).waitFor();
        await eventually('the seam of the cursor lit', async () => (await lit(editor)).join() === 'bath-vent');
        assert.match((await label(editor, 'roadside')) ?? '', /^roadside edge, .*, 18 ft 8 in, /);
        await accessible(editor);
      },
    },
    {
      name: 'by due date: the legend says what the patterns mean',
      async run(editor) {
        const page = await plan(editor);
        await page.getByRole('radio', { name: 'due date' }).check();
        await eventually('bands of due dates', async () =>
          /due|overdue/.test((await page.locator('.legend').textContent()) ?? ''),
        );
        await accessible(editor);
      },
    },
    {
      name: 'a click leads to the line, and so does Enter after the arrow keys',
      async run(editor) {
        await (await plan(editor)).getByRole('radio', { name: 'condition' }).check();
        await (await seam(editor, 'fridge-vent')).click();
        const at = `Ln ${lineOf(editor, 'opening      fridge-vent')}, `;
        await eventually('the line of the seam', async () => (await status(editor))?.startsWith(at) ?? false);
        await eventually('the seam lit', async () => (await lit(editor)).join() === 'fridge-vent');
        await (await seam(editor, 'fridge-vent')).focus();
        await editor.press('Home');
        await editor.press('Enter');
        await eventually('another line', async () => !((await status(editor))?.startsWith(at) ?? false));
      },
    },
    {
      name: 'the cursor in a plan lights up what it names, in a record of another file too',
      async run(editor) {
        await editor.goTo(lineOf(editor, 'seal         bath-vent, bath-stack'), 8);
        await eventually(
          'three seams',
          async () => (await lit(editor)).toSorted().join() === 'aerial,bath-stack,bath-vent',
        );
        await editor.open('wren/2026.rig');
        await editor.goTo(5, 6);
        await eventually('the seam of a finding', async () => (await lit(editor)).join() === 'front');
        await editor.open('wren.rig');
      },
    },
    {
      name: 'an edit is followed, and a half-typed line takes nothing away',
      async run(editor) {
        const line = lineOf(editor, 'opening      sink-stack');
        await editor.goTo(line, 1);
        await editor.type('  opening skylight 20 in by 20 in at 4 ft, 5 ft\n');
        await eventually('the new opening', async () => (await seam(editor, 'skylight')).isVisible());
        await editor.goTo(line, 1);
        await editor.type('  opening half 20 in by\n');
        const page = await plan(editor);
        await eventually('a word about it', async () =>
          /cannot be read/.test((await page.locator('[role=status]').first().textContent()) ?? ''),
        );
        assert.equal(await (await seam(editor, 'skylight')).isVisible(), true);
        await editor.screenshot('half-typed');
        for (let i = 0; i < 3; i++) await editor.undo();
        await editor.command('File: Revert File');
        await eventually('all as before', async () => (await page.locator('[id="seam-skylight"]').count()) === 0);
        assert.equal(await page.locator('.note').count(), 0);
      },
    },
    {
      name: 'saved as the same SVG as among the papers',
      async run(editor) {
        await (await plan(editor)).getByRole('button', { name: 'Save as SVG…' }).click();
        const input = editor.page.locator('.quick-input-widget input').first();
        await input.waitFor();
        await eventually('the name of the paper', async () => /Wren\.roof\.svg$/.test(await input.inputValue()));
        await input.fill(join(editor.workspace, 'saved.svg'));
        await editor.press('Enter');
        const text = () => readFileSync(join(editor.workspace, 'saved.svg'), 'utf8');
        await eventually('the file', async () => {
          try {
            return text().startsWith('<svg');
          } catch {
            return false;
          }
        });
        assert.match(text(), /data-item="roadside"/);
      },
    },
    {
      name: 'printed by way of the browser',
      async run(editor) {
        const [download] = await Promise.all([
          editor.page.waitForEvent('download'),
          (await plan(editor)).getByRole('button', { name: 'Print…' }).click(),
        ]);
        assert.equal(download.suggestedFilename(), 'Wren.roof.html');
        assert.match(readFileSync(await download.path(), 'utf8'), /@page\{size:landscape/);
        await editor.command('Notifications: Clear All Notifications');
      },
    },
    themed('in a light theme', 'Default Light Modern', 'vscode-light'),
    themed('in a dark theme', 'Default Dark Modern', 'vscode-dark'),
    themed('in high contrast', 'Default High Contrast', 'vscode-high-contrast'),
    {
      name: 'there again after a restart, by due date as before',
      async run(editor) {
        await (await plan(editor)).getByRole('radio', { name: 'due date' }).check();
        await editor.command('Developer: Reload Window');
        await editor.page.locator('.tab', { hasText: 'Roof of Wren' }).waitFor({ state: 'detached' });
        await editor.page.locator('.tab', { hasText: 'Roof of Wren' }).waitFor({ timeout: 30_000 });
        await editor.page.locator('.tab', { hasText: 'Roof of Wren' }).click();
        const page = await plan(editor);
        await eventually('by due date', () => page.getByRole('radio', { name: 'due date' }).isChecked());
        await accessible(editor);
      },
    },
    {
      name: 'at 200 per cent',
      async run(editor) {
        await editor.page.setViewportSize({ width: 750, height: 475 });
        await accessible(editor);
      },
    },
  ],
};
