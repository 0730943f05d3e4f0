import { describe, expect, it } from 'vitest';
import type { Estimate } from '../../language/estimate/index.ts';
import { seamLength } from '../../language/measure/length.ts';
import { estimate, rigWith, viewOf } from './asked.ts';

// A typical trailer of 28 ft (trade notes, section 3.6): its figures lie inside the ranges that are usual. The ranges
// are from memory; a figure outside them is odd, not wrong.

const roof = [
  'edge curbside, roadside',
  'cap front',
  'cap rear',
  'slide lounge 12 ft by 3 ft on roadside',
  'opening vent 16.5 in by 16.5 in count 3',
  'opening skylight 20 in by 30 in',
  'opening fridge-vent 10 in by 26 in',
  'opening pipe round 6.5 in count 3',
  'opening antenna 8 in by 8 in',
  'opening gland 4 in by 5 in count 2',
  'mount ladder-feet 3 in by 4 in count 2',
  'gasket air-con 14 in by 14 in',
  'factory Lap',
  'comes-off vent, skylight, fridge-vent',
];
const planned = (...plans: readonly string[]): Estimate => estimate(rigWith(...roof, ...plans));
const feet = ({ jobs }: Estimate) => (jobs[0]?.tapeLength?.value ?? 0) / 12;
const cartridges = ({ purchases }: Estimate) => purchases.find(({ kind }) => kind === 'sealant')?.cartridges?.value;
const hours = (of: Estimate) => of.hours.likely.value;
const between = (value: number | undefined, low: number, high: number) => {
  expect(value).toBeGreaterThanOrEqual(low);
  expect(value).toBeLessThanOrEqual(high);
};

describe('a typical trailer', () => {
  const linear = planned('tape edges, caps, slides with Tape4');

  it('takes 100.7 ft of tape on its linear seams: just more than two rolls of 50 ft', () => {
    expect(feet(linear)).toBeCloseTo(100.7, 1);
    expect(linear.purchases[0]!.buy.map(({ what, count }) => `${count} ${what}`).sort()).toEqual([
      '1 roll of 25 ft',
      '2 roll of 50 ft',
    ]);
  });

  it('takes 140 to 210 ft with frames', () => {
    between(feet(planned('tape edges, caps, slides, openings with Tape4')), 140, 210);
  });

  it('takes 14 to 28 cartridges of sealant all over, 5 to 11 on its openings', () => {
    between(cartridges(planned('seal all with Lap')), 14, 28);
    between(cartridges(planned('seal openings, mounts with Lap')), 5, 11);
  });

  it('is inspected in 0.75 to 1.5 h beside the set-up', () => {
    between(hours(planned('inspect')) - 0.75, 0.75, 1.5);
  });

  it('is recoated in 5 to 11 h, taped in 6 to 12 h, stripped and sealed again in 20 to 45 h', () => {
    between(hours(planned('seal all with Lap')), 5, 11);
    between(hours(linear), 6, 12);
    between(hours(planned('strip all', 'seal all with Lap')), 20, 45);
  });
});

describe('its seams, in feet (arithmetic)', () => {
  const { rig } = viewOf(rigWith(...roof));
  const seams = new Map(
    rig.items.flatMap((item) => {
      const seam = seamLength(item, rig.roof, 'us');
      return seam.ok ? [[item.name, seam.value.all.nm / 304_800_000] as const] : [];
    }),
  );
  const together = (...names: readonly string[]) =>
    names.reduce((sum, name) => sum + (seams.get(name) ?? Number.NaN), 0);
  const linear = ['curbside', 'roadside', 'front', 'rear', 'lounge'];
  const small = ['antenna', 'gland', 'ladder-feet'];

  it.each([
    ['side edges', ['curbside', 'roadside'], 56],
    ['front and rear caps', ['front', 'rear'], 16],
    ['slide roof, outer side and ends', ['lounge'], 18],
    ['linear', linear, 90],
    ['vents', ['vent'], 16.5],
    ['skylight', ['skylight'], 8.3],
    ['fridge vent', ['fridge-vent'], 6],
    ['pipe flanges', ['pipe'], 5.1],
    ['antenna, glands, ladder feet', small, 8],
    ['openings', ['vent', 'skylight', 'fridge-vent', 'pipe', ...small], 43.9],
  ])('%s', (_, names, feet) => {
    expect(together(...names)).toBeCloseTo(feet, 1);
  });

  it('134 in all, of 105 to 175; none round the air conditioner', () => {
    expect(together(...seams.keys())).toBeCloseTo(134, 0);
    between(together(...seams.keys()), 105, 175);
    expect(seams.has('air-con')).toBe(false);
  });
});

