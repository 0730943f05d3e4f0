// Groups, yards and crews in the editor: where they lead, what they are called, what is offered.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type {
  CompletionList,
  DocumentSymbol,
  Hover,
  Location,
  LocationLink,
  MarkupContent,
  WorkspaceEdit,
} from 'vscode-languageserver';
import { type Editor, startEditor } from './editor.ts';

const files = {
  'groups.rig': 'policy Salt { inspect every 3 months }\n## At the sea.\ngroup Coastal under Salt\ngroup Lakes\n',
  'rigs/auk.rig': 'use "../groups.rig"\nrig Auk {\n  roof 20 ft by 8 ft epdm\n  group Coastal\n}\n',
  'rigs/brant.rig': 'use "../groups.rig"\nrig Brant {\n  roof 20 ft by 8 ft epdm\n}\n',
  'fleet.rig': `use "groups.rig"
fleet Yards {
  rigs "rigs/*.rig"
  yard Harbour {
    crew Ladder 2 for 8 h each on mon to fri
    skill Ladder tape, seal
    bay Shed indoor 40 ft
    serves Coastal, Brant
  }
  off Ladder 2027-07-01 to 2027-07-14
  yard Inland { bay Shed outdoor  bay Barn indoor }
}
`,
};
let editor: Editor;
beforeAll(async () => {
  editor = await startEditor({ files, capabilities: { workspace: { workspaceEdit: { documentChanges: true } } } });
  for (const path of Object.keys(files)) await editor.open(path);
  await editor.quiet();
});
afterAll(() => editor.stop());

const shortened = (uri: string) => uri.slice(uri.lastIndexOf('/') + 1);
const at = (path: string, text: string, offset = 0) => ({ position: editor.positionOf(path, text, offset) });

describe('a name', () => {
  const leads = async (path: string, text: string, offset = 0) =>
    (await editor.request<LocationLink[]>('textDocument/definition', path, at(path, text, offset))).map(
      ({ targetUri, targetSelectionRange: { start } }) => `${shortened(targetUri)}:${start.line + 1}`,
    );
  test.each([
    ['of a group in a rig', 'rigs/auk.rig', 'group Coastal', 7, 'groups.rig:3'],
    ['of a group that a yard serves', 'fleet.rig', 'Coastal', 1, 'groups.rig:3'],
    ['of a rig that a yard serves', 'fleet.rig', 'Brant', 1, 'brant.rig:2'],
    ['of a crew with days off', 'fleet.rig', 'off Ladder', 5, 'fleet.rig:5'],
    ['of a crew with a skill, in a yard', 'fleet.rig', 'skill Ladder', 7, 'fleet.rig:5'],
  ])('%s leads to it', async (_, path, text, offset, place) => {
    expect(await leads(path, text, offset)).toEqual([place]);
  });
  test('of a group tells of its policy', async () => {
    const got = await editor.request<Hover>('textDocument/hover', 'rigs/auk.rig', at('rigs/auk.rig', 'Coastal', 1));
    const { value } = got.contents as MarkupContent;
    expect(value).toContain('**Coastal**, a group of rigs, under **Salt**');
    expect(value).toContain('At the sea.');
  });
});

describe('all places', () => {
  const places = async (path: string, text: string, offset = 0) =>
    (
      await editor.request<Location[]>('textDocument/references', path, {
        ...at(path, text, offset),
        context: { includeDeclaration: true },
      })
    ).map(({ uri, range: { start } }) => `${shortened(uri)}:${start.line + 1}`);
  test('that name a group', async () => {
    expect(await places('groups.rig', 'Coastal')).toEqual(['fleet.rig:8', 'groups.rig:3', 'auk.rig:4']);
  });
  test('that name a crew', async () => {
    expect(await places('fleet.rig', 'off Ladder', 4)).toEqual(['fleet.rig:5', 'fleet.rig:6', 'fleet.rig:10']);
  });
  test('that name a rig, one of them served by a yard', async () => {
    expect(await places('rigs/brant.rig', 'Brant')).toEqual(['fleet.rig:8', 'brant.rig:2']);
  });
});

describe('a new name', () => {
  const renamed = async (path: string, text: string, newName: string, offset = 0) => {
    const edit = await editor.request<WorkspaceEdit>('textDocument/rename', path, {
      ...at(path, text, offset),
      newName,
    });
    return (edit.documentChanges ?? []).flatMap((change) =>
      'edits' in change
        ? change.edits.map(
            (one) => `${shortened(change.textDocument.uri)}:${'range' in one ? one.range.start.line + 1 : 0}`,
          )
        : [],
    );
  };
  test('of a group is written in every file', async () => {
    expect((await renamed('groups.rig', 'Coastal', 'Seaside')).sort()).toEqual([
      'auk.rig:4',
      'fleet.rig:8',
      'groups.rig:3',
    ]);
  });
  test('of a crew, in its whole fleet', async () => {
    expect(await renamed('fleet.rig', 'off Ladder', 'Roofers', 4)).toEqual([
      'fleet.rig:5',
      'fleet.rig:6',
      'fleet.rig:10',
    ]);
  });
  test('of a yard, where it is declared', async () => {
    expect(await renamed('fleet.rig', 'Harbour', 'Quay')).toEqual(['fleet.rig:4']);
  });
  test('of a bay, in its own yard alone', async () => {
    expect(await renamed('fleet.rig', 'Shed indoor', 'Barn')).toEqual(['fleet.rig:7']);
    await expect(renamed('fleet.rig', 'Shed outdoor', 'Barn')).rejects.toThrow('already has a bay `Barn`');
  });
  test('that another group has is refused', async () => {
    await expect(renamed('groups.rig', 'Coastal', 'Lakes')).rejects.toThrow('`Lakes` is already the name of a group');
  });
});

describe('completion', () => {
  const offered = async (path: string, text: string, from: string) => {
    await editor.replace(path, from, text);
    const got = await editor.request<CompletionList>('textDocument/completion', path, {
      ...at(path, text, text.length),
      context: { triggerKind: 1 },
    });
    await editor.replace(path, text, from);
    return got.items.map(({ label }) => label);
  };
  test('offers the groups that are visible', async () => {
    expect(await offered('rigs/auk.rig', '  group ', '  group Coastal')).toEqual(
      expect.arrayContaining(['Coastal', 'Lakes']),
    );
  });
  test('offers groups and rigs to a yard', async () => {
    expect(await offered('fleet.rig', 'serves ', 'serves Coastal, Brant')).toEqual(
      expect.arrayContaining(['Coastal', 'Lakes', 'Auk', 'Brant']),
    );
  });
  test('offers the crews of the fleet, and what they can do', async () => {
    expect(await offered('fleet.rig', '  off ', '  off Ladder 2027-07-01 to 2027-07-14')).toEqual(['Ladder']);
    expect(await offered('fleet.rig', 'skill Ladder tape, ', 'skill Ladder tape, seal')).toEqual(
      expect.arrayContaining(['wash', 'strip']),
    );
  });
});

test('the outline has a yard with its lines', async () => {
  const symbols = await editor.request<DocumentSymbol[]>('textDocument/documentSymbol', 'fleet.rig', {});
  const yard = symbols[0]?.children?.find(({ name }) => name === 'yard Harbour');
  expect(yard?.children?.map(({ name }) => name)).toEqual([
    'crew Ladder',
    'skill Ladder',
    'bay Shed',
    'serves Coastal',
  ]);
});
