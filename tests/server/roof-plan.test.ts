import { afterEach, describe, expect, it } from 'vitest';
import type { RoofPlan } from '../../language/protocol/index.ts';
import { type Editor, startEditor } from './editor.ts';

const files = {
  'a.rig': `
rig Plover {
  records "b.rig"
  roof 30 ft by 8 ft epdm
  edge curbside, roadside  # on the left and the right
  opening hatch 20 in by 14 in at 20 ft, 3 ft
  inspected 2026-10-04 { all sound }
}
rig Snipe { roof 12 ft by 7 ft epdm }
`,
  'b.rig': `history Plover {
  inspected 2026-11-01 {
    hatch cracked
  }
}
`,
};

let editor: Editor;
afterEach(() => editor.stop());

const start = async () => {
  editor = await startEditor({ files });
  await editor.open('a.rig');
  await editor.quiet();
};
const plan = (name = 'Plover') =>
  editor.connection.sendRequest<RoofPlan | null>('rigseam/roofPlan', { uri: editor.uri('a.rig'), name });
const spot = (path: string, text: string) =>
  editor.connection.sendRequest('rigseam/roofSpot', {
    uri: editor.uri(path),
    position: editor.positionOf(path, text, 1),
  });

describe('the plan of a roof over the protocol', () => {
  it('is that of the text as it is typed, and says when it is stale', async () => {
    await start();
    let stale = 0;
    editor.connection.onNotification('rigseam/stale', () => {
      stale++;
    });
    await editor.replace('a.rig', 'opening hatch', 'opening lid');
    await editor.quiet();
    // Nobody has asked yet.
    expect(stale).toBe(0);
    expect((await plan())?.seams.map(({ item }) => item)).toContain('lid');
    await editor.replace('a.rig', 'opening lid', 'opening hatch');
    await editor.until(() => stale > 0, 'the notice');
    expect((await plan())?.seams.find(({ item }) => item === 'hatch')?.says).toMatch(/^hatch opening, .*cracked/);
    expect(await plan('Heron')).toBeNull();
  });

  it('says so when a line could not be read, and when it can again', async () => {
    await start();
    expect((await plan())?.unread).toBe(false);
    await editor.replace('a.rig', '20 in by 14 in', '20 in by');
    expect((await plan())?.unread).toBe(true);
    await editor.replace('a.rig', '20 in by', '20 in by 14 in');
    expect((await plan())?.unread).toBe(false);
    await editor.replace('a.rig', '{ all sound }', '{ all soundly }');
    expect((await plan())?.unread).toBe(true);
    expect((await plan('Snipe'))?.unread).toBe(false);
  });

  it('knows which seam a place speaks of, in the rig and in its records elsewhere', async () => {
    await start();
    const rig = { uri: editor.uri('a.rig'), name: 'Plover' };
    expect(await spot('a.rig', 'hatch 20')).toEqual({ rig, items: ['hatch'], rigs: ['Plover', 'Snipe'] });
    expect(await spot('a.rig', '  opening hatch')).toMatchObject({ items: ['hatch'] });
    expect(await spot('a.rig', '# on the left')).toMatchObject({ items: ['curbside', 'roadside'] });
    expect(await spot('a.rig', 'Snipe')).toMatchObject({ rig: { name: 'Snipe' }, items: [] });
    await editor.open('b.rig');
    await editor.quiet();
    expect(await spot('b.rig', 'hatch cracked')).toEqual({ rig, items: ['hatch'], rigs: [] });
  });

  it('knows the line of a seam, and the files of the plan', async () => {
    await start();
    const address = { uri: editor.uri('a.rig'), name: 'Plover' };
    const line = await editor.connection.sendRequest<{ range: { start: { line: number } } } | null>(
      'rigseam/roofLine',
      {
        ...address,
        item: 'hatch',
      },
    );
    expect(line?.range.start.line).toBe(5);
    expect(await editor.connection.sendRequest('rigseam/roofLine', { ...address, item: 'gone' })).toBeNull();
    const paper = (by: string, form: string) =>
      editor.connection.sendRequest<{ name: string; text: string }>('rigseam/roofPaper', { ...address, by, form });
    const written = await editor.connection.sendRequest<{ files: { name: string; text: string }[] }>(
      'rigseam/documents',
      { uri: address.uri, names: ['Plover'] },
    );
    const svg = written.files.find(({ name }) => name === 'Plover.roof.svg');
    expect(svg?.text).toMatch(/^<svg/);
    expect(await paper('condition', 'svg')).toEqual(svg);
    expect(await paper('due', 'page')).toMatchObject({ name: 'Plover.roof-by-due-date.html' });
    await expect(paper('colour', 'svg')).rejects.toThrow(/by/);
  });
});
