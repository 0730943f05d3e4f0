// What depends on what the editor can do, and on its settings: links, hints filled in later, pulled diagnostics, switches.
import { afterEach, describe, expect, test } from 'vitest';
import type { CodeLens, DocumentDiagnosticReport, InlayHint } from 'vscode-languageserver';
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
afterEach(() => editor.stop());
const start = async (...given: Parameters<typeof startEditor>) => {
  editor = await startEditor(...given);
  return editor;
};

const hintsIn = (path: string) =>
  editor.request<InlayHint[]>('textDocument/inlayHint', path, {
    range: { start: { line: 0, character: 0 }, end: { line: 999, character: 0 } },
  });
const lensesIn = (path: string) => editor.request<CodeLens[]>('textDocument/codeLens', path);
const pull = (path: string, previousResultId?: string) =>
  editor.request<DocumentDiagnosticReport>('textDocument/diagnostic', path, { previousResultId });

describe('an editor that asks for one hint at a time', () => {
  const capabilities = {
    textDocument: { inlayHint: { resolveSupport: { properties: ['tooltip', 'label.location'] } } },
  };

  test('gets the sum and where it comes from for that hint', async () => {
    const at = await start({ files, capabilities });
    await at.open(heron);
    await at.quiet();
    const hints = await hintsIn(heron);
    expect(hints.length).toBeGreaterThan(2);
    expect(hints.every(({ tooltip, label }) => tooltip === undefined && typeof label === 'string')).toBe(true);
    const next = hints.find(({ label }) => String(label).startsWith('next by')) as InlayHint;
    const whole = await at.connection.sendRequest<InlayHint>('inlayHint/resolve', next);
    expect(JSON.stringify(whole.tooltip)).toMatch(/6 months/);
    const [part] = whole.label as { value: string; location: { uri: string; range: { start: { line: number } } } }[];
    // The interval of the next inspection is the policy's.
    expect(part?.value).toBe(next.label);
    expect(part?.location.uri).toBe(at.uri('yard/policy.rig'));
    const line = files['yard/policy.rig'].split('\n')[part?.location.range.start.line ?? 0];
    expect(line?.trim()).toMatch(/^inspect +every 6 months/);
  });

  test('gets it back as it was when the text has moved on', async () => {
    const at = await start({ files, capabilities });
    await at.open(models);
    const [hint] = await hintsIn(models);
    await at.replace(models, '28 ft by', '29 ft by');
    const edge = (await hintsIn(models)).find(({ label }) => label === '29 ft');
    expect(edge).toBeDefined();
    expect(await at.connection.sendRequest('inlayHint/resolve', hint)).toEqual(hint);
    expect(await at.connection.sendRequest('inlayHint/resolve', { ...hint, data: 'of another server' })).toBeDefined();
  });
});

test('every other editor gets the sums at once', async () => {
  const at = await start({ files });
  await at.open(models);
  const hints = await hintsIn(models);
  expect(hints.length).toBeGreaterThan(4);
  for (const { tooltip, data } of hints) {
    expect(data).toBeUndefined();
    expect(JSON.stringify(tooltip)).toContain('**');
  }
});

