// Hover, definitions, outline, folding, links and symbols on the worked example.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type {
  DocumentLink,
  DocumentSymbol,
  FoldingRange,
  Hover,
  LocationLink,
  MarkupContent,
  SymbolInformation,
} from 'vscode-languageserver';
import { exampleFile } from '../worked-example/text.ts';
import { type Editor, startEditor } from './editor.ts';

const heron = 'rigs/heron.rig';
const models = 'rigs/models.rig';
const fleet = 'yard/fleet.rig';
const materials = 'yard/materials.rig';
let editor: Editor;

beforeAll(async () => {
  editor = await startEditor({
    files: {
      [materials]: exampleFile(materials),
      'yard/policy.rig': exampleFile('yard/policy.rig'),
      [models]: exampleFile(models),
      [heron]: exampleFile(heron),
      [fleet]: exampleFile(fleet),
      'rigs/bath-vent-1.jpg': '',
      'rigs/heron/2025.rig': 'history Heron {\n  washed 2025-05-05 bath-vent with MildWash\n}\n',
    },
    capabilities: { workspace: { textDocumentContent: {} } },
  });
  for (const path of [heron, models, fleet, materials, 'rigs/heron/2025.rig']) await editor.open(path);
  await editor.quiet();
});
afterAll(() => editor.stop());

describe('hover', () => {
  const hover = async (path: string, text: string, offset = 1) => {
    const position = editor.positionOf(path, text, offset);
    const got = await editor.request<Hover | null>('textDocument/hover', path, { position });
    return got && (got.contents as MarkupContent).value;
  };

  test.each<[string, string, string, string, number?]>([
    ['a statement word', heron, 'inspected 2026', 'An inspection and its findings.'],
    ['its example', heron, 'kept-until', 'kept-until 2036-12-31'],
    ['a clause word', heron, 'lot "K2231"', 'The lot number on the tube or roll.'],
    ['a length in metres', models, '28 ft by', '28 ft = 8.53 m'],
    ['a temperature in Celsius', heron, '64 F', '64 F = 18 C'],
    ['a volume in millilitres', materials, '10.3 fl-oz', '10.3 fl-oz = 305 mL'],
    ['a material: where it is declared', heron, 'GreyLap used', 'materials.rig'],
    ['a material: its price', heron, 'GreyLap used', '10.3 fl-oz at 9.75 USD'],
    ['a material: what it takes from the built-in library, with its kind', heron, 'EdgeTape4 used', 'built in'],
    [
      'a seam of the model: how long it is, with the sum',
      heron,
      'stripped  2026-04-20 bath-vent',
      '2 * (along + across)',
      24,
    ],
    ['a seam: its state', heron, 'rear with EdgeTape4', 'EdgeTape4 2026-07-05'],
    ['a seam in a history of another file', 'rigs/heron/2025.rig', 'bath-vent', '5 ft 4 in'],
    ['an item where it is described', models, 'bath-vent', '2 * (along + across)'],
    ['a side', models, 'curbside, roadside', 'an edge runs the length of the roof'],
    ['a rule', heron, 'look-hard-due', 'look'],
    ['a condition', heron, 'hairline', 'From best to worst'],
    ['a model', heron, 'Alder28', 'a model'],
    ['a policy', heron, 'Yard', 'a policy'],
    ['a surface', models, 'epdm', 'a surface'],
    ['a photo', heron, '"bath-vent-1.jpg"', '![bath-vent-1.jpg]'],
  ])('%s', async (_what, path, text, said, offset = 1) => {
    expect(await hover(path, text, offset)).toContain(said);
  });

  test('nothing on a remark, on blanks, on money', async () => {
    expect(await hover(heron, '# what happened', 4)).toBeNull();
    expect(await hover(materials, '61.00 USD')).toBeNull();
  });
});

