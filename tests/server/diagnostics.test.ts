// What the editor is told while files are typed in, closed, changed elsewhere, and as the days go by.
import { afterEach, describe, expect, test } from 'vitest';
import { exampleFile } from '../worked-example/text.ts';
import { type Editor, startEditor } from './editor.ts';

const yard = {
  'yard/materials.rig': exampleFile('yard/materials.rig'),
  'yard/policy.rig': exampleFile('yard/policy.rig'),
  'rigs/models.rig': exampleFile('rigs/models.rig'),
  'rigs/heron.rig': exampleFile('rigs/heron.rig'),
  'yard/fleet.rig': exampleFile('yard/fleet.rig'),
};
const heron = 'rigs/heron.rig';

let editor: Editor | undefined;
const start = async (...given: Parameters<typeof startEditor>) => {
  editor = await startEditor(...given);
  return editor;
};
afterEach(async () => {
  await editor?.stop();
  editor = undefined;
});

/** What is shown now that was not shown before. */
const added = (before: ReturnType<Editor['shown']>, after: ReturnType<Editor['shown']>) => {
  const known = new Set(before.map((one) => JSON.stringify(one)));
  return after.filter((one) => !known.has(JSON.stringify(one)));
};

describe('typing', () => {
  const teal = 'rigs/teal.rig';
  const tealText = `rig Teal {
  roof       20 ft by 8 ft epdm
  edge       curbside, roadside
  opening    vent  14 in by 14 in at 8 ft, 4 ft
  gasket     fan   14 in by 14 in at 14 ft, 4 ft
  found      2026-05-01 all with unknown
  inspected  2026-10-01 {
    vent      cracked
    curbside  hairline from 6 ft to 9 ft
    rest      sound
  }
  tightened  2026-10-02 fan note "a quarter turn"
}
`;

  test('a length without a unit: one finding more, the rest of the file as before, the version with it', async () => {
    const at = await start({ files: { [teal]: tealText } });
    await at.open(teal);
    await at.quiet();
    const before = at.shown(teal);
    expect(before).not.toEqual([]);
    await at.replace(teal, 'from 6 ft to 9 ft', 'from 6 ft to 9');
    await at.until(() => added(before, at.shown(teal)).length > 0);
    const [found, ...more] = added(before, at.shown(teal));
    expect(more).toEqual([]);
    expect(found).toMatchObject({ at: '9', rule: 'wrong-value' });
    expect(found?.message).toMatch(/unit/);
    expect(at.published.at(-1)).toMatchObject({ path: teal, version: 2 });
  });

  test('a wrong seam name: the nearest is offered, and nothing else is said', async () => {
    const at = await start({ files: { [teal]: tealText } });
    await at.open(teal);
    await at.quiet();
    const before = at.shown(teal);
    await at.replace(teal, 'tightened  2026-10-02 fan', 'tightened  2026-10-02 fna');
    await at.until(() => at.shown(teal).some(({ rule }) => rule === 'unknown-seam'));
    const [found, ...more] = added(before, at.shown(teal));
    expect(more).toEqual([]);
    expect(found).toMatchObject({ at: 'fna', rule: 'unknown-seam' });
    expect(found?.message).toContain('`fan`');
  });

  test('an edit and its undo show what was shown before', async () => {
    const at = await start({ files: yard });
    await at.open(heron);
    await at.quiet();
    const before = at.diagnostics(heron);
    await at.replace(heron, 'suspect bath-vent', 'suspect bath-vnet');
    await at.until(() => at.shown(heron).some(({ rule }) => rule === 'unknown-seam'));
    await at.replace(heron, 'suspect bath-vnet', 'suspect bath-vent');
    await at.quiet();
    expect(at.diagnostics(heron)).toEqual(before);
  });

  test('what changes no finding is not published again', async () => {
    const at = await start({ files: yard });
    await at.open(heron);
    await at.quiet();
    const count = at.published.length;
    await at.replace(heron, '"forward corner"', '"rear corner"');
    await at.quiet();
    expect(at.published.slice(count)).toEqual([]);
  });

  test('keystrokes in a row end in what the last one deserves', async () => {
    const at = await start({ files: yard });
    await at.open(heron);
    await at.quiet();
    const before = at.diagnostics(heron);
    for (const [from, to] of [
      ['suspect bath-vent', 'suspect bath-ven'],
      ['suspect bath-ven', 'suspect bath-ve'],
      ['suspect bath-ve', 'suspect bath-v'],
      ['suspect bath-v', 'suspect bath-vent'],
    ] as const)
      void at.replace(heron, from, to);
    await at.quiet();
    expect(at.diagnostics(heron)).toEqual(before);
  });
});

