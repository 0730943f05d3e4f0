// Finding one's way and changing a name: colours of names, outline, references in place, a rename over many files.
import assert from 'node:assert/strict';
import type { Editor } from '../editor.ts';
import { errors, eventually, type Scenario } from '../scenario.ts';

/** Puts the cursor on a text of the lines that can be seen. */
async function clickOn(editor: Editor, line: RegExp, word: string): Promise<void> {
  const shown = editor.page.locator('.editor-instance .view-line').filter({ hasText: line }).first();
  await shown.locator('span span', { hasText: word }).first().click();
}

export const navigation: Scenario = {
  name: 'navigation',
  workspace: 'examples/fleet',
  steps: [
    {
      name: 'names have colours of their own',
      async run(editor) {
        await editor.open('rigs/models.rig');
        const colourOf = (text: string) =>
          editor.page
            .locator('.editor-instance .view-line span span', { hasText: text })
            .first()
            .evaluate((span) => getComputedStyle(span).color);
        await eventually('another colour for a seam than for a figure', async () => {
          const [seam, figure] = [await colourOf('bath-vent'), await colourOf('400')];
          return seam !== figure && seam !== (await colourOf('DeckLap'));
        });
      },
    },
    {
      name: 'the outline beside the text',
      async run(editor) {
        await editor.command('Explorer: Focus on Outline View');
        const outline = editor.page.locator('.outline-tree');
        await eventually('a model and its items', async () => /Larch/.test((await outline.textContent()) ?? ''));
      },
    },
    {
      name: 'references of a seam, in place',
      async run(editor) {
        await clickOn(editor, /opening\s+bath-vent/, 'bath-vent');
        await editor.press('Shift+F12');
        const peek = editor.page.locator('.reference-zone-widget');
        await peek.waitFor();
        await eventually('places in several files', async () => /references?/i.test((await peek.textContent()) ?? ''));
        await eventually('a history among them', async () =>
          /\.rig/.test((await peek.locator('.ref-tree').textContent()) ?? ''),
        );
        await editor.page.waitForTimeout(500);
      },
    },
    {
      name: 'a new name for a model, in all files',
      async run(editor) {
        await editor.press('Escape');
        const before = await errors(editor);
        await clickOn(editor, /^model/, 'Larch');
        await editor.press('F2');
        const input = editor.page.locator('.rename-box input');
        await input.waitFor();
        await input.fill('Linden');
        await editor.press('Enter');
        await editor.line('model Linden').first().waitFor();
        await editor.open('rigs/brook.rig');
        await editor.line('like Linden').first().waitFor();
        assert.deepEqual(await errors(editor), before);
      },
    },
    {
      name: 'a name that is taken is refused, and why',
      async run(editor) {
        await clickOn(editor, /^rig/, 'Brook');
        await editor.press('F2');
        const input = editor.page.locator('.rename-box input');
        await input.waitFor();
        await input.fill('cairn');
        await editor.press('Enter');
        await eventually('the reason', async () =>
          /differ in their case only/.test(
            (await editor.page.locator('.monaco-editor-overlaymessage, .notifications-toasts').allInnerTexts()).join(
              ' ',
            ),
          ),
        );
      },
    },
    {
      name: 'the form of a statement while it is typed',
      async run(editor) {
        await editor.press('Escape');
        await editor.goTo(5, 1);
        await editor.press('End');
        await editor.type('\nsealed ');
        const hints = editor.page.locator('.parameter-hints-widget');
        await hints.waitFor();
        await eventually('the form', async () => /DATE/.test((await hints.textContent()) ?? ''));
      },
    },
  ],
};
