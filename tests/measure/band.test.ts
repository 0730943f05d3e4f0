import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bandKind, bandOf, stripsFor, stripsOf } from '../../language/measure/band.ts';
import type { Stated } from '../../language/resolve/types.ts';
import { type Length, lengthOf } from '../../language/values/length.ts';
import { recompute } from '../estimate/recompute.ts';
import { itemOf, nm, tapeOf } from './items.ts';

const origin = { file: 'a.rig', at: [0, 1] as const, kind: 'record' as const };
const stated = (nm: number): Stated<Length> => ({ value: lengthOf(nm), origin });

const strips = (line: string, tape = tapeOf()) => {
  const { item, rig } = itemOf(line);
  return stripsOf(item, rig.policy, tape, 'us');
};
const count = (line: string) => {
  const got = strips(line);
  return got.ok ? got.value.count : got.message;
};

describe('strips of 4 in tape, side lap 1 in, margin 1 in', () => {
  it.each([
    ['edge curbside wide 2 in', 1],
    ['edge curbside wide 2 1/4 in', 2],
    ['cap front 5 in wide', 2],
    ['cap front wide 5 1/8 in', 3],
    ['joint seam 9 ft wide 1 1/2 in', 1],
  ])('%s takes %s', (line, expected) => {
    expect(count(line)).toBe(expected);
  });

  it('the default bands are those of the kind', () => {
    const bands = [
      'edge curbside',
      'cap front',
      'cap rear',
      'slide s 9 ft by 3 ft on curbside',
      'opening v 9 in by 9 in',
    ];
    expect(
      bands.map((line) => {
        const { item, rig } = itemOf(line);
        return [bandKind(item), bandOf(item, rig.policy)?.value.text];
      }),
    ).toEqual([
      ['edge', '2 in'],
      ['front-cap', '5 in'],
      ['rear-cap', '2 in'],
      ['slide', '1 1/2 in'],
      ['opening', '2 1/4 in'],
    ]);
  });

  it('says when an edge has less than 1/4 in to spare, and of an edge only', () => {
    const slack = (line: string) => {
      const got = strips(line);
      if (!got.ok) throw new Error(got.message);
      return [got.value.slack.figure.text, got.value.noSlack];
    };
    expect(slack('edge curbside wide 2 in')).toEqual(['0 in', true]);
    expect(slack('edge curbside wide 1 13/16 in')).toEqual(['3/16 in', true]);
    expect(slack('edge curbside wide 1 3/4 in')).toEqual(['1/4 in', false]);
    expect(slack('cap rear wide 2 in')).toEqual(['0 in', false]);
  });

  it('cannot be told without a width, or with a side lap as wide as the tape', () => {
    expect(strips('edge curbside', tapeOf('tape T { end-lap 2 in }'))).toMatchObject({
      message: 'the width of T is not known',
    });
    expect(strips('edge curbside', tapeOf('tape T { width 1 in }'))).toMatchObject({
      message: 'a side lap of 1 in leaves nothing of a width of 1 in',
    });
    const drain = itemOf('drain spout');
    expect(stripsOf(drain.item, drain.rig.policy, tapeOf(), 'us')).toMatchObject({ ok: false });
  });
});

describe('the number of strips', () => {
  it('is the smallest that covers band and margins, in any units', () => {
    const sixteenths = (least: number, most: number) => fc.integer({ min: least, max: most }).map((n) => nm(n / 16));
    fc.assert(
      fc.property(
        sixteenths(1, 400),
        sixteenths(0, 48),
        sixteenths(17, 200),
        sixteenths(0, 16),
        fc.constantFrom('us' as const, 'metric' as const),
        (B, m, t, v, system) => {
          const got = stripsFor(stated(B), stated(m), { width: stated(t), sideLap: stated(v) }, 'edge', system);
          if (!got.ok) throw new Error(got.message);
          const n = got.value.count;
          const covers = (k: number) => k * t - (k - 1) * v >= B + 2 * m;
          expect(covers(n)).toBe(true);
          expect(n === 1 || !covers(n - 1)).toBe(true);
          expect(recompute(got.value.figure)).toBe(n);
          expect(recompute(got.value.slack.figure)).toBeCloseTo(got.value.slack.figure.value, 6);
        },
      ),
      { numRuns: 300 },
    );
  });
});
