// Formatting in an editor: the whole, a selection, and while typing.
import { afterEach, expect, test } from 'vitest';
import type { Position, TextEdit } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { inForm } from '../format/texts.ts';
import { type Editor, startEditor } from './editor.ts';

let editor: Editor | undefined;
afterEach(async () => {
  await editor?.stop();
  editor = undefined;
});

const options = { tabSize: 2, insertSpaces: true };

async function opened(text: string): Promise<Editor> {
  editor = await startEditor({ files: { 'a.rig': text } });
  await editor.open('a.rig');
  return editor;
}

const after = (at: Editor, edits: readonly TextEdit[]) =>
  TextDocument.applyEdits(TextDocument.create('a', 'rig', 0, at.text('a.rig')), [...edits]);

/** The text once something was typed at the mark `|`, and the editor has asked what to do about it. */
async function typed(text: string, ch: '\n' | '}'): Promise<string> {
  const at = await opened(text.replace('|', ''));
  const offset = text.indexOf('|');
  const before = text.slice(0, offset).split('\n');
  const position: Position = { line: before.length - 1, character: (before.at(-1) as string).length };
  const edits = await at.request<TextEdit[]>('textDocument/onTypeFormatting', 'a.rig', { ch, position, options });
  return after(at, edits);
}

test('the server says what it formats, and when', async () => {
  const at = await opened('');
  expect(at.initialized.capabilities).toMatchObject({
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    documentOnTypeFormattingProvider: { firstTriggerCharacter: '}', moreTriggerCharacter: ['\n'] },
  });
});

test('formats the text as it is typed now, and nothing where it is in form', async () => {
  const at = await opened('rig Teal {\nunit "1"\n}\n');
  await at.replace('a.rig', '"1"', '"1042"');
  const edits = await at.request<TextEdit[]>('textDocument/formatting', 'a.rig', { options });
  expect(after(at, edits)).toBe('rig Teal {\n  unit         "1042"\n}\n');
  await at.replace('a.rig', at.text('a.rig'), inForm(at.text('a.rig')));
  expect(await at.request('textDocument/formatting', 'a.rig', { options })).toEqual([]);
});

test('formats a selection, without the line in front of which it ends', async () => {
  const at = await opened('rig Teal {\nunit "1"\nvin "2"\nbuilt 2016\n}\n');
  const range = { start: { line: 2, character: 1 }, end: { line: 3, character: 0 } };
  const edits = await at.request<TextEdit[]>('textDocument/rangeFormatting', 'a.rig', { range, options });
  expect(after(at, edits)).toBe('rig Teal {\nunit "1"\n  vin          "2"\nbuilt 2016\n}\n');
});

test.each([
  ['a new line of a block', 'rig Teal {\n|\n}\n', 'rig Teal {\n  \n}\n'],
  ['the line that was left', 'rig Teal {\nunit "1"  # one\n|\n}\n', 'rig Teal {\n  unit         "1"  # one\n  \n}\n'],
  [
    'a new finding',
    'rig Teal {\n  inspected 2026-04-18 {\n|\n  }\n}\n',
    'rig Teal {\n  inspected 2026-04-18 {\n    \n  }\n}\n',
  ],
  ['no other line', 'rig Teal {\nvin "2"\n  unit "1"\n  |\n}\n', 'rig Teal {\nvin "2"\n  unit         "1"\n  \n}\n'],
  [
    'a list that goes on',
    'rig Teal {\n  sealed    2026-04-20 bath-vent,\n|\n}\n',
    'rig Teal {\n  sealed    2026-04-20 bath-vent,\n            \n}\n',
  ],
  [
    'a line that was split',
    'rig Teal {\n  unit         "1"\n|vin   "2"\n}\n',
    'rig Teal {\n  unit         "1"\n  vin   "2"\n}\n',
  ],
  ['outside of blocks', 'rig Teal {\n}\n   |', 'rig Teal {\n}\n'],
  ['a block that is not closed yet', '  rig Teal {\n|', '  rig Teal {\n    '],
  ['two blank lines, which stay while somebody types', 'rig Teal\n\n|\n', 'rig Teal\n\n\n'],
])('Enter: %s', async (_what, text, becomes) => {
  expect(await typed(text, '\n')).toBe(becomes);
});

test.each([
  [
    'goes below its heading',
    'rig Teal {\n  inspected 2026-04-18 {\n    }|\n}\n',
    'rig Teal {\n  inspected 2026-04-18 {\n  }\n}\n',
  ],
  ['closes the outermost block', 'rig Teal {\n  unit         "1"\n  }|\n', 'rig Teal {\n  unit         "1"\n}\n'],
  ['behind other words moves nothing', 'rig Teal {\n    unit "1" }|\n', 'rig Teal {\n    unit "1" }\n'],
  ['that closes nothing stays', 'rig Teal\n  }|\n', 'rig Teal\n  }\n'],
])('a brace that %s', async (_what, text, becomes) => {
  expect(await typed(text, '}')).toBe(becomes);
});
