// A folder whose author nobody vouches for: what is written there is checked, and nothing is written but by a person's own
// typing, until the folder is trusted.
import assert from 'node:assert/strict';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { addLine, eventually, type Scenario, saysError, squiggles } from '../scenario.ts';

export const restricted: Scenario = {
  name: 'restricted',
  workspace: 'examples/single',
  trusted: false,
  steps: [
    {
      name: 'not trusted: the editor says so',
      async run(editor) {
        await editor.page.locator('.statusbar-item', { hasText: 'Restricted Mode' }).waitFor();
      },
    },
    {
      name: 'figures are shown and mistakes are said',
      async run(editor) {
        await editor.open('wren.rig');
        await eventually('a lens', async () => (await editor.page.locator('.codelens-decoration').count()) > 0, 30);
        await addLine(editor, '  sealed    2026-08-01 fridge-vnt with LevelLap');
        await eventually('one squiggle', async () => (await squiggles(editor)) === 1);
        await eventually('its message', () => saysError(editor, /did you mean `fridge-vent`/));
        await editor.command('File: Revert File');
        await eventually('no squiggle', async () => (await squiggles(editor)) === 0);
      },
    },
    {
      name: 'a new rig is not written, and why',
      async run(editor) {
        await editor.command('Rigseam: New Rig Record');
        const message = editor.page.locator('.notification-toast', {
          hasText: 'Writing files needs a trusted workspace',
        });
        await message.waitFor();
        await editor.page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
        await editor.command('Notifications: Clear All Notifications');
        await message.waitFor({ state: 'detached' });
      },
    },
    {
      name: 'git is not run, and why',
      async run(editor) {
        await editor.command('Rigseam: Compare with HEAD');
        const message = editor.page.locator('.notification-toast', { hasText: 'runs git, which needs a trusted' });
        await message.waitFor();
        await editor.command('Notifications: Clear All Notifications');
        await message.waitFor({ state: 'detached' });
      },
    },
    {
      name: 'the roof plan is shown, and not saved',
      async run(editor) {
        await editor.open('wren.rig');
        await editor.command('Rigseam: Show Roof Plan');
        const plan = editor.page.frameLocator('iframe.webview.ready').frameLocator('#active-frame').locator('#page');
        await plan.getByRole('button', { name: /^roadside edge, / }).waitFor();
        await plan.getByRole('button', { name: 'Save as SVG…' }).click();
        const message = editor.page.locator('.notification-toast', {
          hasText: 'Writing files needs a trusted workspace',
        });
        await message.waitFor();
        await editor.command('Notifications: Clear All Notifications');
        await message.waitFor({ state: 'detached' });
        await editor.command('View: Close All Editors in Group');
        await editor.open('wren.rig');
      },
    },
    {
      name: 'writing says why not, and writes nothing',
      async run(editor) {
        await editor.command('Rigseam: Write Estimate and Schedule');
        await editor.page
          .locator('.notification-toast', { hasText: 'Writing files needs a trusted workspace' })
          .waitFor();
        assert.equal(existsSync(join(editor.workspace, 'rigseam-out')), false);
      },
    },
    {
      name: 'trusted by the button of the message, it writes',
      async run(editor) {
        await editor.page.getByRole('button', { name: 'Manage Workspace Trust' }).click();
        await editor.page.locator('.workspace-trust-editor').getByText('Trust', { exact: true }).first().click();
        await editor.page
          .locator('.statusbar-item', { hasText: 'Restricted Mode' })
          .waitFor({ state: 'detached', timeout: 20_000 });
        await editor.page.locator('.monaco-modal-editor-block').click({ position: { x: 5, y: 400 } });
        await editor.page.locator('.workspace-trust-editor').waitFor({ state: 'hidden' });
        await editor.open('wren.rig');
        await editor.command('Rigseam: Write Estimate and Schedule');
        await eventually(
          'the estimate',
          async () => existsSync(join(editor.workspace, 'rigseam-out/Wren.estimate.md')),
          30,
        );
      },
    },
  ],
};
