// What a price costs before it is committed: the folder becomes a repository, a price is typed, the command tells the rest.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import type { Editor } from '../editor.ts';
import { eventually, type Scenario } from '../scenario.ts';

const git = (editor: Editor, ...args: string[]) =>
  execFileSync('git', ['-c', 'user.name=Test', '-c', 'user.email=test@example.org', ...args], {
    cwd: editor.workspace,
  });
const preview = (editor: Editor) =>
  editor.page.frameLocator('iframe.webview.ready').last().frameLocator('iframe').first();
const notice = (editor: Editor, text: string) => editor.page.locator('.notification-toast', { hasText: text });

export const compare: Scenario = {
  name: 'compare',
  workspace: 'examples/single',
  steps: [
    {
      name: 'without a repository it says so',
      async run(editor) {
        await editor.open('wren.rig');
        await eventually('a lens', async () => (await editor.page.locator('.codelens-decoration').count()) > 0, 40);
        await editor.command('Rigseam: Compare with HEAD');
        const input = editor.page.locator('.quick-input-widget input').first();
        await eventually('the revision to begin with', async () => (await input.inputValue()) === 'HEAD');
        await editor.press('Enter');
        await notice(editor, 'lies in no git repository').waitFor({ timeout: 30_000 });
        await editor.command('Notifications: Clear All Notifications');
      },
    },
    {
      name: 'a price that is typed and not saved, and what follows from it',
      async run(editor) {
        git(editor, 'init', '--quiet', '--initial-branch=main');
        git(editor, 'add', '--all');
        git(editor, 'commit', '--quiet', '--message', 'first');
        await editor.open('materials.rig');
        await editor.command('Replace');
        await editor.page.locator('.find-widget .find-part textarea').first().fill('58.50 USD');
        await editor.page.locator('.find-widget .replace-part textarea').first().fill('64.50 USD');
        await editor.press('Control+Alt+Enter');
        await editor.press('Escape');
        await editor.command('Rigseam: Compare with HEAD');
        await eventually(
          'the input',
          async () => (await editor.page.locator('.quick-input-widget input').first().inputValue()) === 'HEAD',
        );
        await editor.press('Enter');
        await preview(editor).getByText('64.50 USD').first().waitFor({ timeout: 60_000 });
        const told = await preview(editor).locator('body').textContent();
        assert.match(told ?? '', /Wren/);
        assert.match(told ?? '', /HEAD/);
      },
    },
  ],
};
