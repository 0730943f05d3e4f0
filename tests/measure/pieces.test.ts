import { describe, expect, it } from 'vitest';
import { compareKeys } from '../../language/measure/layorder.ts';
import type { Stretch } from '../../language/measure/length.ts';
import { tapePieces } from '../../language/measure/pieces.ts';
import { inches, itemOf, nm, rigOf, tapeOf } from './items.ts';

const tape = tapeOf();

/** `what inches` of the pieces of an item, or why it gets none. */
function pieces(line: string, { stretch, policy = '' }: { stretch?: Stretch; policy?: string } = {}) {
  const { item, rig } = itemOf(line, { policy });
  const got = tapePieces(item, rig, rig.policy, tape, stretch, 'us');
  if (!got.ok) return got.message;
  return [...got.value.pieces]
    .sort((a, b) => compareKeys(a.lay, b.lay))
    .map((piece) => `${piece.copy > 1 ? `${piece.copy}: ` : ''}${piece.what} ${inches(piece)}`);
}

describe('pieces of a straight seam', () => {
  it.each([
    ['edge curbside wide 2 in', ['strip 340']],
    ['edge curbside wide 4 in', ['outer strip 340', 'inner strip 340']],
    ['cap front', ['rear strip 100', 'forward strip 100']],
    ['cap front wide 8 in', ['strip 1 of 3 100', 'strip 2 of 3 100', 'strip 3 of 3 100']],
    ['slide lounge 8 ft 6 in by 2 ft 6 in on roadside', ['rear end 34', 'front end 34', 'outer side 106']],
    ['joint drip-rail 10 ft count 2', ['strip 124', '2: strip 124']],
  ])('%s', (line, expected) => {
    expect(pieces(line)).toEqual(expected);
  });

  it('only the stretch that is meant, with its own laps', () => {
    expect(pieces('edge curbside', { stretch: { from: nm(72), to: nm(108) } })).toEqual(['strip 40']);
    expect(pieces('edge curbside', { stretch: { from: nm(300) } })).toEqual(['strip 40']);
    expect(pieces('edge curbside', { stretch: { from: nm(400) } })).toBe(
      'this stretch lies beyond the end of the seam',
    );
  });

  it('a stretch of a slide runs from the foot of its front end', () => {
    const line = 'slide lounge 8 ft 6 in by 2 ft 6 in on roadside';
    expect(pieces(line, { stretch: { from: nm(20), to: nm(50) } })).toEqual(['front end 14', 'outer side 24']);
  });
});

describe('pieces of a flange', () => {
  it('are a frame of four for each copy, the outboard flank before the inboard one', () => {
    expect(pieces('opening hatch 26 in by 10 in at 9 ft, 7 ft and 4 ft, 1 ft')).toEqual([
      'rear side 16',
      'roadside flank 32',
      'curbside flank 32',
      'front side 16',
      '2: rear side 16',
      '2: curbside flank 32',
      '2: roadside flank 32',
      '2: front side 16',
    ]);
  });

  it('are four alike round a pipe', () => {
    expect(pieces('opening stack round 7 in cutout round 2 in')).toEqual([
      'rear side 12.5',
      'curbside flank 12.5',
      'roadside flank 12.5',
      'front side 12.5',
    ]);
  });

  it('a stretch of one is a strip', () => {
    expect(pieces('opening hatch 26 in by 10 in', { stretch: { to: nm(6) } })).toEqual(['strip 10']);
  });
});

describe('nothing is taped', () => {
  it.each([
    ['gasket air-con 14 in by 14 in', 'gasket'],
    ['drain spout', 'kept open'],
    ['channel awning 18 ft on curbside', 'kept open'],
    ['insert trim 28 ft', 'holds water'],
    ['field membrane', 'patched'],
    ['opening stack round 6 in', 'boot or sealant only'],
    ['opening vent', 'no size'],
  ])('%s', (line, reason) => {
    expect(pieces(line)).toContain(reason);
  });

  it('on a lid that is opened for service', () => {
    const rig = rigOf('  opening vent 16 in by 16 in\n  serviced vent');
    expect(tapePieces(rig.items[0]!, rig, rig.policy, tape, undefined, 'us')).toMatchObject({
      message: 'its lid is opened for service: it is sealed',
    });
  });
});

describe('lay order', () => {
  it('rear, slides, roadside, curbside, joints, frames from the rear forward, front', () => {
    const rig = rigOf(`
      cap front
      edge curbside, roadside
      opening fore 16 in by 16 in at 5 ft, 4 ft
      opening aft 16 in by 16 in at 20 ft, 4 ft
      joint ridge 20 ft
      slide bunk 6 ft by 2 ft on curbside at 4 ft
      slide lounge 8 ft by 2 ft on roadside at 18 ft
      cap rear
    `);
    const all = rig.items.flatMap((item) => {
      const got = tapePieces(item, rig, rig.policy, tape, undefined, 'us');
      return got.ok ? got.value.pieces : [];
    });
    const order = [...all].sort((a, b) => compareKeys(a.lay, b.lay)).map(({ item }) => item);
    expect(order.filter((item, i) => item !== order[i - 1])).toEqual([
      'rear',
      'lounge',
      'bunk',
      'roadside',
      'curbside',
      'ridge',
      'aft',
      'fore',
      'front',
    ]);
  });
});
