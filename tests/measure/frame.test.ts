import { describe, expect, it } from 'vitest';
import { rectangleFrame, roundFrame, squareHalf } from '../../language/measure/frame.ts';
import { inches, itemOf, nm, policyOf, tapeOf } from './items.ts';

// Worked figures of the trade notes (arithmetic, checked): 16 x 16, width 4, bite 1, end lap 2.

const tape = tapeOf();
const frame = (line: string, policy: string, of = tape) => {
  const { item, rig } = itemOf(line, { policy });
  if (item.size?.shape !== 'rectangle') throw new Error('no rectangle');
  return rectangleFrame(item.size, item.hole, rig.policy, of, 'us', item.origin);
};
const total = (line: string, policy: string) => {
  const got = frame(line, policy);
  if (!got.ok) throw new Error(got.message);
  return 2 * inches(got.value.front) + 2 * inches(got.value.flank);
};

describe('a frame round a rectangle', () => {
  it('takes 88 in with full laps, 80 in with short ones', () => {
    expect(total('opening vent 16 in by 16 in', 'frame full-lap')).toBe(88);
    expect(total('opening vent 16 in by 16 in', 'frame short-lap')).toBe(80);
  });

  it('takes 80 and 72 in when the cut-out of 14 x 14 is measured by mistake', () => {
    expect(total('opening vent 14 in by 14 in', 'frame full-lap')).toBe(80);
    expect(total('opening vent 14 in by 14 in', 'frame short-lap')).toBe(72);
  });

  it('has its front and rear across the roof and its flanks along', () => {
    const got = frame('opening hatch 26 in by 10 in', 'frame full-lap');
    expect(got.ok && [inches(got.value.front), inches(got.value.flank)]).toEqual([16, 32]);
    const short = frame('opening hatch 26 in by 10 in', 'frame short-lap');
    expect(short.ok && [inches(short.value.front), inches(short.value.flank)]).toEqual([16, 28]);
  });

  it('laps no further under front and rear than the tape is wide', () => {
    const narrow = frame(
      'opening vent 16 in by 16 in',
      'frame short-lap',
      tapeOf('tape T { width 2 in end-lap 3 in }'),
    );
    // 16 - 2 + 2 x 2, not 2 x 3: the outer corners are 2 x 1 in beyond the flange.
    expect(narrow.ok && inches(narrow.value.flank)).toBe(18);
  });

  it('is refused where its bite would lie over the opening', () => {
    expect(frame('opening vent cutout 14 in by 14 in flange 1 in', '')).toMatchObject({ ok: true });
    expect(frame('opening vent cutout 14 in by 14 in flange 7/8 in', '')).toMatchObject({
      message:
        'a bite of 1 in is wider than its flange of 7/8 in, so that tape would lie over the opening: boot or sealant only',
    });
    expect(frame('opening vent cutout 14 in by 14 in flange 7/8 in', 'bite 3/4 in')).toMatchObject({ ok: true });
  });

  it('is refused where it closes over the part, or does not reach past the flange', () => {
    expect(frame('opening gland 2 in by 5 in', '')).toMatchObject({
      message: 'the flange is too small for a frame: boot or sealant only',
    });
    expect(frame('opening vent 16 in by 16 in', 'bite 4 in')).toMatchObject({ ok: false });
    expect(frame('opening vent 16 in by 16 in', '', tapeOf('tape T { end-lap 2 in }'))).toMatchObject({ ok: false });
  });
});

describe('a square frame round a round flange', () => {
  const measures = { diameter: nm(7), riser: nm(2), width: nm(4), margin: nm(1) };

  it('of 7 in with a riser of 2 in has half its side at 2 1/4 in (limit 2.298) and takes 50 in', () => {
    expect(squareHalf(measures, 'us')).toEqual({ ok: true, value: nm(2.25) });
    const { item } = itemOf('opening stack round 7 in cutout round 2 in');
    const got = roundFrame(item.size as never, item.hole, policyOf(''), tape, 'us');
    expect(got.ok && 4 * inches(got.value)).toBe(50);
  });

  it('needs 1/2 in to the riser and a margin past the flange', () => {
    expect(squareHalf({ ...measures, riser: nm(3.5) }, 'us')).toMatchObject({ ok: true });
    expect(squareHalf({ ...measures, riser: nm(3.75) }, 'us')).toMatchObject({
      message: 'no square frame covers this round flange: boot or sealant only',
    });
    expect(squareHalf({ ...measures, width: nm(2.25) }, 'us')).toMatchObject({ ok: true });
    expect(squareHalf({ ...measures, width: nm(2) }, 'us')).toMatchObject({ ok: false });
    expect(squareHalf({ ...measures, diameter: nm(0.5) }, 'us')).toMatchObject({ ok: false });
  });

  it('goes by 5 mm in metric', () => {
    expect(squareHalf(measures, 'metric')).toEqual({ ok: true, value: 55_000_000 });
  });

  it('is refused where nobody wrote how wide the pipe is', () => {
    const { item } = itemOf('opening stack round 7 in');
    expect(roundFrame(item.size as never, item.hole, policyOf(''), tape, 'us')).toMatchObject({
      message: expect.stringContaining('boot or sealant only'),
    });
  });
});
