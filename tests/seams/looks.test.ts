import { describe, expect, it } from 'vitest';
import { moistureCall, moistureTrend, stateAt } from '../../language/seams/index.ts';
import { FT, plain, seam, stateOf, stretch, viewOf } from './view.ts';

const words = (lines: string, item: string) => seam(lines, item).stretches.map((each) => each.condition?.word);

describe('a look', () => {
  const lines = `  inspected 2026-04-18 {
    curbside hairline from 6 ft to 9 ft
    vent cracked
    roadside not-seen
    rest sound
  }`;

  it('`rest sound` covers only what was looked at and not named', () => {
    expect(words(lines, 'dome')).toEqual(['sound']);
    expect(words(lines, 'air-con')).toEqual(['sound']);
    expect(words(lines, 'curbside')).toEqual([undefined, 'hairline', undefined]);
    expect(words(lines, 'roadside')).toEqual([undefined]);
  });

  it('of a part is a look at the whole; `not-seen` is none', () => {
    expect(seam(lines, 'curbside').stretches.every((each) => each.looked?.first === '2026-04-18')).toBe(true);
    expect(stretch(lines, 'roadside')).toMatchObject({ notSeen: { since: { first: '2026-04-18' } } });
    expect(stretch(lines, 'roadside').looked).toBeUndefined();
  });

  it('keeps the first day of not being seen until somebody looks', () => {
    const twice = '  inspected 2025-04-18 { roadside not-seen }\n  inspected 2026-04-18 { roadside not-seen }';
    expect(stretch(twice, 'roadside').notSeen).toMatchObject({
      since: { first: '2025-04-18' },
      last: { first: '2026-04-18' },
    });
    expect(stretch(`${twice}\n  inspected 2026-05-01 roadside`, 'roadside').notSeen).toBeUndefined();
  });

  it('without findings is a look at its targets, or at everything, and gives no condition', () => {
    const [all, some] = [stateOf('  inspected 2026-04-18'), stateOf('  inspected 2026-04-18 vent, dome')];
    const looked = (state: typeof all) =>
      [...state.seams.values()].filter((each) => each.stretches[0]!.looked).map((each) => each.item.name);
    expect(looked(all)).toEqual([...all.seams.keys()]);
    expect(looked(some)).toEqual(['vent', 'dome']);
    expect(stretch('  inspected 2026-04-18', 'vent').condition).toBeUndefined();
  });

  it('gives the worst of several lines about a place, in whatever order they stand', () => {
    const found = ['vent hairline', 'vent lifting', 'vent stained', 'vent wet'];
    const inBlock = (some: readonly string[]) =>
      `  inspected 2026-04-18 {\n${some.map((line) => `    ${line}\n`).join('')}  }`;
    const one = stretch(inBlock(found), 'vent');
    const other = stretch(inBlock([...found].reverse()), 'vent');
    expect(one.condition?.word).toBe('lifting');
    expect(one.defects).toEqual(['stained']);
    expect(one.wet).toBeDefined();
    expect(plain(one)).toEqual(plain(other));
  });

  it('a defect stands for its level only where no condition is written', () => {
    expect(words('  inspected 2026-04-18 { vent torn }', 'vent')).toEqual(['open']);
    expect(words('  inspected 2026-04-18 { vent hairline, torn }', 'vent')).toEqual(['hairline']);
  });

  it('remembers since when a level holds: cracked, then lifting, then cracked again', () => {
    const days = ['2026-04-01 { vent cracked }', '2026-04-20 { vent lifting }', '2026-05-01 { vent cracked }'];
    const onset = (n: number) =>
      plain(
        stretch(
          days
            .slice(0, n)
            .map((day) => `  inspected ${day}`)
            .join('\n'),
          'vent',
        ).onset,
      );
    expect(onset(2)).toMatchObject({
      cracked: 'inspected 2026-04-01 2026-04-01 ',
      lifting: 'inspected 2026-04-20 2026-04-20 ',
    });
    expect(onset(3)).not.toHaveProperty('lifting');
    expect(onset(3)).toMatchObject({ cracked: 'inspected 2026-04-01 2026-04-01 ' });
  });

  it('splits where a part of a seam ends, within its length', () => {
    const parts = seam('  inspected 2026-04-18 { curbside open from 20 ft to 40 ft }', 'curbside').stretches;
    expect(parts.map(({ from, to }) => [from / FT, (to as number) / FT])).toEqual([
      [0, 20],
      [20, 28],
    ]);
  });

  it('that names the sealant corrects what was assumed, unless it lies there already', () => {
    const layers = (word: string) => stretch(`  inspected 2026-04-18 { vent sound with ${word} }`, 'vent').layers;
    expect(layers('Sil')).toMatchObject([{ by: 'found', material: 'Sil' }]);
    expect(layers('Lap')).toMatchObject([{ by: 'factory', material: 'Lap' }]);
  });
});

