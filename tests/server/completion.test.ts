// What is offered at many places, and what is not.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { CompletionItem, CompletionList } from 'vscode-languageserver';
import { exampleFile } from '../worked-example/text.ts';
import { type Editor, startEditor, today } from './editor.ts';
import { marked } from './marked.ts';

let editor: Editor;
beforeAll(async () => {
  editor = await startEditor({
    files: {
      'yard/materials.rig': exampleFile('yard/materials.rig'),
      'yard/policy.rig': exampleFile('yard/policy.rig'),
      'rigs/models.rig': exampleFile('rigs/models.rig'),
      'rigs/heron.rig': exampleFile('rigs/heron.rig'),
      'yard/fleet.rig': exampleFile('yard/fleet.rig'),
      'rigs/test.rig': '',
    },
  });
  await editor.quiet();
});
afterAll(() => editor.stop());

async function items(text: string, context: object = { triggerKind: 1 }): Promise<CompletionItem[]> {
  const { text: without, position } = marked(text);
  await editor.open('rigs/test.rig', without);
  const got = await editor.request<CompletionList | null>('textDocument/completion', 'rigs/test.rig', {
    position,
    context,
  });
  await editor.close('rigs/test.rig');
  return got?.items ?? [];
}
const labels = async (text: string, context?: object) => (await items(text, context)).map(({ label }) => label);

const used = 'use "../yard/materials.rig"\nuse "../yard/policy.rig"\nuse "models.rig"\n';
const inRig = (line: string) => `${used}rig Test like Alder28 under Yard {\n  ${line}\n}\n`;

describe('a new line', () => {
  test('at the top of a file: declarations', async () => {
    const got = await labels(`${used}<|>`);
    expect(got).toEqual(
      expect.arrayContaining(['use', 'rig', 'model', 'tape', 'sealant', 'policy', 'history', 'fleet']),
    );
    expect(got).not.toContain('edge');
  });

  test('in a rig: its statements, also with a word begun', async () => {
    for (const line of ['<|>', 'in<|>']) {
      const got = await labels(inRig(line));
      expect(got).toEqual(expect.arrayContaining(['edge', 'inspected', 'inspect', 'unit', 'tape', 'accept']));
      expect(got).not.toContain('model');
      expect(got).not.toContain('bath-vent');
    }
  });

  test('in a model: no records', async () => {
    const got = await labels('model Test {\n  <|>\n}\n');
    expect(got).toContain('opening');
    expect(got).not.toContain('inspected');
  });

  test('in findings: the seams and sets', async () => {
    const got = await labels(inRig('inspected 2026-04-18 {\n    <|>\n  }'));
    expect(got).toEqual(expect.arrayContaining(['bath-vent', 'curbside', 'rest', 'all', 'openings']));
    expect(got).not.toContain('sealed');
  });

  test('after a whole statement on the line before', async () => {
    expect(await labels(inRig('washed 2026-04-18\n  <|>'))).toContain('sealed');
  });

  test('a record is inserted with the date of today', async () => {
    const [washed] = (await items(inRig('wash<|>'))).filter(({ label }) => label === 'washed');
    expect(washed?.textEdit).toMatchObject({
      newText: expect.stringContaining(today),
      range: { start: { character: 2 }, end: { character: 6 } },
    });
    expect(JSON.stringify(washed?.documentation)).toContain('The roof was washed.');
  });

  test('nothing in a remark', async () => {
    expect(await labels(inRig('# <|>'))).toEqual([]);
    expect(await labels(inRig('washed 2026-04-18 # with <|>'))).toEqual([]);
  });
});

