// References, highlights and rename: across files, closed ones too, in what is damaged, and what is refused.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { DocumentHighlight, Location, LocationLink, Range, WorkspaceEdit } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { type Editor, startEditor } from './editor.ts';

const files: Record<string, string> = {
  'yard.rig': `# GreyLap is the one in the grey tube
sealant GreyLap { family solvent-lap  cartridge 10.3 fl-oz at 9.75 USD }
tape EdgeTape { width 4 in  roll 50 ft at 61.00 USD }
policy Yard { inspect every 6 months  lead GreyLap 10 days }
`,
  'models.rig': `use "yard.rig"
model Alder {
  roof     28 ft by 8 ft  epdm
  edge     nearside, roadside
  opening  bath-vent  16 in by 16 in  at 18 ft, 2 ft
  opening  skylight   32 in by 24 in  at 23 ft, 5 ft
  serviced bath-vent
  factory  GreyLap
}
model Birch like Alder {
  without  skylight
}
`,
  'heron.rig': `use "yard.rig"
use "models.rig"
rig Heron like Alder under Yard {
  records  "heron/*.rig"
  opening  bath-vent 14 in by 14 in at 18 ft, 2 ft   # bath-vent is smaller here
  formerly vent-1 to bath-vent
  sealed   2026-04-20 bath-vent, skylight with GreyLap note "GreyLap on bath-vent"
  sealed   2026-04-20 vent-1 with
  inspected 2026-05-01 {
    bath-vent  sound
    curbside   sound
  }
  accept   look-hard-due on bath-vent until 2027-04-15 because "GreyLap"
}
`,
  'heron/2025.rig': 'history Heron {\n  washed 2025-05-05 bath-vent\n  sealed 2025-05-06 nearside with GreyLap\n}\n',
  'teal.rig': `use "models.rig"
rig Teal like Birch {
  opening  skylight 20 in by 20 in at 10 ft, 4 ft
  sealed   2026-04-20 skylight with GreyLap
}
`,
  'fleet.rig': `use "yard.rig"
fleet Saltmarsh under Yard {
  rigs    "*.rig"
  bay     Shed indoor
  booked  Heron 2027-06-10 to 2027-06-24
  on-hand GreyLap 5 cartridges
}
`,
};
let editor: Editor;

beforeAll(async () => {
  editor = await startEditor({ files, capabilities: { workspace: { workspaceEdit: { documentChanges: true } } } });
  for (const path of ['heron.rig', 'models.rig']) await editor.open(path);
  for (const path of ['yard.rig', 'teal.rig', 'fleet.rig', 'heron/2025.rig']) await editor.open(path);
  await editor.quiet();
  // Closed again: their records are let go.
  for (const path of ['yard.rig', 'teal.rig', 'heron/2025.rig']) await editor.close(path);
  await editor.quiet();
});
afterAll(() => editor.stop());

const pathFrom = (uri: string) => decodeURIComponent(uri.replace(`${editor.uri('').replace(/\/$/, '')}/`, ''));
const document = (path: string) => TextDocument.create('', 'rig', 0, files[path] ?? '');
/** A place as its file and the line that it stands in, from the word on. */
const told = ({ uri, range }: Location) => {
  const path = pathFrom(uri);
  const text = document(path).getText(range);
  return `${path}:${range.start.line + 1} ${text}`;
};
const references = async (path: string, text: string, offset = 0, includeDeclaration = true) => {
  const position = editor.positionOf(path, text, offset);
  const got = await editor.request<Location[]>('textDocument/references', path, {
    position,
    context: { includeDeclaration },
  });
  return got.map(told);
};