describe('files that are closed', () => {
  test('are checked at the start, without being opened', async () => {
    const at = await start({ files: { ...yard, 'rigs/broken.rig': 'rig Teal {\n  edge curbsid\n}\n' } });
    await at.quiet();
    expect(at.diagnostics('rigs/broken.rig').map(({ code }) => code)).toContain('unknown-word');
  });

  test('go back to the text on disk when closed without saving', async () => {
    const at = await start({ files: yard });
    await at.quiet();
    const before = at.diagnostics(heron);
    await at.open(heron);
    await at.replace(heron, 'suspect bath-vent', 'suspect bath-vnet');
    await at.until(() => at.shown(heron).some(({ rule }) => rule === 'unknown-seam'));
    await at.close(heron);
    await at.until(() => !at.diagnostics(heron).some(({ code }) => code === 'unknown-seam'));
    await at.quiet();
    expect(at.diagnostics(heron)).toEqual(before);
  });

  test('a change in the materials is seen in the rigs that use them, and only those are published', async () => {
    const teal = 'rig Teal {\n  roof 20 ft by 8 ft epdm\n  edge curbsid\n}\n';
    const at = await start({ files: { ...yard, 'rigs/teal.rig': teal } });
    await at.quiet();
    const count = at.published.length;
    await at.open('yard/materials.rig');
    await at.replace('yard/materials.rig', 'tape EdgeTape4', 'tape EdgeTape5');
    await at.until(() => at.diagnostics(heron).some(({ code }) => code === 'unknown-material'));
    await at.quiet();
    const published = new Set(at.published.slice(count).map(({ path }) => path));
    expect(published).toContain(heron);
    expect(published).not.toContain('rigs/teal.rig');
    await at.replace('yard/materials.rig', 'tape EdgeTape5', 'tape EdgeTape4');
    await at.until(() => !at.diagnostics(heron).some(({ code }) => code === 'unknown-material'));
  });
});

