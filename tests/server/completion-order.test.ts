// What comes first: materials by what the rules say of them on the seam, seams by the walk round the roof.
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { CompletionItem, CompletionList, MarkupContent } from 'vscode-languageserver';
import { type Editor, startEditor } from './editor.ts';
import { marked } from './marked.ts';

const materials = `sealant Aaa { family solvent-lap  never-on tpo }
sealant Bbb { family solvent-lap  bonds-to tpo, epdm }
sealant Ccc { family solvent-lap  by-label tpo }
sealant Sil { family silicone  bonds-to silicone }
primer Prime { needed-on epdm }
`;
let editor: Editor;
let asking: Editor;
beforeAll(async () => {
  const files = { 'materials.rig': materials, 'test.rig': '' };
  editor = await startEditor({ files });
  const completionItem = { resolveSupport: { properties: ['documentation'] } };
  asking = await startEditor({ files, capabilities: { textDocument: { completion: { completionItem } } } });
  await editor.quiet();
  await asking.quiet();
});
afterAll(() => Promise.all([editor.stop(), asking.stop()]));

async function sorted(text: string, from = editor): Promise<CompletionItem[]> {
  const { text: without, position } = marked(text);
  await from.open('test.rig', without);
  const context = { triggerKind: 1 };
  const got = await from.request<CompletionList>('textDocument/completion', 'test.rig', { position, context });
  await from.close('test.rig');
  const key = ({ sortText, label }: CompletionItem) => sortText ?? label;
  return got.items.toSorted((a, b) => (key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0));
}

const onRoof = (surface: string, lines: string) =>
  `use "materials.rig"\n\nrig Test {\n  roof 28 ft by 8 ft ${surface}\n  edge curbside, roadside\n  cap front\n  cap rear\n` +
  `  opening vent 14 in by 14 in at 10 ft, 4 ft\n${lines}\n}\n`;
const bonded = (surface: string) => onRoof(surface, '  stripped 2026-04-19 vent\n  sealed 2026-04-20 vent with <|>');

test('what bonds first, then what only its label allows, last what the rules refuse, with the reason', async () => {
  const items = await sorted(bonded('tpo'));
  const labels = items.map(({ label }) => label);
  expect(labels[0]).toBe('Bbb');
  expect(labels.indexOf('Ccc')).toBeGreaterThan(labels.indexOf('Bbb'));
  expect(labels.indexOf('Aaa')).toBeGreaterThan(labels.indexOf('Ccc'));
  expect(labels.indexOf('Aaa')).toBeGreaterThan(labels.indexOf('Prime'));
  const refused = items.find(({ label }) => label === 'Aaa');
  expect(refused?.detail).toContain('does not bond to tpo');
  expect((refused?.documentation as MarkupContent | undefined)?.value).toMatch(
    /^`Aaa` on tpo: .*must not be used there/,
  );
  expect(items[0]?.detail).toBe('sealant, materials.rig');
});

test('the same on what lies there on that date, not on what lay there before or will', async () => {
  const later = (date: string) =>
    onRoof('epdm', `  sealed 2020-05-01 vent with Sil\n  sealed ${date} vent with <|>\n  stripped 2024-01-01 vent`);
  const [over] = await sorted(later('2021-04-20'));
  expect(over?.label).toBe('Sil');
  const all = await sorted(later('2021-04-20'));
  expect(all.find(({ label }) => label === 'Bbb')?.detail).toContain('does not hold on silicone');
  const bare = await sorted(onRoof('epdm', '  sealed 2019-05-01 vent with <|>\n  sealed 2020-05-01 vent with Sil'));
  expect(bare.find(({ label }) => label === 'Bbb')?.detail).not.toContain('silicone');
});

test('what is kept of a rig goes with the text that it came from, and with the materials', async () => {
  const { text, position } = marked(
    onRoof('epdm', '  sealed 2020-05-01 vent with Sil\n  sealed 2026-04-20 vent with <|>'),
  );
  const detailOfBbb = async (at: { line: number; character: number }) => {
    const params = { position: at, context: { triggerKind: 1 } };
    const { items } = await editor.request<CompletionList>('textDocument/completion', 'test.rig', params);
    return items.find(({ label }) => label === 'Bbb')?.detail ?? 'no Bbb';
  };
  await editor.open('test.rig', text);
  expect(await detailOfBbb(position)).toContain('does not hold on silicone');
  expect(await detailOfBbb(position)).toContain('does not hold on silicone');
  await editor.replace('test.rig', '  sealed 2020-05-01 vent with Sil\n', '  stripped 2020-05-01 vent\n');
  expect(await detailOfBbb(position)).toContain('needs Prime first');
  await editor.open('materials.rig', materials.replace('bonds-to tpo, epdm', 'never-on epdm'));
  expect(await detailOfBbb(position)).toContain('does not bond to epdm');
  await editor.close('materials.rig');
  expect(await detailOfBbb(position)).toContain('needs Prime first');
  await editor.close('test.rig');
});

test('what needs a primer says which, until it is named', async () => {
  const before = (await sorted(bonded('epdm'))).find(({ label }) => label === 'Bbb');
  expect(before?.detail).toContain('needs Prime first');
  const named = await sorted(onRoof('epdm', '  stripped 2026-04-19 vent\n  sealed 2026-04-20 vent with Prime, <|>'));
  expect(named.find(({ label }) => label === 'Bbb')?.detail).not.toContain('needs');
});

const seamsIn = async (lines: string) => {
  const items = (await sorted(onRoof('epdm', lines))).map(({ label }) => label);
  return items.filter((label) => ['curbside', 'rear', 'roadside', 'front', 'vent'].includes(label));
};

test('seams in the order of the walk; those that the block names come last, wherever they stand in it', async () => {
  const block = (inner: string) => seamsIn(`  inspected 2026-04-18 {\n${inner}\n  }`);
  expect(await block('    <|>')).toEqual(['curbside', 'rear', 'roadside', 'front', 'vent']);
  expect(await block('    curbside sound\n    <|>\n    front cracked')).toEqual([
    'rear',
    'roadside',
    'vent',
    'curbside',
    'front',
  ]);
  expect(await seamsIn('  stripped 2026-04-18 rear, <|>')).toEqual(['curbside', 'roadside', 'front', 'vent', 'rear']);
});

test('an editor that asks later gets no documentation before, and then the same', async () => {
  const places: [string, string][] = [
    [bonded('tpo'), 'Bbb'],
    [onRoof('epdm', '  stripped 2026-04-18 <|>'), 'vent'],
    [onRoof('epdm', '  accept <|>'), 'one-coat-too-many'],
    [onRoof('epdm', '  <|>'), 'sealed'],
  ];
  for (const [text, label] of places) {
    const at = (await sorted(text)).find((item) => item.label === label);
    await asking.open('test.rig', marked(text).text);
    const { position } = marked(text);
    const list = await asking.request<CompletionList>('textDocument/completion', 'test.rig', { position });
    const later = list.items.find((item) => item.label === label);
    expect(later?.documentation, label).toBeUndefined();
    const resolved = await asking.connection.sendRequest<CompletionItem>('completionItem/resolve', later);
    await asking.close('test.rig');
    const value = (at?.documentation as MarkupContent | undefined)?.value ?? 'nothing';
    expect((resolved.documentation as MarkupContent).value.replaceAll(asking.folder, '')).toBe(
      value.replaceAll(editor.folder, ''),
    );
  }
  const vent = (await sorted(places[1]?.[0] as string)).find(({ label }) => label === 'vent');
  expect((vent?.documentation as MarkupContent | undefined)?.value).toMatch(/Length: .*\d/);
});
