// The calendar beside the text, and the sheets to print: from the lines above a heading.
import assert from 'node:assert/strict';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { FrameLocator } from 'playwright-core';
import type { Editor } from '../editor.ts';
import { eventually, type Scenario } from '../scenario.ts';

/** The page of the panel that is shown: a frame within a frame. */
const panel = (editor: Editor): FrameLocator =>
  editor.page.frameLocator('iframe.webview.ready').last().frameLocator('iframe').first();
const lens = (editor: Editor, text: string) => editor.page.locator('.codelens-decoration a', { hasText: text }).first();

export const views: Scenario = {
  name: 'views',
  workspace: 'examples/fleet',
  steps: [
    {
      name: 'the calendar of a fleet',
      async run(editor) {
        await editor.open('yard/fleet.rig');
        await lens(editor, 'calendar').click({ timeout: 40_000 });
        await panel(editor)
          .locator('h1', { hasText: /^Calendar of / })
          .waitFor();
        await panel(editor).locator('td .chip').first().waitFor({ timeout: 30_000 });
      },
    },
    {
      name: 'walked by keyboard, and a booking leads to its line',
      async run(editor) {
        await panel(editor).locator('[tabindex="0"][role=button]').focus();
        for (let day = 0; day < 40; day++) {
          await editor.press('ArrowRight');
          if ((await panel(editor).locator('.entries button', { hasText: 'booked' }).count()) > 0) break;
        }
        await panel(editor).locator('.entries button', { hasText: 'booked' }).first().click();
        await eventually('the line of the booking', async () => {
          const said = await editor.page
            .locator('.editor-instance .current-line-both-margin, .editor-instance .current-line')
            .count();
          const status = await editor.page.locator('.statusbar-item', { hasText: /^Ln \d+/ }).textContent();
          return said > 0 && !/Ln 1, Col 1\b/.test(status ?? '');
        });
      },
    },
    {
      name: 'the work sheet alone',
      async run(editor) {
        await editor.command('Rigseam: Write Work Sheet');
        const out = join(editor.workspace, 'rigseam-out');
        await eventually('the page of the morning', async () => existsSync(join(out, 'Highmeadow.morning.html')), 60);
        assert.equal(existsSync(join(out, 'Highmeadow.estimate.md')), false);
      },
    },
    {
      name: 'the walkthrough',
      async run(editor) {
        await editor.command('Welcome: Open Walkthrough...');
        const input = editor.page.locator('.quick-input-widget input').first();
        await input.fill('Rigseam');
        await editor.page
          .locator('.quick-input-list .monaco-list-row', { hasText: 'first five minutes' })
          .first()
          .click();
        await editor.page.locator('.getting-started-step', { hasText: 'Write down a rig' }).first().waitFor();
      },
    },
  ],
};