describe('definition', () => {
  const definition = async (path: string, text: string, offset = 1) => {
    const position = editor.positionOf(path, text, offset);
    const got = await editor.request<LocationLink[] | null>('textDocument/definition', path, { position });
    return (got ?? []).map(({ targetUri, targetSelectionRange: { start } }) => [
      targetUri.startsWith('file:')
        ? decodeURIComponent(targetUri.replace(`${editor.uri('').replace(/\/$/, '')}/`, ''))
        : targetUri,
      start.line,
    ]);
  };
  const lineOf = (path: string, text: string) => editor.positionOf(path, text).line;

  test.each([
    ['what a rig is like', heron, 'Alder28', models, 'model Alder28', 1],
    ['its policy', heron, 'Yard', 'yard/policy.rig', undefined, 1],
    ['a material', heron, 'GreyLap used', materials, 'sealant GreyLap', 1],
    ['a seam of the model', heron, 'stripped  2026-04-20 bath-vent', models, 'opening      bath-vent', 24],
    ['a side', heron, 'roadside    not-seen', models, 'edge         curbside', 1],
    ['a suspect', heron, 'suspect bath-vent', models, 'opening      bath-vent', 10],
    ['a used file', heron, '"models.rig"', models, undefined, 3],
    ['a booked rig', fleet, 'Heron 2027', heron, 'rig Heron', 1],
    ['a material of the stock', fleet, 'EdgeTape4 18 ft', materials, 'tape EdgeTape4', 1],
    ['a claimed history', heron, '"heron/*.rig"', 'rigs/heron/2025.rig', undefined, 3],
    ['the rig of a history', 'rigs/heron/2025.rig', 'Heron', heron, 'rig Heron', 1],
    ['a photo', heron, '"bath-vent-1.jpg"', 'rigs/bath-vent-1.jpg', undefined, 2],
  ] as const)('%s', async (_what, path, text, target, line, offset) => {
    expect(await definition(path, text, offset)).toEqual([[target, line === undefined ? 0 : lineOf(target, line)]]);
  });

  test('a built-in surface leads into the library, which can be read', async () => {
    const [[uri] = []] = await definition(models, 'epdm');
    expect(uri).toBe('rigseam-library:/library/surfaces.rig');
    const { text } = await editor.connection.sendRequest<{ text: string }>('workspace/textDocumentContent', { uri });
    expect(text).toContain('surface epdm');
  });

  test('a photo that is not there leads nowhere', async () => {
    expect(await definition(heron, '"bath-vent-2.jpg"', 2)).toEqual([]);
  });
});

describe('the outline', () => {
  test('declarations, items and records, each inside its own', async () => {
    const symbols = await editor.request<DocumentSymbol[]>('textDocument/documentSymbol', heron);
    expect(symbols.map(({ name }) => name)).toEqual(['Heron']);
    const inside = symbols[0]?.children ?? [];
    expect(inside.map(({ name }) => name)).toContain('inspected 2026-04-18');
    const inspected = inside.find(({ name }) => name === 'inspected 2026-04-18');
    expect(inspected?.children?.map(({ name }) => name)).toContain('bath-vent cracked');
    const [model] = await editor.request<DocumentSymbol[]>('textDocument/documentSymbol', models);
    expect(model).toMatchObject({ name: 'Alder28', detail: 'model' });
    expect(model?.children?.map(({ name }) => name)).toContain('ladder-feet');
  });

  test('each selection lies inside its range', async () => {
    const check = (symbols: readonly DocumentSymbol[]) => {
      for (const { range, selectionRange, children = [] } of symbols) {
        const [a, b] = [range.start, selectionRange.start];
        expect(a.line < b.line || (a.line === b.line && a.character <= b.character)).toBe(true);
        const [c, d] = [selectionRange.end, range.end];
        expect(c.line < d.line || (c.line === d.line && c.character <= d.character)).toBe(true);
        check(children);
      }
    };
    for (const path of [heron, models, fleet, materials])
      check(await editor.request<DocumentSymbol[]>('textDocument/documentSymbol', path));
  });

  test('declarations of all files by some of their letters', async () => {
    const got = await editor.connection.sendRequest<SymbolInformation[]>('workspace/symbol', { query: 'grlp' });
    expect(got.map(({ name, containerName }) => [name, containerName])).toEqual([['GreyLap', 'materials.rig']]);
    expect(got[0]?.location.range.start.line).toBe(editor.positionOf(materials, 'sealant GreyLap').line);
  });
});

test('blocks, remarks and `use` lines fold', async () => {
  const got = await editor.request<FoldingRange[]>('textDocument/foldingRange', heron);
  const lineOf = (text: string) => editor.positionOf(heron, text).line;
  expect(got).toContainEqual({ startLine: 0, endLine: 2, kind: 'imports' });
  expect(got).toContainEqual({ startLine: lineOf('inspected 2026'), endLine: lineOf('rest        sound') });
});

test('used files and photos are links, those that are there', async () => {
  const got = await editor.request<DocumentLink[]>('textDocument/documentLink', heron);
  const targets = got.map(({ target }) => target);
  expect(targets).toEqual(
    ['yard/materials.rig', 'yard/policy.rig', 'rigs/models.rig', 'rigs/bath-vent-1.jpg'].map(editor.uri),
  );
});
