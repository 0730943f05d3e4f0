import { describe, expect, it } from 'vitest';
import type { Estimate } from '../../language/estimate/index.ts';
import { estimate, rigWith } from './asked.ts';

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