describe('files on disk', () => {
  const wrong = { 'rigs/a.rig': 'use "shared/base.rig"\nrig Teal like Base {\n}\n' };

  test('a missing file that appears is seen by those who looked for it', async () => {
    const at = await start({ files: wrong });
    await at.quiet();
    expect(at.diagnostics('rigs/a.rig').map(({ code }) => code)).toContain('file-not-found');
    await at.save({ 'rigs/shared/base.rig': 'model Base {\n  roof 20 ft by 8 ft epdm\n}\n' }, 1);
    await at.quiet();
    expect(at.diagnostics('rigs/a.rig').map(({ code }) => code)).not.toContain('file-not-found');
    expect(at.diagnostics('rigs/a.rig').map(({ code }) => code)).not.toContain('unknown-name');
  });

  test('a deleted folder takes its findings with it, and is missed by those who used it', async () => {
    const at = await start({
      files: { ...wrong, 'rigs/shared/base.rig': 'model Base {\n  roof 20 ft by 8 epdm\n}\n' },
    });
    await at.quiet();
    expect(at.diagnostics('rigs/shared/base.rig')).not.toEqual([]);
    await at.remove('rigs/shared');
    await at.quiet();
    expect(at.diagnostics('rigs/shared/base.rig')).toEqual([]);
    expect(at.diagnostics('rigs/a.rig').map(({ code }) => code)).toContain('file-not-found');
  });

  test('a new history that a rig claims counts at once', async () => {
    const at = await start({ files: yard });
    await at.quiet();
    await at.save({ 'rigs/heron/2026.rig': 'history Heron {\n  tightened 2026-10-01 no-such-seam\n}\n' }, 1);
    await at.until(() => at.diagnostics('rigs/heron/2026.rig').some(({ code }) => code === 'unknown-seam'));
  });

  test('a photo that appears ends its complaint', async () => {
    const at = await start({ files: yard });
    await at.open(heron);
    await at.quiet();
    const missing = () => at.shown(heron).filter(({ message }) => message.includes('bath-vent-1.jpg'));
    expect(missing()).toHaveLength(1);
    await at.save({ 'rigs/bath-vent-1.jpg': 'no record' }, 1);
    await at.until(() => missing().length === 0);
    await at.quiet();
    expect(at.diagnostics('rigs/bath-vent-1.jpg')).toEqual([]);
  });

  test('a folder of photos that goes is missed by those that name them', async () => {
    const text = 'rig Teal {\n  roof 20 ft by 8 ft epdm\n  sealed 2025-05-05 all with Gum photo "teal/roof.jpg"\n}\n';
    const at = await start({ files: { 'a.rig': text, 'teal/roof.jpg': '' } });
    await at.quiet();
    const missing = () => at.diagnostics('a.rig').some(({ code }) => code === 'evidence-missing');
    expect(missing()).toBe(false);
    await at.remove('teal');
    await at.until(missing);
  });

  test('a missing file that comes is seen in open and in closed files', async () => {
    const text = (name: string) =>
      `use "parts.rig"\nrig ${name} {\n  roof 20 ft by 8 ft epdm\n  sealed 2025-05-05 all with Gum\n}\n`;
    const at = await start({ files: { 'a.rig': text('Teal'), 'b.rig': text('Snipe') } });
    await at.open('a.rig');
    await at.quiet();
    const errors = () => ['a.rig', 'b.rig'].map((path) => at.diagnostics(path).filter((each) => each.severity === 1));
    expect(errors().map(({ length }) => length)).toEqual([2, 2]);
    await at.save({ 'parts.rig': 'sealant Gum {\n  for epdm\n}\n' }, 1);
    await at.quiet();
    expect(errors()).toEqual([[], []]);
  });

  test('a file that goes and is back before it is told stays known', async () => {
    const at = await start({ files: { 'a.rig': 'rig Teal {\n  edge curbsid\n}\n' } });
    await at.quiet();
    const uri = at.uri('a.rig');
    await at.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [
        { uri, type: 3 },
        { uri, type: 1 },
      ],
    });
    await at.quiet();
    expect(at.diagnostics('a.rig')).not.toEqual([]);
  });

  test('a file that is renamed brings its findings along', async () => {
    const at = await start({ files: { 'old/a.rig': 'rig Teal {\n  edge curbsid\n}\n' } });
    await at.quiet();
    expect(at.diagnostics('old/a.rig')).not.toEqual([]);
    const text = 'rig Teal {\n  edge curbsid\n}\n';
    at.write('new/a.rig', text);
    const { rmSync } = await import('node:fs');
    rmSync(`${at.folder}/old`, { recursive: true });
    await at.connection.sendNotification('workspace/didRenameFiles', {
      files: [{ oldUri: at.uri('old'), newUri: at.uri('new') }],
    });
    await at.quiet();
    expect(at.diagnostics('old/a.rig')).toEqual([]);
    expect(at.diagnostics('new/a.rig').map(({ code }) => code)).toContain('unknown-word');
  });
});

describe('folders and dates', () => {
  test('a folder that joins is checked, one that leaves is cleared', async () => {
    const text = 'rig Teal {\n  edge curbsid\n}\n';
    const at = await start({
      files: { 'one/a.rig': text, 'two/b.rig': text.replace('Teal', 'Tern') },
      folders: ['one'],
    });
    await at.quiet();
    expect(at.diagnostics('one/a.rig')).not.toEqual([]);
    expect(at.diagnostics('two/b.rig')).toEqual([]);
    await at.connection.sendNotification('workspace/didChangeWorkspaceFolders', {
      event: { added: [{ name: 'two', uri: at.uri('two') }], removed: [{ name: 'one', uri: at.uri('one') }] },
    });
    await at.until(() => at.diagnostics('two/b.rig').length > 0 && at.diagnostics('one/a.rig').length === 0);
  });

  test('a record of tomorrow is none tomorrow', async () => {
    const text = 'rig Teal {\n  roof 20 ft by 8 ft epdm\n  washed 2026-11-26\n}\n';
    const at = await start({ files: { 'a.rig': text } });
    await at.open('a.rig');
    await at.quiet();
    const before = at.shown('a.rig');
    expect(before.some(({ at: where }) => where.includes('2026-11-26'))).toBe(true);
    at.day('2026-11-26');
    await at.until(() => !at.shown('a.rig').some(({ at: where }) => where.includes('2026-11-26')));
  });

  test('the as-of date of the settings decides what is overdue', async () => {
    const at = await start({ files: yard });
    await at.until(() => at.statuses.some(({ busy, rigs }) => !busy && rigs === 1));
    expect(at.statuses.at(-1)).toMatchObject({ asOf: '2026-11-25', overdue: 1 });
    await at.configure({ asOf: '2026-04-18' });
    await at.until(() => at.statuses.at(-1)?.asOf === '2026-04-18' && at.statuses.at(-1)?.busy === false);
    expect(at.statuses.at(-1)).toMatchObject({ today: '2026-11-25' });
  });
});
