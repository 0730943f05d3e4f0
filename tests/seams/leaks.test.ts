import { describe, expect, it } from 'vitest';
import { stateOf } from './view.ts';

const leaked = '  leaked 2026-06-11 inside "over the shower" suspect vent\n';
const leaks = (lines: string, asOf?: string) => stateOf(lines, asOf).leaks;

describe('a leak', () => {
  it('is open from the day it was seen', () => {
    expect(leaks(leaked)).toMatchObject([{ inside: 'over the shower', suspects: ['vent'], repairs: [], earlier: 0 }]);
    expect(leaks(leaked, '2026-06-10')).toEqual([]);
  });

  it('is not closed by a dry look without a repair, nor by a repair, nor by a look on the day of the repair', () => {
    const closed = (more: string) => leaks(leaked + more)[0]?.closed;
    const sealed = '  sealed 2026-06-15 vent with Lap\n';
    expect(closed('  inspected 2026-06-20 { all sound }')).toBeUndefined();
    expect(closed(sealed)).toBeUndefined();
    expect(closed(`${sealed}  inspected 2026-06-15 { vent sound }`)).toBeUndefined();
    expect(closed(`${sealed}  inspected 2026-06-20 vent`)).toBeUndefined();
    expect(closed(`${sealed}  inspected 2026-06-20 { dome sound }`)).toBeUndefined();
  });

  it('is closed by a later look that finds the repaired place sound and dry', () => {
    const found = (word: string) =>
      leaks(`${leaked}  sealed 2026-06-15 vent with Lap\n  inspected 2026-06-20 { vent ${word} }`)[0];
    expect(found('sound')).toMatchObject({ closed: { first: '2026-06-20' }, repairs: [{ items: ['vent'] }] });
    expect(found('sound moisture 14 %')?.closed).toBeDefined();
    for (const worse of ['sound wet', 'sound moisture 22 %', 'hairline', 'not-seen'])
      expect(found(worse)?.closed).toBeUndefined();
  });

  it('counts only repairs of a suspect, or any where nobody is suspected', () => {
    const dome = '  sealed 2026-06-15 dome with Lap\n  inspected 2026-06-20 { all sound }';
    expect(leaks(leaked + dome)[0]).toMatchObject({ repairs: [] });
    expect(leaks(`  leaked 2026-06-11\n${dome}`)[0]).toMatchObject({
      repairs: [{ items: ['dome'] }],
      closed: { first: '2026-06-20' },
    });
  });

  it('of a long seam is judged where it was mended', () => {
    const lines = `  leaked 2026-06-11 suspect curbside
  sealed 2026-06-15 curbside from 6 ft to 9 ft with Lap
  inspected 2026-06-20 {
    curbside sound from 6 ft to 9 ft
    curbside hairline from 20 ft to 21 ft
  }`;
    expect(leaks(lines)[0]?.closed).toBeDefined();
  });

  it('that comes again is counted by its place or its suspects', () => {
    const again = `${leaked}  leaked 2026-08-01 inside "Over the shower"\n  leaked 2026-09-01 suspect vent, dome`;
    expect(leaks(again).map((leak) => leak.earlier)).toEqual([0, 1, 1]);
  });
});
