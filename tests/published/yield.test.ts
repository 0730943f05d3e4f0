import fc from 'fast-check';
import { unit } from 'mathjs';
import { describe, expect, it } from 'vitest';
import {
  concaveFilletSection,
  domeSection,
  filletSection,
  halfRoundSection,
  lengthPerVolume,
  rectangleSection,
  roundSection,
  sectionArea,
  volumeOfBead,
} from '../../language/measure/section.ts';
import { readLength } from '../../language/values/length.ts';
import { certain, quantityFrom } from '../../language/values/quantity.ts';
import { readVolume } from '../../language/values/volume.ts';
import { estimate } from '../estimate/asked.ts';
import { sealantOf } from '../measure/items.ts';

const nm = (text: string) => certain(readLength(quantityFrom(text) ?? { terms: [] })).nm;
const mL = (text: string) => certain(readVolume(quantityFrom(text) ?? { terms: [] })).mL;
const feet = (volume: string, section: number) => lengthPerVolume(mL(volume), section) / nm('1 ft');
const rectangle = (width: string, depth: string) => rectangleSection(nm(width), nm(depth));

describe('feet of bead per cartridge, V / (12 w d) in inches (computed from the definitions)', () => {
  const sizes = ['10.1 fl-oz', '10.3 fl-oz', '300 mL'];
  it.each([
    ['1/4 in', '1/8 in', [48.61, 49.57, 48.82]],
    ['1/4 in', '1/4 in', [24.3, 24.78, 24.41]],
    ['3/8 in', '3/8 in', [10.8, 11.02, 10.85]],
    ['1/2 in', '1/4 in', [12.15, 12.39, 12.2]],
    ['1/2 in', '1/2 in', [6.08, 6.2, 6.1]],
    ['3/4 in', '1/2 in', [4.05, 4.13, 4.07]],
  ])('%s by %s', (width, depth, expected) => {
    for (const [i, size] of sizes.entries()) {
      expect(Math.abs(feet(size, rectangle(width, depth)) - (expected[i] ?? 0))).toBeLessThanOrEqual(0.00501);
    }
  });

  it('6 by 6 mm from 300 mL is 8.333 m; 10 by 5 mm from 310 mL is 6.200 m', () => {
    expect(lengthPerVolume(300, rectangle('6 mm', '6 mm')) / nm('1 m')).toBeCloseTo(8.3333, 4);
    expect(lengthPerVolume(310, rectangle('10 mm', '5 mm')) / nm('1 m')).toBeCloseTo(6.2, 9);
  });

  it('other sections of 1/4 in from 10.1 fl oz: half round 61.89 ft, round 30.94 ft, fillet 48.61 ft', () => {
    const quarter = nm('1/4 in');
    expect(feet('10.1 fl-oz', halfRoundSection(quarter))).toBeCloseTo(61.89, 2);
    expect(feet('10.1 fl-oz', roundSection(quarter))).toBeCloseTo(30.945, 2);
    expect(feet('10.1 fl-oz', filletSection(quarter))).toBeCloseTo(48.61, 2);
  });
});

describe('printed yields', () => {
  it('a tube makes 25 ft of 1/4 in bead, within 10 % (Hydro-Québec, "How to apply caulking", seen)', () => {
    for (const size of ['10.1 fl-oz', '10.3 fl-oz', '300 mL']) {
      const made = feet(size, rectangle('1/4 in', '1/4 in'));
      expect(made).toBeGreaterThan(22.5);
      expect(made).toBeLessThan(27.5);
    }
    // The same by the formula, for the smallest and the largest tube in use (computed).
    expect(feet('10 fl-oz', rectangle('1/4 in', '1/4 in'))).toBeCloseTo(24.06, 2);
    expect(feet('310 mL', rectangle('1/4 in', '1/4 in'))).toBeCloseTo(25.2, 1);
  });

  it.each([
    ['1/4 in', [154, 77, 51, 39, 25, 19]],
    ['3/8 in', [102, 51, 34, 25, 17, 13]],
    ['1/2 in', [77, 39, 25, 19, 13, 9]],
  ])('feet per US gallon at depth %s, a printed trade table, within 1 ft (common practice)', (depth, expected) => {
    for (const [i, width] of ['0.5 in', '1 in', '1.5 in', '2 in', '3 in', '4 in'].entries()) {
      expect(Math.abs(feet('1 gal', rectangle(width, depth)) - (expected[i] ?? 0))).toBeLessThan(1);
    }
  });
});

