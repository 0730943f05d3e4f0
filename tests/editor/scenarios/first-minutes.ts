// With the walkthrough alone: from an empty folder to a written estimate.
import assert from 'node:assert/strict';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { asks, choose, lineWith, say, untilListed } from '../quick-input.ts';
import { errors, eventually, type Scenario } from '../scenario.ts';

let begun = 0;

export const firstMinutes: Scenario = {
  name: 'first-minutes',
  steps: [
    {
      name: 'the walkthrough, from the palette',
      async run(editor) {
        begun = Date.now();
        await untilListed(editor, 'Rigseam: New Rig Record');
        await editor.command('Welcome: Open Walkthrough...');
        await editor.page.locator('.quick-input-widget input').first().fill('Rigseam');
        await editor.page
          .locator('.quick-input-list .monaco-list-row', { hasText: 'first five minutes' })
          .first()
          .click();
        await editor.page.locator('.getting-started-step', { hasText: 'Write down a rig' }).first().waitFor();
      },
    },
    {
      name: 'its first button asks for a rig',
      async run(editor) {
        await editor.page.getByRole('button', { name: 'New Rig Record' }).first().click();
        await asks(editor, /What kind of rig/);
        await choose(editor, 'Van');
        await asks(editor, /Its name/);
        await say(editor, 'Teal');
        await asks(editor, /In which units/);
        await choose(editor, 'Feet and inches');
        await asks(editor, /How long is the roof/);
        await say(editor, '19 ft');
        await asks(editor, /How wide/);
        await say(editor, '6 ft');
        await asks(editor, /covered with/);
        await choose(editor, 'epdm');
        await asks(editor, /What is on the roof/);
        await editor.press('Enter');
        await asks(editor, /How many slide-outs/);
        await choose(editor, '0|No');
        await asks(editor, /new or used/);
        await choose(editor, 'Used');
        await asks(editor, /When did it come/);
        await say(editor, '2024-04-10');
        await asks(editor, /no policy\.rig yet/);
        await choose(editor, 'Write policy.rig too');
        await editor.page.locator('.tab.active', { hasText: 'Teal.rig' }).waitFor();
        await lineWith(editor, 'found 2024-04-10 all with unknown');
      },
    },
    {
      name: 'a planned line, and what it takes stands behind it',
      async run(editor) {
        const last = readFileSync(join(editor.workspace, 'Teal.rig'), 'utf8').trimEnd().split('\n').length;
        await editor.goTo(last, 1);
        await editor.type('  seal vent with GenericSolventLap\n');
        await eventually('the bead and its volume', async () =>
          (await editor.page.locator('.editor-instance .view-line').allTextContents()).some((line) =>
            /GenericSolventLap.*bead/.test(line.replace(/\s/g, ' ')),
          ),
        );
      },
    },
    {
      name: 'the papers',
      async run(editor) {
        await editor.press('Control+s');
        await editor.command('Rigseam: Write Estimate and Schedule');
        const estimate = join(editor.workspace, 'rigseam-out/Teal.estimate.md');
        await eventually('the estimate', async () => existsSync(estimate), 30);
        assert.match(readFileSync(estimate, 'utf8'), /GenericSolventLap/);
        assert.deepEqual(
          (await errors(editor)).filter((text) => /error/i.test(text)),
          [],
        );
        assert.ok(Date.now() - begun < 300_000, 'five minutes');
      },
    },
  ],
};
