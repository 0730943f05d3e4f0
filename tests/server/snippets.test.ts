// Every snippet: written with its defaults it reads without an error and is what the formatter would make of it.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { CompletionItem, CompletionList } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { wholeRecords } from '../../language/authoring/whole-records.ts';
import { format } from '../../language/format/index.ts';
import { readFile } from '../../language/records/file.ts';
import { fileTable } from '../../language/statements/file.ts';
import { historyTable } from '../../language/statements/past.ts';
import type { BlockTable } from '../../language/statements/row.ts';
import { exampleFile } from '../worked-example/text.ts';
import { type Editor, startEditor, today } from './editor.ts';
import { marked } from './marked.ts';

const files = {
  'yard/materials.rig': exampleFile('yard/materials.rig'),
  'yard/policy.rig': exampleFile('yard/policy.rig'),
  'rigs/models.rig': exampleFile('rigs/models.rig'),
  'rigs/test.rig': '',
};
const clients = {
  plain: {},
  stops: { textDocument: { completion: { completionItem: { snippetSupport: true } } } },
} as const;
let editors: Record<keyof typeof clients, Editor>;
beforeAll(async () => {
  const start = async (capabilities: object) => {
    const editor = await startEditor({ files, capabilities });
    await editor.quiet();
    return editor;
  };
  editors = { plain: await start(clients.plain), stops: await start(clients.stops) };
});
afterAll(() => Promise.all(Object.values(editors).map((editor) => editor.stop())));

async function offered(client: keyof typeof clients, text: string): Promise<CompletionItem[]> {
  const { text: without, position } = marked(text);
  const editor = editors[client];
  await editor.open('rigs/test.rig', without);
  const context = { triggerKind: 1 };
  const got = await editor.request<CompletionList>('textDocument/completion', 'rigs/test.rig', { position, context });
  await editor.close('rigs/test.rig');
  return got.items;
}

function accepted(text: string, item: CompletionItem): string {
  const { text: without } = marked(text);
  const document = TextDocument.create('', 'rig', 0, without);
  return TextDocument.applyEdits(document, [item.textEdit as never]);
}
const isStatement = ({ sortText }: CompletionItem) => sortText?.startsWith('2') === true;

/** A block of each kind with the cursor alone in it. */
const places: readonly (readonly [BlockTable, string])[] = [[fileTable, '<|>\n'], ...blocksIn(fileTable, '', '', '')];

function blocksIn(table: BlockTable, head: string, tail: string, indent: string): (readonly [BlockTable, string])[] {
  return [...table.rows.values()].flatMap(({ block, example, class: kind }) => {
    if (!block || kind === 'record') return [];
    const [heading = ''] = example.split('{');
    const [before, after] = [`${head}${indent}${heading.trim()} {\n`, `${indent}}\n${tail}`];
    return [[block, `${before}${indent}  <|>\n${after}`] as const, ...blocksIn(block, before, after, `${indent}  `)];
  });
}

describe.each(places)('in a block of kind %#', (table, text) => {
  test('each statement is whole, reads, and is in form', async () => {
    const items = (await offered('plain', text)).filter(isStatement);
    expect(items.map(({ label }) => label).filter((label) => !label.includes('…'))).toEqual([...table.rows.keys()]);
    for (const item of items) {
      const written = accepted(text, item);
      expect(readFile(written).problems, written).toEqual([]);
      // The lines around it are those of the test.
      const first = text.slice(0, text.indexOf('<|>')).split('\n').length - 1;
      const last = first + newText(item).split('\n').length - 1;
      const { edits } = format(written);
      expect(
        edits.filter(({ line }) => line >= first && line <= last),
        written,
      ).toEqual([]);
      expect(item.insertTextFormat).toBeUndefined();
    }
  });
});

test('every word that has a form of its own is a statement', () => {
  for (const word of Object.keys(wholeRecords))
    expect(fileTable.rows.has(word) || historyTable.rows.has(word), word).toBe(true);
});

const inRig = (line: string) =>
  `use "../yard/materials.rig"\nuse "models.rig"\n\nrig Test like Alder28 {\n  ${line}\n}\n`;