describe('a repair', () => {
  it.each([
    'sealed 2026-05-01 vent with Lap',
    'taped 2026-05-01 vent with Strip',
    'coated 2026-05-01 with Cream',
    'patched 2026-05-01 vent with Strip',
  ])('%s renews and is never sound until somebody looks', (work) => {
    const lines = `  inspected 2026-04-18 { vent cracked, torn }\n  ${work}`;
    const done = stretch(lines, 'vent');
    expect(done).toMatchObject({ condition: { word: 'renewed' }, defects: [], onset: {} });
    expect(done.sound).toBeUndefined();
    expect(stretch(`${lines}\n  inspected 2026-06-01 vent`, 'vent').condition?.word).toBe('renewed');
    expect(stretch(`${lines}\n  inspected 2026-06-01 { vent sound }`, 'vent').condition?.word).toBe('sound');
  });

  it.each(['stripped', 'replaced', 'rebedded'])(
    '%s leaves it bare, without a condition, until it is sealed',
    (verb) => {
      const bare = stretch(`  inspected 2026-04-18 { vent lifting }\n  ${verb} 2026-05-01 vent`, 'vent');
      expect(bare).toMatchObject({ bare: { first: '2026-05-01' }, layers: [] });
      expect(bare.condition).toBeUndefined();
    },
  );

  it('tightening renews a gasket and a fastener that was backed out, not a bead', () => {
    const mended = (found: string, item: string) =>
      stretch(`  inspected 2026-04-18 { ${item} ${found} }\n  tightened 2026-05-01 ${item}`, item).condition?.word;
    expect(mended('flattened', 'air-con')).toBe('renewed');
    expect(mended('backed-out', 'drip-rail')).toBe('renewed');
    expect(mended('cracked', 'vent')).toBe('cracked');
  });

  it('a temporary cover goes with the repair', () => {
    const covered = '  covered 2026-06-11 vent until 2026-06-25';
    expect(stretch(covered, 'vent').temporary).toMatchObject({ until: { last: '2026-06-25' } });
    expect(stretch(`${covered}\n  sealed 2026-06-20 vent with Lap`, 'vent').temporary).toBeUndefined();
  });
});

describe('wet', () => {
  const wet = '  inspected 2026-04-18 { vent wet moisture 24 % }\n';
  it('stays through a sealing, and through a drying that is still above 19 %', () => {
    expect(stretch(`${wet}  sealed 2026-05-01 vent with Lap`, 'vent').wet).toBeDefined();
    expect(stretch(`${wet}  dried 2026-05-01 vent moisture 20 %`, 'vent').wet).toBeDefined();
  });
  it('ends by drying or by a later dry finding', () => {
    expect(stretch(`${wet}  dried 2026-05-01 vent moisture 14 %`, 'vent').wet).toBeUndefined();
    expect(stretch(`${wet}  inspected 2026-05-01 { vent sound }`, 'vent').wet).toBeUndefined();
    expect(stretch(`${wet}  inspected 2026-05-01 { vent sound moisture 22 % }`, 'vent').wet).toBeDefined();
  });
  it.each([
    [['15 %'], undefined, undefined],
    [['16 %'], undefined, 're-read'],
    [['12 %', '16 %'], 4, 'find-source'],
    [['20 %'], undefined, 'find-source'],
    [['24 %', '25 %'], 1, 'open-up'],
    [['25 %', '14 %'], -11, undefined],
  ])('readings %j: trend %s, call %s', (readings, trend, call) => {
    const lines = readings
      .map((reading, i) => `  inspected 2026-0${i + 1}-10 { vent sound moisture ${reading} }`)
      .join('\n');
    expect(moistureTrend(stretch(lines, 'vent'))).toBe(trend);
    expect(moistureCall(stretch(lines, 'vent'))).toBe(call);
  });
});

describe('a blow', () => {
  it('waits for a look at each item that it struck', () => {
    const waiting = (lines: string) => stateOf(lines).strikes.map((strike) => strike.waiting);
    const blow = '  inspected 2026-05-01\n  struck 2026-05-02 front, vent by branch\n';
    expect(waiting(blow)).toEqual([['front', 'vent']]);
    expect(waiting(`${blow}  inspected 2026-05-03 { front sound }`)).toEqual([['vent']]);
    expect(waiting(`${blow}  inspected 2026-05-03`)).toEqual([[]]);
    expect(waiting('  struck 2026-05-02')[0]).toHaveLength(8);
  });
});

describe('dates', () => {
  it('leave out records after the as-of date, and rough ones until their last day', () => {
    const view = viewOf('  sealed 2024-06 vent with Lap\n  sealed 2025-06-01 vent with Lap');
    const coats = (date: string) => stateAt(view, 'vent', date)?.stretches[0]?.layers.length;
    expect(['2024-06-29', '2024-06-30', '2025-05-31', '2025-06-01'].map(coats)).toEqual([1, 2, 2, 3]);
  });

  it('hold a removed item as gone', () => {
    expect(seam('  removed 2024-05-01 dome', 'dome').removed?.first).toBe('2024-05-01');
  });

  it('what cannot be read is said of each item', () => {
    expect(seam('', 'vent').unread).toBe(false);
  });
});
