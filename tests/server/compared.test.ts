// What has changed since a revision, in the editor: unsaved text counts, what cannot be read is refused in words.
import { execFileSync } from 'node:child_process';
import { expect, test } from 'vitest';
import { CancellationTokenSource, LSPErrorCodes } from 'vscode-languageserver';
import type * as z from 'zod';
import { compareMarkdown } from '../../language/compare/index.ts';
import { compareAsk } from '../../language/protocol/index.ts';
import { compareRevisions } from '../../server/cli/compare.ts';
import { readFolder } from '../project/workspace.ts';
import { type Editor, startEditor, today } from './editor.ts';

const git = (folder: string, ...args: string[]) =>
  execFileSync('git', ['-c', 'user.name=Test', '-c', 'user.email=test@example.org', ...args], {
    cwd: folder,
    env: { ...process.env, GIT_CONFIG_GLOBAL: '/dev/null', GIT_CONFIG_SYSTEM: '/dev/null' },
    stdio: ['ignore', 'pipe', 'pipe'],
  });

async function withExample(work: (editor: Editor) => Promise<void>, committed = true): Promise<void> {
  const editor = await startEditor({ files: readFolder('examples/single') });
  try {
    if (committed) {
      git(editor.folder, 'init', '--quiet', '--initial-branch=main');
      git(editor.folder, 'add', '--all');
      git(editor.folder, 'commit', '--quiet', '--message', 'first');
    }
    await work(editor);
    // What is still on its way to the editor has come before the server goes; on a busy machine that takes a second look.
    await editor.quiet();
    await editor.quiet();
  } finally {
    await editor.stop();
  }
}

const compare = async (
  { connection, uri }: Editor,
  revision = 'HEAD',
  ...token: readonly CancellationTokenSource['token'][]
): Promise<z.infer<typeof compareAsk.reply>> =>
  compareAsk.reply.parse(await connection.sendRequest(compareAsk.method, { uri: uri('wren.rig'), revision }, ...token));

test('what is typed and not saved is compared with the commit, as the command line does it once it is saved', async () => {
  await withExample(async (editor) => {
    await editor.open('materials.rig');
    expect(await compare(editor)).toMatchObject({ kind: 'compared', markdown: expect.not.stringContaining('64.50') });
    await editor.replace('materials.rig', '58.50 USD', '64.50 USD');
    const reply = await compare(editor);
    if (reply.kind !== 'compared') throw new Error(reply.because);
    expect(reply.markdown).toContain('64.50 USD');
    expect(reply.markdown).toContain('Wren');
    const disk = await compareRevisions([editor.folder], { asOf: today, today }, { from: 'HEAD' });
    expect(disk.rigs).toEqual([]);
    editor.write('materials.rig', editor.text('materials.rig'));
    const saved = await compareRevisions([editor.folder], { asOf: today, today }, { from: 'HEAD' });
    expect(compareMarkdown({ ...saved, to: 'the texts as they are now' })).toBe(reply.markdown);
  });
});

test('a revision that is none, and a folder without a repository, are refused with a way out', async () => {
  await withExample(async (editor) => {
    expect(await compare(editor, 'nowhere')).toMatchObject({
      because: expect.stringContaining('no revision `nowhere`'),
    });
    expect(await compare(editor, '--output=x')).toMatchObject({ kind: 'refused' });
  });
  await withExample(async (editor) => {
    expect(await compare(editor)).toMatchObject({ because: expect.stringContaining('lies in no git repository') });
  }, false);
});

test('files that only the editor knows have no revisions here', async () => {
  await withExample(async (editor) => {
    const reply = await editor.connection.sendRequest(compareAsk.method, {
      uri: 'vscode-vfs://host/folder/wren.rig',
      revision: 'HEAD',
    });
    expect(reply).toMatchObject({ kind: 'refused', because: expect.stringContaining('`rigseam compare`') });
  });
});

test('it is called off when nobody wants it any more, and the server goes on', async () => {
  await withExample(async (editor) => {
    await editor.open('materials.rig');
    await editor.replace('materials.rig', '58.50 USD', '64.50 USD');
    const off = new CancellationTokenSource();
    const asked = compare(editor, 'HEAD', off.token);
    off.cancel();
    await expect(asked).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
    expect(await compare(editor)).toMatchObject({ kind: 'compared' });
  });
});