const named = (items: readonly CompletionItem[], label: string) => {
  const item = items.find((one) => one.label === label);
  if (!item) throw new Error(`${label} is not offered`);
  return item;
};
const newText = ({ textEdit }: CompletionItem) => textEdit?.newText ?? '';

describe('with stops', () => {
  test('they give the same text as without, once the stops are taken out', async () => {
    for (const text of ['<|>\n', inRig('<|>'), 'policy Home {\n  <|>\n}\n']) {
      const [plain, stops] = [await offered('plain', text), await offered('stops', text)];
      const indent = text.includes('  <|>') ? '  ' : '';
      for (const item of stops.filter(isStatement)) {
        expect(item.insertTextFormat).toBe(2);
        const without = newText(item)
          .replace(/\$\{\d+\|((?:[^\\,|]|\\.)*)[^}]*\|\}/g, '$1')
          .replace(/\$\{\d+:((?:[^\\}]|\\.)*)\}/g, '$1')
          .replace(/\\([\\$},|])/g, '$1');
        expect(without.replaceAll('\n', `\n${indent}`)).toBe(newText(named(plain, item.label)));
      }
    }
  });

  test('closed sets of words are choices', async () => {
    const items = await offered('stops', 'model Test {\n  <|>\n}\n');
    expect(newText(named(items, 'falls'))).toMatch(/\$\{1\|edges,[\w,]+\|\}/);
    expect(newText(named(items, 'cap'))).toMatch(/^cap +\$\{1\|front,rear\|\}/);
  });

  test('an inspection has a line for each seam, round the roof, none of them sound before it is said', async () => {
    const item = named(await offered('stops', inRig('<|>')), 'inspected { … }');
    const lines = newText(item).split('\n');
    expect(lines[0]).toMatch(new RegExp(`^inspected +\\$\\{1:${today}\\} \\{$`));
    const seams = lines.slice(1, -1).map((line) => line.trim().split(' ')[0] as string);
    expect(seams.slice(0, 2)).toEqual(['curbside', 'spout-1']);
    expect(seams.indexOf('skylight')).toBeGreaterThan(seams.indexOf('front'));
    expect(new Set(seams).size).toBe(seams.length);
    expect(lines[1]).toContain('|not-seen,sound,chalky,hairline,');
    expect(item.filterText).toBe('inspected');
  });

  test('what was taken away is not inspected', async () => {
    const text = inRig(`removed 2026-01-05 skylight\n  <|>`);
    expect(newText(named(await offered('stops', text), 'inspected { … }'))).not.toContain('skylight');
  });

  test('a record is of today, of this rig, with a material of its kind', async () => {
    const items = await offered('stops', inRig('<|>'));
    expect(newText(named(items, 'sealed'))).toMatch(
      new RegExp(`^sealed +\\$\\{1:${today}\\} \\$\\{2\\|curbside,[^|]+\\|\\} with \\$\\{3\\|GreyLap,`),
    );
    expect(newText(named(items, 'taped'))).toContain('|EdgeTape4,');
  });
});

describe('only where they may stand', () => {
  test('no records of a rig at the top, no declarations in it', async () => {
    const top = (await offered('stops', '<|>')).map(({ label }) => label);
    expect(top).not.toContain('inspected');
    expect(top).not.toContain('inspected { … }');
    expect((await offered('stops', inRig('<|>'))).map(({ label }) => label)).not.toContain('fleet');
  });

  test('in a block on one line they bring no lines of their own', async () => {
    const items = await offered('stops', 'history Test { washed 2026-04-18 <|> }\n');
    for (const item of items) expect(newText(item)).not.toContain('\n');
    expect(newText(named(items, 'inspected'))).toBe('inspected');
  });

  test('where the rest of the line is there, only the word', async () => {
    const items = await offered('stops', inRig('seal<|> 2026-04-18 curbside'));
    expect(newText(named(items, 'sealed'))).toBe('sealed');
    expect(items.map(({ label }) => label)).not.toContain('inspected { … }');
  });
});
