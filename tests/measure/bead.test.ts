import { describe, expect, it } from 'vitest';
import { areaSum, bandArea, roofArea, tapeArea } from '../../language/measure/areas.ts';
import { type BeadTakeoff, beadOf } from '../../language/measure/bead.ts';
import { type Stretch, seamLength } from '../../language/measure/length.ts';
import { recompute } from '../estimate/recompute.ts';
import { inches, itemOf, nm, rigOf, sealantOf, tapeOf } from './items.ts';

const CUBIC_INCH = 16.387064;

interface Given {
  readonly policy?: string;
  readonly sealant?: string;
  readonly stretch?: Stretch;
}

function bead(line: string, { policy = 'smother none', sealant, stretch }: Given = {}): BeadTakeoff {
  const { item, rig } = itemOf(line, { policy });
  const got = beadOf(item, rig.roof, rig.policy, sealantOf(sealant), stretch, 'us');
  if (!got.ok) throw new Error(got.message);
  for (const figure of [got.value.length.figure, got.value.volume.figure]) {
    expect(recompute(figure)).toBeCloseTo(figure.value, 9);
  }
  return got.value;
}
const cubicInches = ({ volume }: BeadTakeoff) => volume.mL / CUBIC_INCH;

describe('the length of a bead of 1 in', () => {
  it.each([
    ['opening vent 16 in by 16 in', 68, 64],
    ['opening stack round 6 in count 2', 14 * Math.PI, 12 * Math.PI],
    ['mount foot 3 in by 4 in', 18, 14],
    ['edge curbside', 336, 336],
    ['slide s 8 ft by 2 ft on curbside', 144, 144],
    ['opening dome 16 in by 16 in length 5 ft', 60, 60],
  ])('%s: %s in along its middle, %s in along the flange', (line, centre, flange) => {
    expect(inches(bead(line).length)).toBeCloseTo(centre, 9);
    expect(inches(bead(line, { policy: 'smother none bead-line flange' }).length)).toBeCloseTo(flange, 9);
  });

  it('is 6 % more on a 16 in vent and 29 % more on a ladder foot (trade notes)', () => {
    expect(68 / 64 - 1).toBeCloseTo(0.06, 2);
    expect(inches(bead('mount foot 3 in by 4 in').length) / 14 - 1).toBeCloseTo(0.29, 2);
  });

  it('is that of the stretch where one is meant', () => {
    const part = bead('edge curbside', { stretch: { from: nm(12), to: nm(36) } });
    expect([inches(part.length), cubicInches(part)]).toEqual([24, 6]);
  });
});

describe('the volume of a bead', () => {
  it.each([
    ['', 84],
    ['rectangle', 84],
    ['dome', 56],
    ['fillet', 168],
    ['half-round', (336 * Math.PI) / 8],
  ])('1 in by 1/4 in over 28 ft, section %s: %s cu in', (section, expected) => {
    const sealant = `sealant S { bead 1 in by 1/4 in ${section} }`;
    expect(cubicInches(bead('edge curbside', { sealant }))).toBeCloseTo(expected, 9);
  });

  it("goes by the item's own bead before the sealant's", () => {
    expect(cubicInches(bead('edge curbside bead 1/2 in by 1/4 in'))).toBeCloseTo(42, 9);
  });

  it('says which section it is', () => {
    expect(bead('edge curbside').section).toMatchObject({ text: '0.25 sq-in', formula: 'bead_width * bead_height' });
  });
});