describe('each kind has its switch', () => {
  const kindOf = (label: string) =>
    label.startsWith('next by') || label.startsWith('due ')
      ? 'dueDates'
      : /strip|piece|bead/.test(label)
        ? 'work'
        : /USD/.test(label)
          ? 'totals'
          : 'lengths';
  test.each(['lengths', 'work', 'dueDates', 'totals'] as const)('of hints: %s', async (kind) => {
    const at = await start({ files });
    for (const path of [heron, models]) await at.open(path);
    await at.quiet();
    const kinds = async () =>
      new Set(
        [...(await hintsIn(heron)), ...(await hintsIn(models))].map(({ label }) =>
          kindOf(typeof label === 'string' ? label : label.map(({ value }) => value).join('')),
        ),
      );
    expect(await kinds()).toEqual(new Set(['lengths', 'work', 'dueDates', 'totals']));
    await at.configure({ hints: { [kind]: false } });
    const left = await kinds();
    expect(left.has(kind)).toBe(false);
    expect(left.size).toBe(3);
  });

  test('of lenses', async () => {
    const at = await start({ files });
    await at.open(heron);
    await at.open(fleet);
    const count = async () => (await lensesIn(heron)).length + (await lensesIn(fleet)).length;
    const all = await count();
    for (const [kind, gone] of [
      ['next', 2],
      ['purchase', 1],
    ] as const) {
      await at.configure({ lenses: { [kind]: false } });
      expect(await count(), kind).toBe(all - gone);
    }
    await at.configure({ lenses: { next: false, purchase: false } });
    const left = [...(await lensesIn(heron)), ...(await lensesIn(fleet))];
    expect(left.every(({ command }) => command?.command.startsWith('rigseam.'))).toBe(true);
    await at.configure({ lenses: { commands: false } });
    expect((await lensesIn(heron)).every(({ command }) => command === undefined)).toBe(true);
  });
});

describe('lenses', () => {
  test('lead to the record that they follow from', async () => {
    const at = await start({ files });
    await at.open(heron);
    await at.quiet();
    const lenses = (await lensesIn(heron)).filter(({ command }) => command === undefined);
    const [next, purchase] = await Promise.all(
      lenses.map((lens) => at.connection.sendRequest<CodeLens>('codeLens/resolve', lens)),
    );
    const lineOf = (lens: CodeLens | undefined) => {
      const [place] = (lens?.command?.arguments ?? []) as { uri: string; range: { start: { line: number } } }[];
      expect(place?.uri).toBe(at.uri(heron));
      return at.text(heron).split('\n')[place?.range.start.line ?? 0]?.trim();
    };
    expect(next?.command).toMatchObject({ command: 'rigseam.goTo' });
    expect(lineOf(next)).toMatch(/^(found|inspected|leaked|sealed|curbside|bath-vent|skylight|roadside|front) /);
    expect(lineOf(purchase)).toMatch(/^tape +front/);
  });
});

