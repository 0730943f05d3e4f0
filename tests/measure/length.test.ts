import { describe, expect, it } from 'vitest';
import { isPart, seamLength, straightSides, stretchLength, stretchOf } from '../../language/measure/length.ts';
import { recompute } from '../estimate/recompute.ts';
import { inches, itemOf } from './items.ts';

const roof = { along: '28 ft', across: '8 ft 2 in' };

/** The length of one in inches, after the formula has been held against it. */
function length(line: string): number | string {
  const { item, rig } = itemOf(line, roof);
  const seam = seamLength(item, rig.roof, 'us');
  if (!seam.ok) return seam.message;
  const { each, all } = seam.value;
  expect(recompute(each.figure)).toBeCloseTo(each.nm / 25_400_000, 9);
  expect(recompute(all.figure)).toBeCloseTo((item.count * each.nm) / 25_400_000, 9);
  return inches(each);
}

describe('the length of a seam', () => {
  it.each([
    ['edge curbside', 336],
    ['cap rear', 98],
    ['slide lounge 8 ft 6 in by 2 ft 6 in on roadside', 102 + 2 * 30],
    ['slide bed 6 ft by 2 ft on rear', 24 + 2 * 72],
    ['opening vent 16 in by 16 in', 64],
    ['opening vent cutout 14 in by 14 in flange 1 in', 64],
    ['opening stack round 6 in', 6 * Math.PI],
    ['opening stack cutout round 2 in flange 2 1/2 in', 7 * Math.PI],
    ['mount ladder-feet 3 in by 4 in count 2', 14],
    ['joint drip-rail 26 ft', 312],
    ['channel awning 18 ft on curbside', 216],
    ['insert curb-insert 28 ft', 336],
    ['edge curbside length 20 ft', 240],
    ['opening dome 16 in by 16 in length 5 ft', 60],
  ])('%s', (line, expected) => {
    expect(length(line)).toBeCloseTo(expected, 9);
  });

  it.each([
    ['gasket air-con 14 in by 14 in', 'it sits on a gasket: there is no seam'],
    ['drain spout-1', 'a drain has no seam'],
    ['field membrane', 'the membrane itself is no seam'],
    ['opening vent', 'it has no size'],
    ['slide bed round 6 ft on rear', 'a slide is measured by two figures: along the roof and out from it'],
  ])('%s has none', (line, reason) => {
    expect(length(line)).toBe(reason);
  });

  it('is not known without a roof', () => {
    expect(seamLength(itemOf('edge curbside', roof).item, undefined, 'us')).toMatchObject({
      ok: false,
      message: 'the roof has no size',
    });
  });

  it('says how it came about, in the units of the reader', () => {
    const { item, rig } = itemOf('opening vent 16 in by 16 in count 2', roof);
    const seam = seamLength(item, rig.roof, 'metric');
    expect(seam.ok && seam.value.all.figure).toMatchObject({
      unit: 'mm',
      text: '3.25 m',
      formula: 'count * (2 * (along + across))',
      inputs: [{ name: 'count', value: 2 }, { name: 'along', value: 406.4, text: '16 in' }, { name: 'across' }],
    });
  });
});

describe('a stretch of a seam', () => {
  it('is cut off at the ends of the seam', () => {
    expect(stretchLength({ from: 10, to: 30 }, 100)).toBe(20);
    expect(stretchLength({ to: 30 }, 100)).toBe(30);
    expect(stretchLength({ from: 90, to: 300 }, 100)).toBe(10);
    expect(stretchLength({ from: 120, to: 300 }, 100)).toBe(0);
  });

  it('is the whole seam where it leaves nothing out', () => {
    expect([isPart(undefined, 100), isPart({}, 100), isPart({ from: 0, to: 100 }, 100)]).toEqual([false, false, false]);
    expect([isPart({ from: 1 }, 100), isPart({ to: 99 }, 100)]).toEqual([true, true]);
  });

  it('counts for all copies', () => {
    const { item, rig } = itemOf('joint seam 10 ft count 3', roof);
    const seam = seamLength(item, rig.roof, 'us');
    if (!seam.ok) throw new Error(seam.message);
    const foot = 304_800_000;
    expect(stretchOf(item, { from: 2 * foot, to: 6 * foot }, seam.value, 'us')?.figure.text).toBe('12 ft');
    expect(stretchOf(item, { from: 12 * foot }, seam.value, 'us')).toBeUndefined();
    expect(stretchOf(item, {}, seam.value, 'us')).toBe(seam.value.all);
  });
});

describe('the straight sides', () => {
  it('of a slide begin at its front end', () => {
    const { item, rig } = itemOf('slide lounge 8 ft 6 in by 2 ft 6 in on roadside', roof);
    expect(straightSides(item, rig.roof)?.map(({ what, length: { text } }) => `${what} ${text}`)).toEqual([
      'front end 2 ft 6 in',
      'outer side 8 ft 6 in',
      'rear end 2 ft 6 in',
    ]);
  });

  it('a flange has none, even with a written length', () => {
    const { item, rig } = itemOf('opening dome 16 in by 16 in length 5 ft', roof);
    expect(straightSides(item, rig.roof)).toBeUndefined();
  });
});
