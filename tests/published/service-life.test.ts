import { describe, expect, it } from 'vitest';
import { chanceUpTo, meanOf, quantileOf, threePoint, varianceOf } from '../../language/lifecost/index.ts';

// READMEs of the packages @stdlib/stats-base-dists-triangular-{mean, variance, median, quantile, cdf}, whose order is
// least, most, likely.
const stdlib = (least: number, most: number, likely: number) => threePoint(least, likely, most);

describe('the triangular examples of @stdlib', () => {
  it.each([
    [4, 12, 5, 7, 3.167, 6.708],
    [2, 8, 5, 5, 1.5, 5],
  ])('(%f, %f, %f): mean %f, variance %f, median %f', (least, most, likely, mean, variance, median) => {
    const points = stdlib(least, most, likely);
    expect(meanOf(points)).toBeCloseTo(mean, 12);
    expect(varianceOf(points)).toBeCloseTo(variance, 3);
    expect(quantileOf(0.5, points)).toBeCloseTo(median, 3);
  });

  it('quantile(0.1, -20, 0, -2) is -14', () => {
    expect(quantileOf(0.1, stdlib(-20, 0, -2))).toBeCloseTo(-14, 12);
  });

  it('quantile(0.8, 0, 20, 0) is about 11.056', () => {
    expect(quantileOf(0.8, stdlib(0, 20, 0))).toBeCloseTo(11.056, 3);
  });

  it('cdf(0.5, -1, 1, 0) is 0.875', () => {
    expect(chanceUpTo(0.5, stdlib(-1, 1, 0))).toBeCloseTo(0.875, 12);
  });
});

// The PERT formulas in print: mean (a + 4m + b) / 6; the variance of the beta distribution, (mean - a)(b - mean) / 7,
// not the classical ((b - a) / 6)^2.
describe('PERT', () => {
  it.each([
    [8, 15, 25],
    [2, 6, 12],
    [0, 0, 6],
  ])('over %f, %f, %f', (least, likely, most) => {
    const points = threePoint(least, likely, most, 'pert');
    const mean = (least + 4 * likely + most) / 6;
    expect(meanOf(points)).toBeCloseTo(mean, 12);
    expect(varianceOf(points)).toBeCloseTo(((mean - least) * (most - mean)) / 7, 12);
  });

  it('has the classical variance only for some points', () => {
    expect(varianceOf(threePoint(0, 3, 6, 'pert'))).toBeCloseTo(9 / 7, 12);
    expect(((6 - 0) / 6) ** 2).toBe(1);
  });
});