describe('the page of a rule', () => {
  const broken = 'rig Teal {\n  roof 20 ft by 8 ft epdm\n  sealed 2026-05-01 galley with GreyLap\n}\n';

  test('is linked where the editor can show it, and has what the catalogue says', async () => {
    const at = await start({
      files: { 'teal.rig': broken },
      capabilities: {
        workspace: { textDocumentContent: {} },
        textDocument: { publishDiagnostics: { codeDescriptionSupport: true } },
      },
    });
    await at.open('teal.rig');
    await at.quiet();
    const href = at.diagnostics('teal.rig').find(({ code }) => code === 'unknown-seam')?.codeDescription?.href;
    const { text } = await at.connection.sendRequest<{ text: string }>('workspace/textDocumentContent', { uri: href });
    expect(text).toMatch(/^# unknown-seam\n/);
    expect(text).toContain('quick fix');
  });

  test('is not linked elsewhere', async () => {
    const at = await start({ files: { 'teal.rig': broken } });
    await at.open('teal.rig');
    await at.quiet();
    expect(at.diagnostics('teal.rig')).not.toEqual([]);
    expect(at.diagnostics('teal.rig').every(({ codeDescription }) => codeDescription === undefined)).toBe(true);
  });
});

describe('an editor that pulls', () => {
  const capabilities = { textDocument: { diagnostic: {} } };

  test('is told nothing, and gets the diagnostics of the text as it is typed now', async () => {
    const at = await start({ files, capabilities });
    expect(at.initialized.capabilities.diagnosticProvider).toMatchObject({ interFileDependencies: true });
    await at.open(heron);
    const first = await pull(heron);
    if (first.kind !== 'full') throw new Error('a first answer is whole');
    expect(first.items).not.toEqual([]);
    expect(await pull(heron, first.resultId)).toEqual({ kind: 'unchanged', resultId: first.resultId });
    await at.replace(heron, 'from 6 ft to 9 ft', 'from 6 ft to 9');
    const second = await pull(heron, first.resultId);
    if (second.kind !== 'full') throw new Error('something has changed');
    expect(second.items.map(({ code }) => code)).toContain('wrong-value');
    expect(at.published).toEqual([]);
  });

  test('sees what another file changes', async () => {
    const at = await start({ files, capabilities });
    await at.open(heron);
    await at.open(models);
    const before = await pull(heron);
    await at.replace(models, 'opening      bath-vent', 'opening      bath-vnt');
    const after = await pull(heron, before.resultId);
    expect(after.kind === 'full' && after.items.map(({ code }) => code)).toContain('unknown-seam');
  });
});

describe('problems of open files only', () => {
  test('those of the others go, and come back with the setting', async () => {
    const broken = 'rig Teal {\n  roof 20 ft by 8\n}\n';
    const at = await start({ files: { 'a.rig': broken, 'b.rig': broken.replace('Teal', 'Plover') } });
    await at.open('a.rig');
    await at.quiet();
    expect(at.diagnostics('b.rig')).not.toEqual([]);
    await at.configure({ problems: 'openFiles' });
    await at.until(() => at.diagnostics('b.rig').length === 0);
    expect(at.diagnostics('a.rig')).not.toEqual([]);
    await at.open('b.rig');
    await at.until(() => at.diagnostics('b.rig').length > 0);
    await at.close('b.rig');
    await at.until(() => at.diagnostics('b.rig').length === 0);
    await at.configure({ problems: 'all' });
    await at.until(() => at.diagnostics('b.rig').length > 0);
  });
});

test('the list of rules, for a command that explains one', async () => {
  const at = await start({ files });
  const rules = await at.connection.sendRequest<{ name: string; title: string }[]>('rigseam/rules', {});
  expect(rules.map(({ name }) => name)).toContain('tape-too-early');
  expect([...rules].sort((a, b) => (a.name < b.name ? -1 : 1))).toEqual(rules);
  const refused = at.connection.sendRequest('rigseam/documents', { uri: 7 });
  await expect(refused).rejects.toThrow(/rigseam\/documents: uri/);
});

test('the sheets alone, with the schedule that they follow', async () => {
  const at = await start({ files });
  await at.open(heron);
  const ask = (only?: 'sheets') =>
    at.connection.sendRequest<{ files: { name: string; text?: string }[] }>('rigseam/documents', {
      uri: at.uri(heron),
      ...(only && { only }),
    });
  const [all, some] = [(await ask()).files, (await ask('sheets')).files];
  expect(some.map(({ name }) => name).sort()).toEqual(
    ['inspection.html', 'schedule.csv', 'schedule.ics', 'schedule.json', 'schedule.md', 'worksheet.html'].map(
      (end) => `Heron.${end}`,
    ),
  );
  for (const file of some) expect(all).toContainEqual(file);
});

test('the calendar of what a file declares, and of all that the workspace has', async () => {
  const at = await start({ files });
  await at.quiet();
  const subjects = (uri?: string) =>
    at.connection.sendRequest<{ name: string; kind: string; uri: string }[]>('rigseam/calendarSubjects', { uri });
  expect(await subjects(at.uri(models))).toEqual([]);
  expect((await subjects()).map(({ name, kind }) => [name, kind])).toEqual([
    ['Saltmarsh', 'fleet'],
    ['Heron', 'rig'],
  ]);
  const of = { uri: at.uri(fleet), name: 'Saltmarsh' };
  const calendar = await at.connection.sendRequest<{ entries: { kind: string; place: { uri: string } }[] }>(
    'rigseam/calendar',
    of,
  );
  const booked = calendar.entries.find(({ kind }) => kind === 'booked');
  expect(booked?.place.uri).toBe(at.uri(fleet));
  expect(calendar.entries.some(({ kind }) => kind === 'overdue')).toBe(true);
  expect(await at.connection.sendRequest('rigseam/calendar', { ...of, name: 'Nobody' })).toBeNull();
});
