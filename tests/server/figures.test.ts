// Hints, lenses, fixes and papers on the worked example, with figures worked out by hand.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { CodeAction, CodeLens, InlayHint, MarkupContent, TextEdit } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { DocumentsReply } from '../../language/protocol/index.ts';
import { exampleFile } from '../worked-example/text.ts';
import { type Editor, startEditor } from './editor.ts';

const heron = 'rigs/heron.rig';
const models = 'rigs/models.rig';
const fleet = 'yard/fleet.rig';
const files = {
  'yard/materials.rig': exampleFile('yard/materials.rig'),
  'yard/policy.rig': exampleFile('yard/policy.rig'),
  [models]: exampleFile(models),
  [heron]: exampleFile(heron),
  [fleet]: exampleFile(fleet),
};
let editor: Editor;
beforeAll(async () => {
  editor = await startEditor({ files });
  for (const path of [heron, models, fleet]) await editor.open(path);
  await editor.quiet();
});
afterAll(() => editor.stop());

async function hintsIn(path: string): Promise<{ line: string; label: string; tooltip: string }[]> {
  const lines = editor.text(path).split('\n');
  const range = { start: { line: 0, character: 0 }, end: { line: lines.length, character: 0 } };
  const got = await editor.request<InlayHint[] | null>('textDocument/inlayHint', path, { range });
  return (got ?? []).map(({ position, label, tooltip }) => ({
    line: (lines[position.line] ?? '').slice(0, position.character).trim(),
    label: typeof label === 'string' ? label : label.map(({ value }) => value).join(''),
    tooltip: (tooltip as MarkupContent).value,
  }));
}
const hintAt = async (path: string, line: string) => (await hintsIn(path)).find((hint) => hint.line.startsWith(line));
const lensesIn = async (path: string) => {
  const lenses = (await editor.request<CodeLens[] | null>('textDocument/codeLens', path)) ?? [];
  return Promise.all(
    lenses.map((lens) => (lens.command ? lens : editor.connection.sendRequest<CodeLens>('codeLens/resolve', lens))),
  );
};