describe('names', () => {
  test('seams of this rig, those of its model among them', async () => {
    const got = await items(inRig('stripped 2026-04-20 <|>'));
    const names = got.map(({ label }) => label);
    expect(names).toEqual(expect.arrayContaining(['bath-vent', 'stack-1', 'curbside', 'dinette', 'openings']));
    expect(got.find(({ label }) => label === 'bath-vent')?.detail).toBe('opening, from models.rig');
    expect(names).toContain('note'); // places may be left out: a clause may stand here as well
    expect(names).not.toContain('GreyLap');
  });

  test('after a comma the next seam, and nothing else', async () => {
    const got = await labels(inRig('stripped 2026-04-20 bath-vent, <|>'));
    expect(got).toContain('skylight');
    expect(got).not.toContain('note');
    expect(got).not.toContain('GreyLap');
  });

  test('seams of the rig that reads a history', async () => {
    const heron = exampleFile('rigs/heron.rig');
    await editor.save(
      { 'rigs/heron.rig': heron, 'rigs/heron/2025.rig': 'history Heron {\n  washed 2025-05-05\n}\n' },
      1,
    );
    await editor.quiet();
    const { text, position } = marked('history Heron {\n  washed 2025-05-05\n  stripped 2025-05-06 <|>\n}\n');
    await editor.open('rigs/heron/2025.rig', text);
    const got = await editor.request<CompletionList>('textDocument/completion', 'rigs/heron/2025.rig', {
      position,
      context: { triggerKind: 1 },
    });
    await editor.close('rigs/heron/2025.rig');
    expect(got.items.map(({ label }) => label)).toEqual(expect.arrayContaining(['bath-vent', 'curbside']));
  });

  test('materials after `with`, those of the yard before the built-in ones', async () => {
    const got = await items(inRig('sealed 2026-04-20 bath-vent with <|>'));
    const names = got.map(({ label }) => label);
    expect(names).toEqual(expect.arrayContaining(['GreyLap', 'EdgeTape4']));
    expect(names).not.toContain('bath-vent');
    expect(got.find(({ label }) => label === 'GreyLap')?.detail).toContain('../yard/materials.rig');
    const order = [...got].sort((a, b) => ((a.sortText ?? '') < (b.sortText ?? '') ? -1 : 1)).map(({ label }) => label);
    // What a bead is made of first; the primer under it may be named with it.
    expect(order[0]).toBe('GreyLap');
    expect(order.indexOf('EdgePrimer')).toBeGreaterThan(order.indexOf('GenericSolventLap'));
  });

  test('models and rigs after `like`, policies after `under`', async () => {
    expect(await labels(`${used}rig Test like <|>`)).toContain('Alder28');
    expect(await labels(`${used}rig Test like <|>`)).not.toContain('Yard');
    const policies = await labels(`${used}rig Test like Alder28 under <|>`);
    expect(policies).toContain('Yard');
    expect(policies).not.toContain('Alder28');
  });

  test('sealants only where a sealant is like another', async () => {
    const got = await labels('use "../yard/materials.rig"\nsealant Test like <|>');
    expect(got).toContain('GreyLap');
    expect(got).not.toContain('EdgeTape4');
  });

  test('surfaces of an item', async () => {
    const got = await labels('model Test {\n  opening vent 14 in by 14 in of <|>\n}\n');
    expect(got).toEqual(expect.arrayContaining(['epdm', 'abs']));
  });

  test('rules after `accept`', async () => {
    const got = await items(inRig('accept <|>'));
    expect(got.map(({ label }) => label)).toContain('one-coat-too-many');
    expect(got.every(({ documentation }) => documentation !== undefined)).toBe(true);
  });

  test('rigs of the fleet after `booked`', async () => {
    const got = await labels('fleet Test {\n  rigs "*.rig"\n  booked <|>\n}\n');
    expect(got).toContain('Heron');
  });
});

describe('values', () => {
  test('units after a number', async () => {
    for (const line of ['edge curbside wide 4 <|>', 'edge curbside wide 4 i<|>']) {
      const got = await labels(`model Test {\n  ${line}\n}\n`);
      expect(got.slice(0, 2)).toEqual(['in', 'ft']);
      expect(got).not.toContain('USD');
    }
  });

  test('money after a number where money is meant', async () => {
    expect(await labels(inRig('day-rate 140 <|>'))).toEqual(['USD', 'EUR', 'GBP', 'CAD', 'AUD']);
  });

  test('the date of today', async () => {
    expect((await labels(inRig('washed <|>')))[0]).toBe(today);
    expect(await labels(inRig('tape front with EdgeTape4 after <|>'))).toContain(today);
  });

  test('conditions behind the place in a finding', async () => {
    const got = await labels(inRig('inspected 2026-04-18 {\n    bath-vent <|>\n  }'));
    expect(got).toEqual(expect.arrayContaining(['sound', 'cracked', 'torn', 'not-seen']));
    expect(got).not.toContain('skylight');
  });

  test('sides of an edge', async () => {
    expect(await labels('model Test {\n  edge <|>\n}\n')).toEqual(expect.arrayContaining(['curbside', 'roadside']));
  });

  test('`by` within a size that is half written, nothing else', async () => {
    expect(await labels('model Test {\n  mount feet 3 in <|>\n}\n')).toEqual(['by']);
  });

  test('nothing where a new name or a number is to be thought of', async () => {
    expect(await labels('model Test {\n  opening <|>\n}\n')).toEqual([]);
    expect(await labels('model Test {\n  roof <|>\n}\n')).toEqual([]);
  });

  test('files between the quotes of `use`', async () => {
    const got = await items('use "<|>"\n');
    expect(got.map(({ label }) => label)).toEqual(expect.arrayContaining(['../yard/materials.rig', 'models.rig']));
    expect(got[0]?.textEdit).toMatchObject({ range: { start: { character: 5 }, end: { character: 5 } } });
    expect(await labels('use "models.rig"\nuse "<|>"\n')).not.toContain('models.rig');
  });
});

describe('clauses', () => {
  test('those of the row that are not there yet', async () => {
    const got = await labels(inRig('sealed 2026-04-20 bath-vent with GreyLap air 64 F <|>'));
    expect(got).toEqual(expect.arrayContaining(['took', 'lot', 'note', 'surface', 'by']));
    expect(got).not.toContain('air');
    expect(got).not.toContain('suspect');
  });

  test('one that stands behind the cursor counts', async () => {
    expect(await labels(inRig('sealed 2026-04-20 bath-vent <|> note "x"'))).not.toContain('note');
  });

  test('in a line that goes on after a comma', async () => {
    expect(await labels(inRig('stripped 2026-04-20 bath-vent,\n    <|>'))).toContain('skylight');
  });

  test('are not pushed at who only types a blank', async () => {
    const blank = { triggerKind: 2, triggerCharacter: ' ' };
    expect(await labels(inRig('washed 2026-04-18 bath-vent <|>'), blank)).toEqual([]);
    expect(await labels(inRig('<|>'), blank)).toEqual([]);
    expect(await labels(inRig('washed 2026-04-18 bath-vent with <|>'), blank)).toContain('GreyLap');
  });
});
