// What takes long can be called off: references over many files.
import { expect, test } from 'vitest';
import { CancellationTokenSource, type Location, LSPErrorCodes } from 'vscode-languageserver';
import { startEditor } from './editor.ts';

test('references stop when the editor no longer wants them, and are whole when it does', async () => {
  const files: Record<string, string> = { 'materials.rig': 'sealant GreyLap { family solvent-lap }\n' };
  for (let i = 0; i < 60; i++) files[`rigs/r${i}.rig`] = `use "../materials.rig"\nrig R${i} {\n  factory GreyLap\n}\n`;
  const editor = await startEditor({ files });
  try {
    await editor.open('materials.rig');
    await editor.quiet();
    const params = {
      textDocument: { uri: editor.uri('materials.rig') },
      position: editor.positionOf('materials.rig', 'GreyLap'),
      context: { includeDeclaration: true },
    };
    const off = new CancellationTokenSource();
    const asked = editor.connection.sendRequest('textDocument/references', params, off.token);
    off.cancel();
    await expect(asked).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
    const all = await editor.connection.sendRequest<Location[]>('textDocument/references', params);
    expect(all).toHaveLength(61);
  } finally {
    editor.stop();
  }
});
