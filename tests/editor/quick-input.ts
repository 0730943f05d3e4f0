// The questions that the editor asks one after another, answered as a person would.
import type { Editor } from './editor.ts';
import { eventually } from './scenario.ts';

export const widget = (editor: Editor) => editor.page.locator('.quick-input-widget');

/** Waits until the quick input asks something. */
export async function asks(editor: Editor, words: RegExp): Promise<void> {
  await eventually(`a question like ${words}`, async () => {
    const placeholder = await widget(editor).locator('input[type=text]').first().getAttribute('placeholder');
    return words.test(`${await widget(editor).textContent()} ${placeholder}`);
  });
}

/** Extensions are there a little later than the palette. */
export async function untilListed(editor: Editor, command: string): Promise<void> {
  await eventually(
    `${command} in the palette`,
    async () => {
      await editor.press('F1');
      await widget(editor).locator('input[type=text]').first().fill(`>${command}`);
      await editor.page.waitForTimeout(500);
      const is = await widget(editor).locator('.monaco-list-row', { hasText: command }).count();
      await editor.press('Escape');
      return is > 0;
    },
    40,
  );
}

/** Types an answer and sends it off. */
export async function say(editor: Editor, text: string): Promise<void> {
  await widget(editor).locator('input[type=text]').first().fill(text);
  await editor.press('Enter');
}

/** Chooses the entry of a list that begins with a text. */
export async function choose(editor: Editor, label: string): Promise<void> {
  await widget(editor)
    .locator('.quick-input-list .monaco-list-row')
    .filter({ has: editor.page.locator('.label-name', { hasText: new RegExp(`^\\s*${label}`) }) })
    .first()
    .click();
}

export const lineWith = async (editor: Editor, text: string) =>
  eventually(`a line \`${text}\``, async () =>
    (await editor.page.locator('.editor-instance .view-line').allTextContents()).some((line) =>
      line.replace(/\s+/g, ' ').includes(text),
    ),
  );
