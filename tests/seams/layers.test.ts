import { describe, expect, it } from 'vitest';
import { coatCount, groundOf, surfacesOf } from '../../language/seams/index.ts';
import { FT, seam, stateOf, stretch, viewOf } from './view.ts';

const materials = viewOf('').material;
const roof = viewOf('').rig.roof;
const counts = (lines: string, item: string) =>
  seam(lines, item).stretches.map((each) => coatCount(each, materials).count);

describe('coats', () => {
  it("start with the factory's bead, whose material and day are known where they are written", () => {
    expect(stretch('', 'vent').layers).toMatchObject([
      { kind: 'sealant', by: 'factory', material: 'Lap', known: 'named', family: 'solvent-lap', last: '2020-03-10' },
    ]);
    expect(stretch('', 'vent', undefined, '').layers).toEqual([{ kind: 'sealant', by: 'factory', known: 'unnamed' }]);
    expect(stretch('', 'air-con').layers).toEqual([]);
    expect(stretch('', 'membrane').layers).toEqual([]);
  });

  it('are counted for each stretch: a touch-up of 3 ft is no coat on 28 ft', () => {
    const lines = '  sealed 2024-05-01 curbside from 6 ft to 9 ft with Lap';
    const { stretches } = seam(lines, 'curbside');
    expect(stretches.map(({ from, to }) => [from / FT, (to as number) / FT])).toEqual([
      [0, 6],
      [6, 9],
      [9, 28],
    ]);
    expect(counts(lines, 'curbside')).toEqual([1, 2, 1]);
    expect(counts(lines, 'roadside')).toEqual([1]);
  });

  it('reach the limit with the fourth; begin again after a strip, which leaves the seam bare', () => {
    const three = ['2022-05-01', '2023-05-01', '2024-05-01'].map((day) => `  sealed ${day} all with Lap`).join('\n');
    expect(coatCount(stretch(three, 'vent'), materials)).toMatchObject({ count: 4, atLimit: true, overLimit: false });
    const stripped = `${three}\n  stripped 2025-05-01 vent`;
    expect(stretch(stripped, 'vent')).toMatchObject({ layers: [], bare: { first: '2025-05-01' } });
    expect(coatCount(stretch(stripped, 'vent'), materials)).toMatchObject({ count: 0, atLimit: false });
    const again = stretch(`${stripped}\n  sealed 2025-05-02 vent with Lap`, 'vent');
    expect(again.bare).toBeUndefined();
    expect(coatCount(again, materials).count).toBe(1);
  });

  it('that are unknown count as at the limit, also under later ones', () => {
    const found = '  found 2021-04-10 all with unknown';
    expect(coatCount(stretch(found, 'vent'), materials)).toMatchObject({ count: 1, unknown: true, atLimit: true });
    const sealed = stretch(`${found}\n  sealed 2024-06-01 all with Lap`, 'vent');
    expect(coatCount(sealed, materials)).toMatchObject({ count: 2, unknown: true, atLimit: true });
  });

  it('do not lie on a gasket', () => {
    expect(stretch('  sealed 2024-05-01 air-con with Lap', 'air-con').layers).toEqual([]);
  });
});

describe('what the next thing would lie on', () => {
  const ground = (lines: string, item: string) => {
    const state = seam(lines, item);
    return groundOf(state.stretches[0]!, state.item, roof);
  };
  it.each([
    ['', 'vent', 'sealant', ['solvent-lap']],
    ['  stripped 2024-05-01 vent', 'vent', 'surface', ['epdm', 'abs']],
    ['  stripped 2024-05-01 drip-rail', 'drip-rail', 'surface', []],
    ['  taped 2024-05-01 front with Strip', 'front', 'tape', ['tape']],
    ['  coated 2024-05-01 with Cream', 'vent', 'coating', ['acrylic-coating']],
    ['  coated 2024-05-01 with Cream\n  stripped 2024-06-01 vent', 'vent', 'surface', ['acrylic-coating', 'abs']],
    ['  found 2024-05-01 all with unknown', 'vent', 'sealant', ['unknown-sealant']],
    ['  sealed 2024-05-01 vent with Mistyped', 'vent', 'sealant', []],
    ['  patched 2024-05-01 membrane with Strip', 'membrane', 'tape', ['tape']],
  ])('%s: %s is %s %j', (lines, item, kind, surfaces) => {
    expect(ground(lines, item)).toMatchObject({ kind, surfaces });
  });

  it('tells a primer that lies on it', () => {
    const primed = ground('  stripped 2024-05-01 vent\n  primed 2024-05-01 vent with Under', 'vent');
    expect(primed).toMatchObject({ kind: 'surface', primer: { material: 'Under' } });
    const under = stretch('  taped 2024-05-01 vent with Under, Strip', 'vent').layers.map((layer) => layer.kind);
    expect(under).toEqual(['sealant', 'primer', 'tape']);
  });

  it('a coating goes over the roof, not the walls or the gaskets', () => {
    const { seams } = stateOf('  coated 2024-05-01 with Cream');
    const coated = [...seams.values()].filter((each) => each.stretches[0]!.coating).map((each) => each.item.name);
    expect(coated).toEqual(['curbside', 'roadside', 'front', 'vent', 'dome', 'membrane']);
  });

  it('both sides of a seam are known', () => {
    const items = viewOf('').rig.items;
    expect(surfacesOf(items.find((item) => item.name === 'dome')!, roof)).toEqual(['epdm', 'polycarbonate']);
  });
});