describe('small mounts', () => {
  it('are smothered up to the size of the policy: (W + 2w)(L + 2w) times the depth', () => {
    const foot = bead('mount foot 3 in by 4 in count 2', { policy: 'smother 4 in' });
    expect(foot.smothered).toBe(true);
    expect(cubicInches(foot)).toBeCloseTo(2 * 5 * 6 * 0.25, 9);
    expect(inches(foot.length)).toBe(28);
    const round = bead('mount foot round 3 in', { policy: 'smother 3 in' });
    expect(cubicInches(round)).toBeCloseTo((Math.PI / 4) * 25 * 0.25, 9);
  });

  it('are not above it, and openings never', () => {
    expect(bead('mount foot 3 in by 4 in', { policy: 'smother 3 in' }).smothered).toBe(false);
    expect(bead('opening gland 3 in by 3 in', { policy: 'smother 9 in' }).smothered).toBe(false);
  });
});

describe('nothing is sealed', () => {
  it.each([
    ['gasket air-con 14 in by 14 in', 'gasket'],
    ['drain spout', 'kept open'],
    ['channel awning 18 ft on curbside', 'kept open'],
    ['insert trim 28 ft', 'holds water'],
    ['field membrane', 'patched or coated'],
  ])('%s', (line, reason) => {
    const { item, rig } = itemOf(line);
    expect(beadOf(item, rig.roof, rig.policy, sealantOf(), undefined, 'us')).toMatchObject({
      message: expect.stringContaining(reason),
    });
  });

  it('without a bead, or beyond the end', () => {
    const { item, rig } = itemOf('edge curbside');
    const bare = sealantOf('sealant S { family urethane }');
    const got = beadOf(item, rig.roof, rig.policy, { ...bare, bead: undefined } as never, undefined, 'us');
    expect(got).toMatchObject({ message: 'how thick a bead of S is, is not written' });
    expect(beadOf(item, rig.roof, rig.policy, sealantOf(), { from: nm(999) }, 'us')).toMatchObject({ ok: false });
  });
});

describe('areas', () => {
  const rig = rigOf('  edge curbside', { along: '26 ft', across: '8 ft' });
  const seam = seamLength(rig.items[0]!, rig.roof, 'us');
  if (!seam.ok) throw new Error(seam.message);
  const { all } = seam.value;

  it('the whole roof of 26 ft by 8 ft is 208 sq ft', () => {
    expect(roofArea(rig.roof!, 'us').figure).toMatchObject({ value: expect.closeTo(208, 9), text: '208.0 sq-ft' });
    expect(roofArea(rig.roof!, 'metric').figure.text).toBe('19.32 sq-m');
  });

  it('26 ft of 4 in tape lies on 8.667 sq ft, a band of 2 in on half of that', () => {
    const tape = tapeArea(all, tapeOf(), 'us')!;
    const band = bandArea(all, rig.items[0]!, rig.policy, 'us')!;
    expect(tape.figure.value).toBeCloseTo(26 / 3, 9);
    expect(band.figure.value).toBeCloseTo(26 / 6, 9);
    expect([recompute(tape.figure), recompute(band.figure)]).toEqual([
      expect.closeTo(26 / 3, 9),
      expect.closeTo(26 / 6, 9),
    ]);
  });

  it('together are worked out in one formula, each default band named once', () => {
    const all = rigOf('  edge curbside\n  cap front\n  cap rear wide 3 in\n  edge roadside wide 1 in');
    const areas = all.items.map((item) => {
      const length = seamLength(item, all.roof, 'us');
      if (!length.ok) throw new Error(length.message);
      return bandArea(length.value.all, item, all.policy, 'us')!;
    });
    const { figure } = areaSum(areas, 'us');
    // 28 ft of 2 in and of 1 in, 8 ft of 5 in and of 3 in.
    expect(figure.value).toBeCloseTo((336 * 3 + 96 * 8) / 144, 9);
    expect(recompute(figure)).toBeCloseTo(figure.value, 9);
    expect(figure.formula).toBe(
      'length * edge_band / 144 + length_2 * front_cap_band / 144 + length_2 * rear_cap_band / 144 + length * edge_band_2 / 144',
    );
    expect(areaSum([], 'us').figure).toMatchObject({ value: 0, formula: '0', inputs: [] });
  });
});
