// Type hierarchy, selection, folding, semantic colours and signature help; and all of them on texts that are damaged.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type {
  SelectionRange,
  SemanticTokens,
  SemanticTokensLegend,
  SignatureHelp,
  TypeHierarchyItem,
  WorkspaceEdit,
} from 'vscode-languageserver';
import { exampleFile } from '../worked-example/text.ts';
import { type Editor, startEditor } from './editor.ts';
import { marked } from './marked.ts';

const heron = 'rigs/heron.rig';
const models = 'rigs/models.rig';
let editor: Editor;

beforeAll(async () => {
  editor = await startEditor({
    files: {
      'yard/materials.rig': `${exampleFile('yard/materials.rig')}\nsealant DarkLap like GreyLap { skin 2 h to 5 h }\n`,
      'yard/policy.rig': exampleFile('yard/policy.rig'),
      [models]: `${exampleFile(models)}\nmodel Alder30 like Alder28 { roof 30 ft by 8 ft 2 in epdm }\n`,
      [heron]: exampleFile(heron),
    },
  });
  for (const path of [heron, models]) await editor.open(path);
  await editor.open('new.rig', '');
  await editor.quiet();
});
afterAll(() => editor.stop());

describe('type hierarchy', () => {
  const items = (path: string, text: string, offset = 0) =>
    editor.request<TypeHierarchyItem[] | null>('textDocument/prepareTypeHierarchy', path, {
      position: editor.positionOf(path, text, offset),
    });
  const ask = (method: string, item: TypeHierarchyItem | undefined) =>
    editor.connection.sendRequest<TypeHierarchyItem[]>(`typeHierarchy/${method}`, { item });

  test('what is like a model, in other files too, and what a rig is like', async () => {
    const [model] = (await items(heron, 'Alder28')) ?? [];
    expect(model).toMatchObject({ name: 'Alder28', detail: 'model' });
    expect((await ask('subtypes', model)).map(({ name, detail }) => [name, detail])).toEqual([
      ['Heron', 'rig'],
      ['Alder30', 'model'],
    ]);
    expect(await ask('supertypes', model)).toEqual([]);
    const [rig] = (await items(heron, 'Heron')) ?? [];
    expect((await ask('supertypes', rig)).map(({ name }) => name)).toEqual(['Alder28']);
  });
  test('of a material', async () => {
    const [material] = (await items(heron, 'GreyLap')) ?? [];
    expect((await ask('subtypes', material)).map(({ name }) => name)).toEqual(['DarkLap']);
  });
  test('a policy is not what a rig is like; an item is like nothing', async () => {
    const [policy] = (await items(heron, 'Yard')) ?? [];
    expect(await ask('subtypes', policy)).toEqual([]);
    expect(await items(heron, 'bath-vent   cracked')).toBeNull();
    expect(await items(heron, '# what happened', 3)).toBeNull();
  });
});

test('selection grows from the word to the file', async () => {
  const position = editor.positionOf(heron, 'EdgeTape4 used', 2);
  const [got] = await editor.request<SelectionRange[]>('textDocument/selectionRange', heron, { positions: [position] });
  const said: string[] = [];
  const lines = editor.text(heron).split('\n');
  for (let one = got; one; one = one.parent) {
    const { start, end } = one.range;
    said.push(
      start.line === end.line
        ? (lines[start.line]?.slice(start.character, end.character) ?? '')
        : `${end.line - start.line} lines`,
    );
  }
  const all = lines.length - 1;
  expect(said.slice(0, 4)).toEqual([
    'EdgeTape4',
    'EdgeTape4 used 1 roll of 25 ft',
    'with EdgeTape4 used 1 roll of 25 ft',
    'taped     2026-07-05 rear with EdgeTape4 used 1 roll of 25 ft air 71 F',
  ]);
  expect(said.at(-1)).toBe(`${all} lines`);
  expect(said).toHaveLength(7);
});

describe('semantic colours', () => {
  const colours = async (path: string, range?: object) => {
    const { legend } = editor.initialized.capabilities.semanticTokensProvider as { legend: SemanticTokensLegend };
    const method = `textDocument/semanticTokens/${range ? 'range' : 'full'}`;
    const { data } = await editor.request<SemanticTokens>(method, path, range ? { range } : {});
    const lines = editor.text(path).split('\n');
    const out: string[] = [];
    for (let [i, line, from] = [0, 0, 0]; i < data.length; i += 5) {
      const [down = 0, right = 0, length = 0, type = 0, modifiers = 0] = data.slice(i, i + 5);
      line += down;
      from = down > 0 ? right : from + right;
      const said = legend.tokenModifiers.filter((_, bit) => modifiers & (1 << bit));
      out.push([lines[line]?.slice(from, from + length), legend.tokenTypes[type], ...said].join(' '));
    }
    return out;
  };

  test('names by what they are', async () => {
    const got = await colours(heron);
    expect(got.slice(0, 3)).toEqual(['Heron class declaration', 'Alder28 interface', 'Yard struct']);
    expect(got).toContain('GreyLap type');
    expect(got).toContain('bath-vent property');
    expect(got).toContain('look-hard-due function defaultLibrary');
    expect(await colours(models)).toEqual(
      expect.arrayContaining(['epdm enumMember defaultLibrary', 'bath-vent property declaration']),
    );
  });
  test('of a range only its own', async () => {
    const line = editor.positionOf(heron, 'stripped  2026').line;
    const range = { start: { line, character: 0 }, end: { line: line + 1, character: 0 } };
    expect(await colours(heron, range)).toEqual(['bath-vent property', 'skylight property']);
  });
});