describe('hints', () => {
  test.each([
    ['edge ', '28 ft'], // the length of the roof
    ['cap          front', '8 ft 2 in'], // its width
    ['slide ', '18 ft'], // 11 ft and two ends of 3 ft 6 in
    ['opening      bath-vent', '5 ft 4 in'], // 2 x (16 in + 16 in)
    ['opening      stack-1', '1 ft 6 3/4 in'], // pi x 6 in = 18.85 in
    ['mount ', '2 × 1 ft 2 in = 2 ft 4 in'], // 2 x (3 in + 4 in), two of them
    ['joint ', '26 ft'],
  ])('a seam length behind `%s`', async (line, label) => {
    const hint = await hintAt(models, line);
    expect(hint?.label).toBe(label);
    expect(hint?.tooltip).toContain(label.split(' = ').at(-1));
  });

  test('none behind what has no seam', async () => {
    expect(await hintAt(models, 'gasket')).toBeUndefined();
    expect(await hintAt(models, 'drain')).toBeUndefined();
  });

  test('stand before the remark of their line, not behind it', async () => {
    await editor.replace(models, 'joint        drip-rail   26 ft', 'joint        drip-rail   26 ft  # measured');
    expect(await hintAt(models, 'joint')).toMatchObject({ line: 'joint        drip-rail   26 ft', label: '26 ft' });
    await editor.replace(models, '  # measured', '');
  });

  test('a taping: strips, pieces, length, and what it takes to buy, with the sums', async () => {
    const hint = await hintAt(heron, 'tape ');
    expect(hint?.label).toMatch(/^\d strips?, \d pieces?, .* (ft|in); EdgeTape4 .*: /);
    expect(hint?.tooltip).toContain('`');
  });

  test('the next inspection behind the last one', async () => {
    const last = (await hintsIn(heron)).find(({ label }) => label.startsWith('next by'));
    expect(last?.line).toMatch(/^inspected 2026-04-18/);
    expect(last?.label).toContain('2026-10-18 (overdue 38 days)'); // every 6 months; today is 25 November
  });

  test('the total of the plans behind the heading, and its sum', async () => {
    const hint = await hintAt(heron, 'rig ');
    expect(hint?.line).toMatch(/\{$/);
    expect(hint?.label).toMatch(/^\d+\.\d\d USD/);
  });

  test('follow the text', async () => {
    await editor.replace(models, 'joint        drip-rail   26 ft', 'joint        drip-rail   27 ft');
    expect((await hintAt(models, 'joint'))?.label).toBe('27 ft');
    await editor.replace(models, 'joint        drip-rail   27 ft', 'joint        drip-rail   26 ft');
  });

  test('only those of the lines that are shown', async () => {
    const range = { start: { line: 0, character: 0 }, end: { line: 3, character: 200 } };
    const got = await editor.request<InlayHint[]>('textDocument/inlayHint', models, { range });
    expect(got.length).toBeGreaterThan(0);
    expect(got.every(({ position }) => position.line <= 3)).toBe(true);
  });

  test('none where the settings say so', async () => {
    await editor.configure({ inlayHints: false });
    expect(await hintsIn(models)).toEqual([]);
    await editor.configure({});
    expect(await hintsIn(models)).not.toEqual([]);
  });
});

describe('lenses', () => {
  test('on a rig: what is next, what to buy, and the papers', async () => {
    const titles = (await lensesIn(heron)).map(({ command }) => command?.title ?? '');
    expect(titles.some((title) => /^next: .* by \d{4}-\d\d-\d\d \(overdue \d+ days\)$/.test(title))).toBe(true);
    expect(titles.some((title) => title.includes('EdgeTape4') && title.endsWith('proven cheapest'))).toBe(true);
    const write = (await lensesIn(heron)).find(({ command }) => command?.command === 'rigseam.write');
    expect(write?.command?.arguments).toEqual([{ uri: editor.uri(heron), name: 'Heron' }]);
    expect(write?.range.start.line).toBe(editor.positionOf(heron, 'rig Heron').line);
  });

  test('on a fleet: the counts', async () => {
    const titles = (await lensesIn(fleet)).map(({ command }) => command?.title ?? '');
    expect(titles[0]).toMatch(/^1 rig, 1 with something overdue/);
  });

  test('none on a model, and none where the settings say so', async () => {
    expect(await lensesIn(models)).toEqual([]);
    await editor.configure({ codeLens: false });
    expect(await lensesIn(heron)).toEqual([]);
    await editor.configure({});
  });

  test('are asked for again when a file changes that they depend on', async () => {
    const count = editor.asked.filter((method) => method === 'workspace/codeLens/refresh').length;
    await editor.replace(models, 'roof         28 ft', 'roof         29 ft');
    await editor.until(() => editor.asked.filter((method) => method === 'workspace/codeLens/refresh').length > count);
    await editor.replace(models, 'roof         29 ft', 'roof         28 ft');
    await editor.quiet();
  });
});

describe('fixes', () => {
  const actionsAt = async (path: string, text: string, only?: string[]) => {
    const position = editor.positionOf(path, text, 1);
    const got = await editor.request<CodeAction[] | null>('textDocument/codeAction', path, {
      range: { start: position, end: position },
      context: { diagnostics: [], ...(only ? { only } : {}) },
    });
    return got ?? [];
  };
  const applied = (path: string, action: CodeAction | undefined) => {
    const edits: TextEdit[] = action?.edit?.changes?.[editor.uri(path)] ?? [];
    return TextDocument.applyEdits(TextDocument.create('', 'rig', 0, editor.text(path)), edits);
  };

  test('the nearest name, as the preferred way out', async () => {
    const before = editor.text(heron);
    await editor.replace(heron, 'suspect bath-vent', 'suspect bath-vnet');
    const [fix, ...more] = await actionsAt(heron, 'bath-vnet');
    expect(more).toEqual([]);
    expect(fix).toMatchObject({ kind: 'quickfix', isPreferred: true, title: 'Write `bath-vent`' });
    expect(fix?.diagnostics?.[0]).toMatchObject({ code: 'unknown-seam', source: 'rigseam' });
    expect(applied(heron, fix)).toBe(before);
    await editor.replace(heron, 'suspect bath-vnet', 'suspect bath-vent');
  });

  test('all of one kind in the file', async () => {
    await editor.open('rigs/new.rig', 'model Test {\n  edge curbsid\n  edge roadsid\n}\n');
    const all = (await actionsAt('rigs/new.rig', 'curbsid')).find(({ title }) => title.startsWith('Mend all'));
    expect(all?.title).toBe('Mend all 2 of `unknown-word` in this file');
    expect(applied('rigs/new.rig', all)).toBe('model Test {\n  edge curbside\n  edge roadside\n}\n');
    const [source] = await actionsAt('rigs/new.rig', 'model', ['source.fixAll.rigseam']);
    expect(applied('rigs/new.rig', source)).toBe('model Test {\n  edge curbside\n  edge roadside\n}\n');
    await editor.close('rigs/new.rig');
  });

  test('a line that goes takes its line end with it', async () => {
    await editor.open('rigs/new.rig', `use "models.rig"\nuse "../yard/policy.rig"\n\nrig Test like Alder28\n`);
    await editor.until(() => editor.shown('rigs/new.rig').some(({ rule }) => rule === 'unused-use'));
    expect(editor.diagnostics('rigs/new.rig').find(({ code }) => code === 'unused-use')?.tags).toEqual([1]);
    const [fix] = await actionsAt('rigs/new.rig', '"../yard/policy.rig"');
    expect(applied('rigs/new.rig', fix)).toBe('use "models.rig"\n\nrig Test like Alder28\n');
    await editor.close('rigs/new.rig');
  });

  test('none on a place without a finding', async () => {
    expect(await actionsAt(models, 'skylight')).toEqual([]);
  });
});

describe('papers', () => {
  const ask = (path: string, names?: string[]) =>
    editor.connection.sendRequest<DocumentsReply>('rigseam/documents', {
      uri: editor.uri(path),
      ...(names ? { names } : {}),
    });

  test('of a rig, from the text that is typed', async () => {
    const text = `${'use "models.rig"\nuse "../yard/policy.rig"\nuse "../yard/materials.rig"\n'}
rig Tern like Alder28 under Yard {
  tape front with EdgeTape4 after 2027-04-15
}
`;
    await editor.open('rigs/tern.rig', text);
    const reply = await ask('rigs/tern.rig', ['Tern']);
    if (reply.kind !== 'documents') throw new Error('papers were expected');
    expect(reply.problems).toEqual([]);
    expect(reply.files.map(({ name }) => name)).toEqual([
      'Tern.estimate.md',
      'Tern.estimate.csv',
      'Tern.estimate.json',
      'Tern.schedule.md',
      'Tern.schedule.csv',
      'Tern.schedule.ics',
      'Tern.schedule.json',
      'Tern.worksheet.html',
      'Tern.inspection.html',
      'Tern.roof.svg',
      'Tern.ways.svg',
      'Tern.history.html',
      'Tern.estimate.xlsx',
    ]);
    const own = reply.files.find(({ name }) => name === 'Tern.schedule.md');
    expect(own).toMatchObject({ text: expect.stringContaining('that of the fleet') });
    expect(own).toMatchObject({ text: expect.stringContaining('`Saltmarsh.schedule.md`') });
    await editor.replace('rigs/tern.rig', 'tape front', 'tape frnot');
    const refused = await ask('rigs/tern.rig');
    expect(refused).toMatchObject({ kind: 'documents', files: [] });
    expect(JSON.stringify(refused)).toContain('tern.rig:6:8');
    await editor.close('rigs/tern.rig');
  });

  test('a file with several asks which', async () => {
    await editor.open('rigs/two.rig', 'rig One {\n}\nrig Two {\n}\n');
    expect(await ask('rigs/two.rig')).toEqual({
      kind: 'choose',
      targets: [
        { name: 'One', kind: 'rig' },
        { name: 'Two', kind: 'rig' },
      ],
    });
    await editor.close('rigs/two.rig');
  });
});
