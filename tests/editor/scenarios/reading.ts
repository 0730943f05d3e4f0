// What a person sees without writing: figures that lead somewhere, the page of a rule, problems of the whole folder; and all
// of it in a light and a high-contrast theme, and large.
import type { Editor } from '../editor.ts';
import { errors, eventually, lineOf, type Scenario } from '../scenario.ts';

const frames = (editor: Editor) => editor.page.frames().map((frame) => frame.locator('body'));

/** Whether some page shown inside the workbench holds a text. */
async function aPageSays(editor: Editor, text: RegExp): Promise<boolean> {
  for (const body of frames(editor)) {
    const said = await body.textContent({ timeout: 300 }).catch(() => null);
    if (text.test(said ?? '')) return true;
  }
  return false;
}

export const reading: Scenario = {
  name: 'reading',
  workspace: 'examples/single',
  steps: [
    {
      name: 'a lens leads to the record that it follows from',
      async run(editor) {
        await editor.open('wren.rig');
        const next = editor.page.locator('.codelens-decoration a', { hasText: /^next: / }).first();
        await next.waitFor({ timeout: 30_000 });
        await next.click();
        await eventually('the cursor away from the start of the file', async () => {
          const said = await editor.page.locator('.statusbar-item', { hasText: /^Ln \d+/ }).textContent();
          return !/Ln 1, Col 1$/.test(said ?? '');
        });
      },
    },
    {
      name: 'the sum behind a hint',
      async run(editor) {
        await editor.open('wren.rig');
        await editor.goTo(lineOf(editor, 'edge '), 1);
        const hint = editor.page
          .locator('.editor-instance .view-line', { hasText: /edge\s+curbside/ })
          .locator('span[class*="dyn-rule"]', { hasText: 'ft' })
          .last();
        await hint.hover();
        await eventually('the sum in a tooltip', async () =>
          /wren\.rig:\d+/.test((await editor.page.locator('.monaco-hover').allInnerTexts()).join(' ')),
        );
      },
    },
    {
      name: 'the page of a rule at the cursor',
      async run(editor) {
        await editor.press('Escape');
        await editor.goTo(lineOf(editor, 'opening      galley-vent'), 1);
        const line = lineOf(editor, 'opening      galley-vent');
        await editor.goTo(line, 1);
        await editor.type('zzz');
        await eventually('an error', async () => (await errors(editor)).length > 0);
        await editor.goTo(line, 2);
        await editor.command('Rigseam: Explain Rule');
        const first = editor.page.locator('.quick-input-list .monaco-list-row').first();
        await eventually('the rule at the cursor first', async () =>
          /at the cursor/.test((await first.textContent()) ?? ''),
        );
        await editor.press('Enter');
        await eventually('its page', () => aPageSays(editor, /unknown-statement[\s\S]*quick fix/));
        await editor.page.waitForTimeout(1000);
      },
    },
    {
      name: 'closed without saving, nothing is left of it',
      async run(editor) {
        await editor.command('View: Close All Editors');
        const dialog = editor.page.locator('.monaco-dialog-box');
        await dialog.waitFor();
        await dialog.locator('a, button', { hasText: "Don't Save" }).first().click();
        await eventually('no error', async () => (await errors(editor)).length === 0);
      },
    },
    {
      name: 'in a light theme',
      async run(editor) {
        await editor.open('wren.rig');
        editor.configure({ 'workbench.colorTheme': 'Light+' });
        await editor.page.locator('.monaco-workbench.vs').waitFor();
      },
    },
    {
      name: 'in a dark theme',
      async run(editor) {
        editor.configure({ 'workbench.colorTheme': 'Dark Modern' });
        await editor.page.locator('.monaco-workbench.vs-dark').waitFor();
      },
    },
    {
      name: 'in high contrast, at 200 per cent',
      async run(editor) {
        editor.configure({ 'workbench.colorTheme': 'Default High Contrast' });
        await editor.page.locator('.monaco-workbench.hc-black').waitFor();
        // What a screen of 1500 by 950 shows at 200 per cent, without the panels around the text.
        await editor.command('View: Toggle Panel Visibility');
        await editor.command('View: Toggle Primary Side Bar Visibility');
        await editor.page.setViewportSize({ width: 750, height: 475 });
        await eventually(
          'the editor',
          async () => (await editor.page.locator('.editor-instance .view-line').count()) > 3,
        );
      },
    },
  ],
};