describe('signature help', () => {
  const help = async (text: string, trigger?: string) => {
    const { text: typed, position } = marked(text);
    await editor.replace('new.rig', editor.text('new.rig'), typed);
    const context = trigger
      ? { triggerKind: 2, triggerCharacter: trigger, isRetrigger: false }
      : { triggerKind: 1, isRetrigger: false };
    return editor.request<SignatureHelp | null>('textDocument/signatureHelp', 'new.rig', { position, context });
  };
  const active = (got: SignatureHelp | null) => {
    const [signature] = got?.signatures ?? [];
    const label = signature?.parameters?.[got?.activeParameter ?? -1]?.label;
    return Array.isArray(label) ? signature?.label.slice(...label) : undefined;
  };

  test.each([
    ['rig Heron {\n  sealed <|>', 'DATE'],
    ['rig Heron {\n  sealed 2026-04-20 <|>', '[TARGETS]'],
    ['rig Heron {\n  sealed 2026-04-20 bath-vent, <|>', '[TARGETS]'],
    ['rig Heron {\n  sealed 2026-04-20 bath-vent with <|>', '[with …]'],
    ['rig Heron {\n  sealed 2026-04-20 bath-vent with GreyLap air <|>', '[air …]'],
    ['model Alder {\n  opening bath-vent <|>', '[SIZE]'],
    ['model Alder {\n  opening bath-vent 16 in by <|>', '[SIZE]'],
  ])('%s', async (text, part) => {
    expect(active(await help(text, ' '))).toBe(part);
  });
  test('its form, its help and an example', async () => {
    const got = await help('rig Heron {\n  stored <|>');
    expect(got?.signatures[0]?.label).toBe('stored DAYS [note …] [by …]');
    expect(JSON.stringify(got?.signatures[0]?.documentation)).toContain('stored 2026-11-01 to 2027-03-31');
  });
  test.each([
    'rig Heron { # sealed <|>',
    'rig Heron {\n  washed 2026-04-20 note "wet, <|>"\n}',
    'rig Heron {\n  <|>',
    '<|>',
  ])('nothing in `%s`', async (text) => expect(await help(text, ' ')).toBeNull());
});

test('regions fold, one in another; one that is not closed does not', async () => {
  const text =
    '# region yard\ntape A { width 4 in }\n# region inner\ntape B { width 4 in }\n# endregion\n# endregion\n# region\n';
  await editor.replace('new.rig', editor.text('new.rig'), text);
  expect(await editor.request('textDocument/foldingRange', 'new.rig')).toEqual([
    { startLine: 4, endLine: 6, kind: 'comment' },
    { startLine: 2, endLine: 4, kind: 'region' },
    { startLine: 0, endLine: 5, kind: 'region' },
  ]);
});

test('an editor that takes no versions gets plain changes, and is told what a rename cannot reach', async () => {
  const said: string[] = [];
  editor.connection.onNotification('window/showMessage', ({ message }: { message: string }) => void said.push(message));
  const position = editor.positionOf(heron, 'Heron');
  const { changes } = await editor.request<WorkspaceEdit>('textDocument/rename', heron, { position, newName: 'Egret' });
  expect(changes).toEqual({
    [editor.uri(heron)]: [
      { range: { start: position, end: { ...position, character: position.character + 5 } }, newText: 'Egret' },
    ],
  });
  await editor.until(() => said.length > 0);
  expect(said[0]).toContain('`formerly Heron`');
});

test('whatever is half typed, each request is answered', async () => {
  const whole = readFileSync(join(import.meta.dirname, '../../examples/single/wren.rig'), 'utf8').slice(0, 2500);
  await fc.assert(
    fc.asyncProperty(
      fc.nat(whole.length),
      fc.nat(40),
      fc.constantFrom('', '{', '}', '"', ',', '#', 'with '),
      async (at, cut, put) => {
        const text = whole.slice(0, at) + put + whole.slice(at + cut);
        await editor.replace('new.rig', editor.text('new.rig'), text);
        const line = text.slice(0, at).split('\n').length - 1;
        const position = { line, character: at - (text.lastIndexOf('\n', at - 1) + 1) };
        const context = { includeDeclaration: true };
        for (const method of [
          'references',
          'documentHighlight',
          'prepareTypeHierarchy',
          'signatureHelp',
          'definition',
          'documentSymbol',
          'foldingRange',
          'semanticTokens/full',
        ])
          await editor.request(`textDocument/${method}`, 'new.rig', { position, context });
        await editor.request('textDocument/selectionRange', 'new.rig', { positions: [position] });
        await editor
          .request('textDocument/prepareRename', 'new.rig', { position })
          .catch(({ code }) => expect(code).toBe(-32803));
      },
    ),
    { numRuns: 40 },
  );
});