describe('its materials', () => {
  const along = (text: string) =>
    text
      .replace('cartridge 10 fl-oz at 10.00 USD', 'cartridge 10.3 fl-oz at 9.75 USD')
      .replace('12 cartridges at 100.00 USD', '12 cartridges at 105.00 USD')
      .replace('policy Shop {', 'policy Shop {\n  bead-line flange\n  smother none\n  spare 0 %');
  const sealed = (...plans: readonly string[]) => estimate(along(rigWith(...roof, ...plans)));
  const volume = ({ jobs }: Estimate) => (jobs[0]?.sealantVolume?.value ?? 0) * 1.8046875;

  it('sealant along the flanges: 402 cu in and 22 cartridges all over, 132 cu in and 8 on the openings', () => {
    const [all, openings] = [sealed('seal all with Lap'), sealed('seal openings, mounts with Lap')];
    expect([volume(all), volume(openings)].map((each) => Math.round(each))).toEqual([402, 132]);
    expect([cartridges(all), cartridges(openings)]).toEqual([22, 8]);
    // Two cases of 12 would do for 210.00; one and ten single cartridges are cheaper.
    expect(all.purchases.find(({ kind }) => kind === 'sealant')?.cost?.money.amount).toBe('202.50');
  });

  it.each([
    ['10 %', 'seal curbside from 2 ft to 15 ft 5 in with Lap', 3],
    ['20 %', 'seal curbside from 1 ft to 27 ft 10 in with Lap', 5],
  ])('a touch-up of %s takes 2 to 6 cartridges', (_, plan, hand) => {
    const count = cartridges(planned(plan));
    between(count, 2, 6);
    expect(cartridges(sealed(plan))).toBe(hand);
  });

  it('costs 200 to 290 USD for a recoat, 160 to 300 USD for tape on the linear seams', () => {
    const spent = (of: Estimate) => Number(of.totals.materials?.money.amount);
    between(spent(planned('seal all with Lap')), 200, 290);
    between(spent(planned('tape edges, caps, slides with Tape4')), 160, 300);
  });

  it('with frames on all but the ladder takes 165 ft of tape, for less than four rolls of 50 ft', () => {
    const framed = roof.map((line) => line.replace('round 6.5 in', 'cutout round 2 in flange 2 1/4 in'));
    const whole = estimate(rigWith(...framed, 'tape edges, caps, slides, openings with Tape4'));
    expect(feet(whole)).toBeCloseTo(165, 0);
    const [tape] = whole.purchases;
    expect(tape!.proof).toBe('4 rolls, 215.00 USD, proven cheapest');
    expect(Number(tape!.cost!.money.amount)).toBeLessThan(4 * 60);
    expect(whole.jobs[0]!.skipped.map(({ item }) => item)).not.toContain('air-con');
  });
});

describe('two sides of 41 ft, a rear and a front of two strips, 8 ft wide', () => {
  const text = (policy: string) =>
    rigWith('edge curbside, roadside', 'cap front', 'cap rear', 'tape all with Tape4')
      .replace('roof 28 ft by 8 ft', 'roof 41 ft by 8 ft')
      .replace('policy Shop {', `policy Shop {\n  ${policy}`);

  it('two rolls of 50 ft and one of 25 ft suffice, and nothing is cheaper', () => {
    const [tape] = estimate(text('roll-waste 0 in')).purchases;
    expect(tape!.buy.map(({ what, count }) => `${count} ${what}`).sort()).toEqual([
      '1 roll of 25 ft',
      '2 roll of 50 ft',
    ]);
    expect(tape!.proof).toBe('3 rolls, 155.00 USD, proven cheapest');
  });

  it('do not, when the first 6 in of each roll are lost: the pieces of 41 ft 4 in and 8 ft 4 in fill a roll to 4 in', () => {
    const [tape] = estimate(text('roll-waste 6 in')).purchases;
    expect(tape!.proof).toBe('3 rolls, 180.00 USD, proven cheapest');
  });
});
