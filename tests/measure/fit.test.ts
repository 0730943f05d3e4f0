import { describe, expect, it } from 'vitest';
import {
  beyondRoof,
  centresOffRoof,
  closePairs,
  gapBetween,
  leastGap,
  placedItems,
} from '../../language/measure/fit.ts';
import { nm, policyOf, rigOf } from './items.ts';

const placed = (lines: string) => placedItems(rigOf(lines).items);
const gap = (lines: string) => {
  const [a, b] = placed(lines);
  return gapBetween(a!, b!) / nm(1);
};

describe('items on the roof', () => {
  it('reach over its edge by as much as they stick out', () => {
    const rig = rigOf(`
      opening within-it 16 in by 16 in at 8 in, 8 in
      opening front 16 in by 16 in at 7 in, 4 ft
      opening road 16 in by 24 in at 9 ft, 7 ft 6 in
      gasket aft round 14 in at 28 ft, 4 ft
    `);
    const beyond = placedItems(rig.items).map((each) => [each.item.name, beyondRoof(each, rig.roof!) / nm(1)]);
    expect(beyond).toEqual([
      ['within-it', 0],
      ['front', 1],
      ['road', 6],
      ['aft', 7],
    ]);
  });

  it('are placed only with a size and both measures; each place is a copy', () => {
    const all = placed(`
      opening vent 16 in by 16 in at 9 ft, 2 ft and 9 ft, 6 ft
      opening other 16 in by 16 in at 9 ft
      opening third at 9 ft, 2 ft
      drain spout at 9 ft, 0 ft
    `);
    expect(all.map(({ item, copy }) => `${item.name} ${copy}`)).toEqual(['vent 1', 'vent 2']);
  });

  it('a centre may lie off the roof whatever its size', () => {
    const rig = rigOf('  drain spout at 28 ft, 0 ft and 28 ft 1 in, 0 ft and 3 ft, 8 ft 1 in');
    expect(centresOffRoof(rig.items[0]!, rig.roof!)).toEqual([2, 3]);
  });
});

describe('the gap between two flanges', () => {
  it.each([
    ['side by side', 'opening a 10 in by 10 in at 5 ft, 4 ft\n opening b 10 in by 10 in at 7 ft, 4 ft', 14],
    ['corner to corner', 'opening a 10 in by 10 in at 5 ft, 4 ft\n opening b 10 in by 10 in at 73 in, 62 in', 5],
    ['touching', 'opening a 10 in by 10 in at 5 ft, 4 ft\n opening b 10 in by 10 in at 70 in, 4 ft', 0],
    ['overlapping', 'opening a 10 in by 10 in at 5 ft, 4 ft\n opening b 10 in by 10 in at 68 in, 4 ft', -2],
    ['two pipes', 'opening a round 6 in at 5 ft, 4 ft\n opening b round 4 in at 63 in, 52 in', 0],
    ['a pipe at a corner', 'opening a 10 in by 10 in at 5 ft, 4 ft\n mount b round 4 in at 68 in, 57 in', 3],
    ['a pipe on a hatch', 'mount b round 4 in at 5 ft, 4 ft\n opening a 10 in by 10 in at 5 ft, 4 ft', -7],
  ])('%s', (_, lines, expected) => {
    expect(gap(lines)).toBeCloseTo(expected, 9);
  });

  it('is wanted for two margins and the reach of a frame', () => {
    const policy = policyOf('margin 1 1/2 in bite 1 in');
    expect(leastGap(policy) / nm(1)).toBe(3);
    expect(leastGap(policy, nm(4)) / nm(1)).toBe(6);
  });

  it('below the least makes a pair, the nearest first', () => {
    const all = placed(`
      opening a 10 in by 10 in at 5 ft, 4 ft
      opening b 10 in by 10 in at 72 in, 4 ft
      opening c 10 in by 10 in at 83 in, 4 ft
      opening d 10 in by 10 in at 20 ft, 4 ft
    `);
    const pairs = closePairs(all, nm(6)).map(({ a, b, gap }) => `${a.item.name}${b.item.name} ${gap / nm(1)}`);
    expect(pairs).toEqual(['bc 1', 'ab 2']);
  });
});