describe('sections (plane geometry)', () => {
  it('have their areas', () => {
    const ten = nm('10 mm');
    expect(rectangleSection(ten, nm('5 mm'))).toBe(50);
    expect(domeSection(ten, nm('6 mm'))).toBeCloseTo(40, 12);
    expect(filletSection(ten)).toBe(50);
    expect(concaveFilletSection(ten)).toBeCloseTo((1 - Math.PI / 4) * 100, 12);
    expect(halfRoundSection(ten)).toBeCloseTo(39.2699, 4);
    expect(roundSection(ten)).toBe(2 * halfRoundSection(ten));
  });

  it('are found by their shape', () => {
    const [w, d] = [nm('10 mm'), nm('6 mm')];
    expect(sectionArea('rectangle', w, d)).toBe(rectangleSection(w, d));
    expect(sectionArea('dome', w, d)).toBe(domeSection(w, d));
    expect(sectionArea('fillet', w, d)).toBe(filletSection(w));
    expect(sectionArea('concave-fillet', w, d)).toBe(concaveFilletSection(w));
    expect(sectionArea('half-round', w, d)).toBe(halfRoundSection(w));
    expect(sectionArea('round', w, d)).toBe(roundSection(w));
  });

  it('a dome is the area under a parabola, summed up in thin slices', () => {
    const [w, d, slices] = [10, 6, 10_000];
    let area = 0;
    for (let i = 0; i < slices; i++) {
      const x = ((i + 0.5) / slices) * 2 - 1;
      area += d * (1 - x * x) * (w / slices);
    }
    expect(domeSection(w * 1e6, d * 1e6)).toBeCloseTo(area, 5);
  });

  it('volume and length go back and forth', () => {
    const section = rectangle('1 in', '1/4 in');
    const length = lengthPerVolume(mL('10.3 fl-oz'), section);
    expect(volumeOfBead(length, section)).toBeCloseTo(304.60735449375, 9);
    // 1 in by 1/4 in over 1 ft is 3 cubic inches.
    expect(volumeOfBead(nm('1 ft'), section)).toBeCloseTo(3 * 16.387064, 9);
  });
});

// mathjs, a general library with units of its own, works the same volume identity out.
describe('a second opinion', () => {
  it('on any width, depth and cartridge', () => {
    const widths = fc.integer({ min: 1, max: 64 }).map((n) => [`${n}/16 in`, unit(n / 16, 'inch')] as const);
    const volumes = fc.constantFrom(
      ['10.1 fl-oz', unit(10.1, 'fluidounce')] as const,
      ['10.3 fl-oz', unit(10.3, 'fluidounce')] as const,
      ['300 mL', unit(300, 'mL')] as const,
      ['1 gal', unit(1, 'gallon')] as const,
    );
    fc.assert(
      fc.property(widths, widths, volumes, ([w, width], [d, depth], [v, volume]) => {
        const theirs = volume.divide(width.multiply(depth) as typeof volume) as typeof volume;
        const [ours, expected] = [feet(v, rectangle(w, d)), theirs.toNumber('foot')];
        expect(Math.abs(ours - expected)).toBeLessThanOrEqual(1e-9 * expected);
      }),
      { numRuns: 200 },
    );
  });
});

describe('an estimate buys by these yields', () => {
  const cartridges = (bead: string, cartridge: string, run: string) =>
    estimate(`
sealant Lap {
  family solvent-lap
  cartridge ${cartridge} at 10 USD
  bead ${bead}
}
policy Bare { currency USD spare 0 % }
rig Heron under Bare { roof 28 ft by 8 ft epdm  joint seam ${run}  seal seam with Lap }
`).purchases.find(({ material }) => material === 'Lap')!.cartridges!.value;

  // Up to the printed length one cartridge, an inch above it two.
  it.each([
    ['1/4 in by 1/8 in', '10.1 fl-oz', 48.61],
    ['1/4 in by 1/4 in', '10.3 fl-oz', 24.78],
    ['3/8 in by 3/8 in', '300 mL', 10.85],
    ['1/2 in by 1/2 in', '10.3 fl-oz', 6.2],
    ['1/4 in by 1/4 in half-round', '10.1 fl-oz', 61.89],
    ['1/4 in by 1/4 in fillet', '10.1 fl-oz', 48.61],
  ])('%s from %s: %d ft', (bead, cartridge, yielded) => {
    const inch = Math.floor(yielded * 12);
    expect([cartridges(bead, cartridge, `${inch} in`), cartridges(bead, cartridge, `${inch + 1} in`)]).toEqual([1, 2]);
  });
});

// The engine sizes no joints: it takes the bead that is written. What the library writes is held against what a joint
// may be (Orange County NC section 07 92 00, seen: at least 1/4 in deep, at most 1/2 in).
describe('the beads of the library', () => {
  it.each(['GenericSolventLap', 'GenericHybridLap', 'GenericHybrid', 'GenericUrethane', 'GenericSilicone'])(
    '%s is as deep as a joint may be',
    (name) => {
      const depth = sealantOf('', name).bead!.value.height.nm;
      expect(depth).toBeGreaterThanOrEqual(nm('1/4 in'));
      expect(depth).toBeLessThanOrEqual(nm('1/2 in'));
    },
  );
});