describe('references', () => {
  test('a material, in all files, also in a history and never in texts and remarks', async () => {
    expect(await references('heron.rig', 'GreyLap note')).toEqual([
      'fleet.rig:6 GreyLap',
      'heron.rig:7 GreyLap',
      'heron/2025.rig:3 GreyLap',
      'models.rig:8 GreyLap',
      'teal.rig:4 GreyLap',
      'yard.rig:2 GreyLap',
      'yard.rig:4 GreyLap',
    ]);
  });
  test('an item, from the model through what is like it, with its former name', async () => {
    const all = [
      'heron.rig:5 bath-vent',
      'heron.rig:6 vent-1',
      'heron.rig:6 bath-vent',
      'heron.rig:7 bath-vent',
      'heron.rig:8 vent-1',
      'heron.rig:10 bath-vent',
      'heron.rig:13 bath-vent',
      'heron/2025.rig:2 bath-vent',
      'models.rig:5 bath-vent',
      'models.rig:7 bath-vent',
    ];
    expect(await references('models.rig', 'bath-vent')).toEqual(all);
    expect(await references('heron.rig', 'vent-1 with', 1)).toEqual(all);
    expect(await references('models.rig', 'bath-vent', 0, false)).toEqual(all.filter((_, i) => i !== 0 && i !== 8));
  });
  test('an item that is dropped and described anew is another', async () => {
    expect(await references('models.rig', 'skylight ')).toEqual([
      'heron.rig:7 skylight',
      'models.rig:6 skylight',
      'models.rig:11 skylight',
    ]);
  });
  test('a rig: booked, and its history', async () => {
    expect(await references('heron.rig', 'Heron')).toEqual([
      'fleet.rig:5 Heron',
      'heron.rig:3 Heron',
      'heron/2025.rig:1 Heron',
    ]);
  });
  test('a side by all its names, a rule, a used file', async () => {
    expect(await references('models.rig', 'nearside')).toEqual([
      'heron.rig:11 curbside',
      'heron/2025.rig:3 nearside',
      'models.rig:4 nearside',
    ]);
    expect(await references('heron.rig', 'look-hard-due')).toEqual(['heron.rig:13 look-hard-due']);
    expect(await references('heron.rig', '"models.rig"', 3)).toEqual([
      'heron.rig:2 "models.rig"',
      'teal.rig:1 "models.rig"',
    ]);
  });
  test('nothing in remarks, in texts, on words of the language', async () => {
    for (const text of ['# bath-vent', '"GreyLap on', 'sealed '])
      expect(await references('heron.rig', text, 3)).toEqual([]);
  });
});

test('the definition of an item that is dropped', async () => {
  const position = editor.positionOf('models.rig', 'without  skylight', 10);
  const got = await editor.request<LocationLink[] | Location[]>('textDocument/definition', 'models.rig', { position });
  expect(JSON.stringify(got)).toContain('"line":5');
});

test('highlights: written where it is described, read elsewhere', async () => {
  const position = editor.positionOf('models.rig', 'bath-vent');
  const got = await editor.request<DocumentHighlight[]>('textDocument/documentHighlight', 'models.rig', { position });
  expect(got.map(({ range, kind }) => [range.start.line, kind])).toEqual([
    [4, 3],
    [6, 2],
  ]);
});

const renamed = async (path: string, text: string, newName: string) => {
  const position = editor.positionOf(path, text);
  const { documentChanges = [] } = await editor.request<WorkspaceEdit>('textDocument/rename', path, {
    position,
    newName,
  });
  const out: Record<string, string> = {};
  const versions: Record<string, number | null> = {};
  for (const change of documentChanges) {
    if (!('textDocument' in change)) throw new Error('only edits are expected');
    const file = pathFrom(change.textDocument.uri);
    versions[file] = change.textDocument.version;
    out[file] = TextDocument.applyEdits(document(file), change.edits as never);
  }
  return { out, versions };
};

