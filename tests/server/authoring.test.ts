import { afterEach, describe, expect, it } from 'vitest';
import type { WalkReply } from '../../language/protocol/index.ts';
import { type Editor, startEditor } from './editor.ts';

const files = {
  'yard/policy.rig': `policy Yard { units metric }
## Our own sheet.
surface our-sheet like epdm
`,
  'rigs/plover.rig': `use "../yard/policy.rig"
rig Plover under Yard {
  records "plover/*.rig"
  roof 9 m by 2.4 m epdm
  edge curbside, roadside
  cap front
  opening hatch 50 cm by 35 cm at 6 m, 1 m of abs
  gasket air-con 36 cm by 36 cm at 4 m, 1.2 m
  opening gone 10 cm by 10 cm until 2024-01-01
  taped 2024-05-01 front
}
`,
  'rigs/plover/2026.rig': `history Plover {
  inspected  2026-05-01 by "K. Osei" {
    curbside     hairline  from 2 m to 3 m  note "by the rail"
    rest         sound
  }
}
`,
};

let editor: Editor;
afterEach(() => editor.stop());

const start = async (given: Readonly<Record<string, string>> = files) => {
  editor = await startEditor({ files: given });
  await editor.quiet();
};
const ask = <R>(what: string, params: object) => editor.connection.sendRequest<R>(`rigseam/${what}`, params);
const plover = () => ({ uri: editor.uri('rigs/plover.rig'), name: 'Plover' });
const problem = async (kind: string, text: string) =>
  (await ask<{ problem: string | null }>('readAnswer', { kind, text })).problem;

interface Change {
  readonly uri: string;
  readonly newText: string;
  readonly range: { readonly start: { readonly line: number }; readonly end: { readonly line: number } };
}
const inspection = { date: '2026-11-25', by: 'K. Osei', said: [{ item: 'hatch', seen: 'cracked' }], restIsSound: true };

describe('a new rig over the protocol', () => {
  it('offers the membranes and the policies that a file of the folder can use', async () => {
    await start();
    const offers = await ask<{
      membranes: { name: string; about: string }[];
      policies: { name: string; path: string; units: string; membranes: { name: string }[] }[];
    }>('newRig', { folder: editor.uri('rigs') });
    expect(offers.membranes.find(({ name }) => name === 'epdm')?.about).toMatch(/^Rubber sheet/);
    expect(offers.membranes.map(({ name }) => name)).not.toContain('our-sheet');
    expect(offers.policies).toMatchObject([{ name: 'Yard', path: '../yard/policy.rig', units: 'metric' }]);
    expect(offers.policies[0]?.membranes[0]?.name).toBe('our-sheet');
    const nowhere = await ask<typeof offers>('newRig', { folder: null });
    expect(nowhere.policies).toEqual([]);
    expect(nowhere.membranes).toEqual(offers.membranes);
  });

  it('takes a name that nobody has, and says why not', async () => {
    await start();
    expect(await problem('rig-name', 'Teal')).toBeNull();
    expect(await problem('rig-name', 'Plover')).toContain('already a rig `Plover`');
    expect(await problem('rig-name', 'plover')).toContain('case only');
    expect(await problem('rig-name', 'con')).toContain('file');
    expect(await problem('rig-name', '28-footer')).toContain('is no name');
    expect(await problem('rig-name', 'with')).toContain('word of the language');
    expect(await problem('rig-name', ' ')).toContain('Write a name');
  });

  it('reads lengths and dates as a record would', async () => {
    await start();
    expect(await problem('length', '28')).toMatch(/unit/);
    expect(await problem('length', '28 ft')).toBeNull();
    expect(await problem('day', '2026-11-26')).toContain('after today, 2026-11-25');
    editor.day('2026-11-26');
    expect(await problem('day', '2026-11-26')).toBeNull();
  });
});

describe('an inspection over the protocol', () => {
  it('walks what is there, in walking order, with the last finding and the gauges of what lies there', async () => {
    await start();
    const walk = await ask<WalkReply>('walk', plover());
    expect(walk.stations.map(({ item }) => item)).toEqual(['curbside', 'roadside', 'front', 'hatch', 'air-con']);
    expect(walk).toMatchObject({ name: 'Plover', date: '2026-11-25', people: ['K. Osei'] });
    const [curbside, , front, , airCon] = walk.stations;
    expect(curbside).toMatchObject({ what: 'edge, 9.00 m', length: '9000 mm', lastNote: 'by the rail' });
    expect(curbside?.last).toContain('hairline 2026-05-01 from 2.00 m to 3.00 m');
    const lifting = (station: typeof front) => station?.gauges.find(({ word }) => word === 'lifting')?.gauge;
    expect(lifting(curbside)).toContain('thumbnail');
    expect(lifting(front)).toContain('fish-mouth open');
    expect(lifting(airCon)).toBe('a gap is seen');
    expect(await ask('walk', { ...plover(), name: 'Nobody' })).toBeNull();
  });

  it('speaks of the as-of date', async () => {
    await start();
    await editor.configure({ asOf: '2026-06-01' });
    expect(await ask('walk', plover())).toMatchObject({ date: '2026-06-01' });
  });

  it('is written behind the last record of the history, and counts', async () => {
    await start();
    await editor.open('rigs/plover/2026.rig');
    const change = await ask<Change>('inspection', { ...plover(), inspection });
    expect(change.uri).toBe(editor.uri('rigs/plover/2026.rig'));
    expect(change.range).toMatchObject({ start: { line: 4, character: 3 }, end: { line: 4, character: 3 } });
    expect(change.newText).toBe(
      '\n  inspected  2026-11-25 by "K. Osei" {\n    hatch        cracked\n    rest         sound\n  }',
    );
    await editor.replace('rigs/plover/2026.rig', '  }\n}', `  }${change.newText}\n}`);
    await editor.quiet();
    expect(editor.diagnostics('rigs/plover/2026.rig').filter(({ severity }) => severity === 1)).toEqual([]);
    expect((await ask<WalkReply>('walk', plover())).stations[0]?.last).toBe('sound 2026-11-25');
  });

  it('sees what is typed and not saved', async () => {
    await start();
    await editor.open('rigs/plover/2026.rig');
    await editor.replace('rigs/plover/2026.rig', 'history', '# more\n\nhistory');
    const change = await ask<Change>('inspection', { ...plover(), inspection });
    expect(change.range.start).toMatchObject({ line: 6 });
  });

  it('is null where the rig is not', async () => {
    await start();
    expect(await ask('inspection', { ...plover(), name: 'Nobody', inspection })).toBeNull();
  });
});
