import fc from 'fast-check';
import { jStat } from 'jstat';
import { describe, expect, it } from 'vitest';
import {
  certain,
  chanceUpTo,
  gridded,
  meanOf,
  quantileOf,
  shortfallOf,
  threePoint,
  varianceOf,
} from '../../language/lifecost/index.ts';
import { anyPoints, figure, ordered } from './arbitraries.ts';

// `jstat` is a general-purpose statistics library.
describe('against a general-purpose statistics library', () => {
  it('triangular', () => {
    fc.assert(
      fc.property(ordered, figure, ([least, likely, most], x) => {
        fc.pre(least < likely && likely < most && most - least > 1e-3);
        const points = threePoint(least, likely, most);
        expect(chanceUpTo(x, points)).toBeCloseTo(jStat.triangular.cdf(x, least, most, likely), 9);
        expect(meanOf(points)).toBeCloseTo(jStat.triangular.mean(least, most, likely), 9);
        expect(varianceOf(points)).toBeCloseTo(jStat.triangular.variance(least, most, likely), 9);
      }),
    );
  });

  it('PERT, as a beta distribution', () => {
    fc.assert(
      fc.property(ordered, figure, ([least, likely, most], x) => {
        fc.pre(most - least > 1e-3);
        const range = most - least;
        const [alpha, beta] = [1 + (4 * (likely - least)) / range, 1 + (4 * (most - likely)) / range];
        const u = Math.min(1, Math.max(0, (x - least) / range));
        const points = threePoint(least, likely, most, 'pert');
        // That library stops its continued fraction at 3e-7: it is no judge of further digits.
        expect(Math.abs(chanceUpTo(x, points) - jStat.beta.cdf(u, alpha, beta))).toBeLessThan(5e-7);
      }),
    );
  });
});

describe('either shape', () => {
  it('the quantile undoes the chance', () => {
    fc.assert(
      fc.property(anyPoints, fc.double({ min: 0.001, max: 0.999, noNaN: true }), (points, p) => {
        expect(chanceUpTo(quantileOf(p, points), points)).toBeCloseTo(p, 7);
      }),
    );
  });

  it('the shortfall is the integral of the chance', () => {
    fc.assert(
      fc.property(anyPoints, fc.double({ min: 0, max: 1, noNaN: true }), (points, part) => {
        const range = points.most - points.least;
        const x = points.least + part * range;
        // The midpoint rule; its error is of second order in the width of a cell.
        const cells = 2000;
        const width = (part * range) / cells;
        let sum = 0;
        for (let i = 0; i < cells; i++) sum += width * chanceUpTo(points.least + (i + 0.5) * width, points);
        expect(Math.abs(shortfallOf(x, points) - sum)).toBeLessThan(1e-5 * range);
        expect(shortfallOf(points.most + part, points)).toBeCloseTo(points.most + part - meanOf(points), 9);
      }),
      { numRuns: 60 },
    );
  });

  it('on a grid keeps its mean, and its chances add up to 1', () => {
    fc.assert(
      fc.property(anyPoints, fc.double({ min: 0.05, max: 5, noNaN: true }), (points, step) => {
        const { index, chances } = gridded(points, step);
        expect(Math.min(...chances)).toBeGreaterThanOrEqual(0);
        expect(chances.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 9);
        const mean = chances.reduce((sum, chance, cell) => sum + chance * (index + cell) * step, 0);
        expect(mean).toBeCloseTo(meanOf(points), 7);
      }),
    );
  });
});

describe('points that coincide', () => {
  it('all three: certain', () => {
    const known = certain(7);
    expect([meanOf(known), varianceOf(known), quantileOf(0.3, known)]).toEqual([7, 0, 7]);
    expect([chanceUpTo(6.99, known), chanceUpTo(7, known)]).toEqual([0, 1]);
    expect([shortfallOf(6, known), shortfallOf(9, known)]).toEqual([0, 2]);
    expect(gridded(known, 1)).toEqual({ index: 7, chances: [1] });
  });

  it.each(['triangular', 'pert'] as const)('the likely one at an end: %s', (shape) => {
    const [early, late] = [threePoint(2, 2, 6, shape), threePoint(2, 6, 6, shape)];
    // Mirror images of each other.
    expect(chanceUpTo(3, early)).toBeCloseTo(1 - chanceUpTo(5, late), 12);
    expect(chanceUpTo(2, late)).toBe(0);
    expect(meanOf(early) + meanOf(late)).toBeCloseTo(8, 12);
    expect(varianceOf(early)).toBeCloseTo(varianceOf(late), 12);
  });

  it.each([
    [3, 2, 5],
    [3, 6, 5],
    [Number.NaN, 6, 7],
    [1, 2, Infinity],
  ])('refuses %f, %f, %f', (least, likely, most) => {
    expect(() => threePoint(least, likely, most)).toThrow(RangeError);
  });
});