describe('rename', () => {
  test('a material everywhere, and not in texts and remarks', async () => {
    const { out, versions } = await renamed('models.rig', 'GreyLap', 'SlateLap');
    expect(Object.keys(out).sort()).toEqual([
      'fleet.rig',
      'heron.rig',
      'heron/2025.rig',
      'models.rig',
      'teal.rig',
      'yard.rig',
    ]);
    expect(out['yard.rig']).toContain('# GreyLap is the one');
    expect(out['yard.rig']).toContain('lead SlateLap 10 days');
    expect(out['heron.rig']).toContain('with SlateLap note "GreyLap on bath-vent"');
    expect(versions).toMatchObject({ 'heron.rig': 1, 'models.rig': 1, 'yard.rig': null, 'teal.rig': null });
  });
  test('an item reaches what is like it and its histories; a former name stays', async () => {
    const { out } = await renamed('models.rig', 'bath-vent', 'shower-vent');
    expect(out['heron/2025.rig']).toContain('washed 2025-05-05 shower-vent');
    expect(out['heron.rig']).toContain('formerly vent-1 to shower-vent');
    expect(out['heron.rig']).toContain('sealed   2026-04-20 vent-1 with\n');
    expect(out['heron.rig']).toContain('# bath-vent is smaller here');
    expect(out['models.rig']).toContain('serviced shower-vent');
  });
  test('a rig, from its history; a bay; a policy; a fleet', async () => {
    const { out } = await renamed('fleet.rig', 'Heron', 'Egret');
    expect(out['heron/2025.rig']).toMatch(/^history Egret/);
    expect(out['heron.rig']).toContain('rig Egret like');
    expect(out['heron.rig']).toContain('"heron/*.rig"');
    expect((await renamed('fleet.rig', 'Shed', 'Barn')).out).toEqual({
      'fleet.rig': files['fleet.rig']?.replace('Shed', 'Barn'),
    });
    expect(Object.keys((await renamed('heron.rig', 'Yard', 'Court')).out).sort()).toEqual([
      'fleet.rig',
      'heron.rig',
      'yard.rig',
    ]);
    expect(Object.keys((await renamed('fleet.rig', 'Saltmarsh', 'Fen')).out)).toEqual(['fleet.rig']);
  });
  test('its case alone', async () => {
    expect((await renamed('heron.rig', 'Heron', 'HERON')).out['fleet.rig']).toContain('booked  HERON');
  });

  test.each([
    ['no name', 'models.rig', 'Alder', '2nd', /begins with a letter/],
    ['two words', 'models.rig', 'Alder', 'Alder two', /begins with a letter/],
    ['a remark', 'models.rig', 'Alder', 'A#b', /begins with a letter/],
    ['nothing', 'models.rig', 'Alder', ' ', /begins with a letter/],
    ['a hyphen at the end', 'models.rig', 'Alder', 'Alder-', /hyphen/],
    ['a reserved word', 'models.rig', 'bath-vent', 'with', /word of the language/],
    ['a side', 'models.rig', 'bath-vent', 'front', /already means something/],
    ['a set', 'models.rig', 'bath-vent', 'openings', /already means something/],
    ['another item of the roof', 'models.rig', 'bath-vent', 'skylight', /already has an item/],
    ['an item of a roof that is like it', 'models.rig', 'skylight ', 'bath-vent', /already has an item/],
    ['a former name', 'models.rig', 'bath-vent', 'vent-1', /former name/],
    ['another material', 'heron.rig', 'GreyLap note', 'EdgeTape', /already the name of a tape/],
    ['a built-in name', 'heron.rig', 'GreyLap note', 'GenericHybrid', /built-in library/],
    ['another rig, by case', 'heron.rig', 'Heron', 'TEAL', /case only/],
    ['another rig', 'heron.rig', 'Heron', 'Teal', /already a rig/],
    ['a device', 'heron.rig', 'Heron', 'con', /name of a file/],
  ])('refuses %s', async (_what, path, text, newName, why) => {
    const position = editor.positionOf(path, text);
    const asked = editor.request('textDocument/rename', path, { position, newName });
    await expect(asked).rejects.toThrow(why);
  });

  test.each([
    ['a statement word', 'heron.rig', 'sealed', /word of the language/],
    ['a clause word', 'heron.rig', 'like Alder', /word of the language/],
    ['a surface of the library', 'models.rig', 'epdm', /built-in library/],
    ['a side', 'models.rig', 'nearside', /side of the roof/],
    ['a rule', 'heron.rig', 'look-hard-due', /rule of the checker/],
    ['a former name', 'heron.rig', 'vent-1', /former name/],
    ['a text', 'heron.rig', '"GreyLap on', /no name here/],
    ['a remark', 'heron.rig', '# bath-vent', /no name here/],
    ['a condition', 'heron.rig', 'sound', /word of the language/],
  ])('does not offer it for %s', async (_what, path, text, why) => {
    const position = editor.positionOf(path, text, 1);
    await expect(editor.request('textDocument/prepareRename', path, { position })).rejects.toThrow(why);
  });

  test('shows the name before it is changed', async () => {
    const position = editor.positionOf('heron.rig', 'skylight with', 3);
    const got = await editor.request<{ range: Range; placeholder: string }>('textDocument/prepareRename', 'heron.rig', {
      position,
    });
    expect(got.placeholder).toBe('skylight');
    expect(document('heron.rig').getText(got.range)).toBe('skylight');
  });
});
