import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  certain,
  chanceLife,
  cutOff,
  fixedLife,
  lifeQuantile,
  meanLife,
  meanOf,
  soonest,
  survival,
  threePoint,
  type YearlyLife,
  yearlyLife,
} from '../../language/lifecost/index.ts';
import { lifePoints } from './arbitraries.ts';
import { dice, drawn } from './simulation.ts';

const total = (life: YearlyLife) => life.reduce((sum, chance) => sum + chance, 0);
const rounded = (life: YearlyLife) => life.map((chance) => Number(chance.toFixed(9)));

describe('a life on the yearly grid', () => {
  it('has chances that add up to 1, and none for year 0', () => {
    fc.assert(
      fc.property(lifePoints(30), fc.constantFrom('kept mean' as const, 'year end' as const), (points, rounding) => {
        const life = yearlyLife(points, rounding);
        expect(life[0]).toBe(0);
        expect(Math.min(...life)).toBeGreaterThanOrEqual(0);
        expect(total(life)).toBeCloseTo(1, 12);
      }),
    );
  });

  it('keeps its mean, from a year on', () => {
    fc.assert(
      fc.property(lifePoints(30), (points) => {
        fc.pre(points.least >= 1);
        expect(meanLife(yearlyLife(points))).toBeCloseTo(meanOf(points), 9);
      }),
    );
  });

  it('of a whole number of years stays as it is', () => {
    for (const rounding of ['kept mean', 'year end'] as const) {
      expect(yearlyLife(certain(5), rounding)).toEqual(fixedLife(5));
    }
  });

  it('of a year and a half is one or two, or the end of the second', () => {
    expect(yearlyLife(certain(1.5))).toEqual([0, 0.5, 0.5]);
    expect(yearlyLife(certain(1.5), 'year end')).toEqual([0, 0, 1]);
  });

  it('of less than a year is one', () => {
    expect(yearlyLife(certain(0.25))).toEqual([0, 1]);
    expect(yearlyLife(certain(0.25), 'year end')).toEqual([0, 1]);
    expect(yearlyLife(certain(0))).toEqual([0, 1]);
  });

  // F = x^2 / 8 up to 2, 1 - (4 - x)^2 / 8 from there: 1/8, 3/8, 3/8, 1/8. Its tents: 1/48 of year 0 goes to year 1.
  it('by hand: triangular over 0, 2, 4', () => {
    const points = threePoint(0, 2, 4);
    expect(rounded(yearlyLife(points, 'year end'))).toEqual([0, 0.125, 0.375, 0.375, 0.125]);
    const tents = [0, 1 / 24 + 1 / 4, 10 / 24, 1 / 4, 1 / 24];
    expect(rounded(yearlyLife(points))).toEqual(tents.map((chance) => Number(chance.toFixed(9))));
  });

  it('comes out alike when works begin at any time of the year', () => {
    const points = threePoint(1.2, 2.9, 5.3);
    const life = yearlyLife(points);
    const roll = dice(7);
    const runs = 40_000;
    const counted = new Array<number>(life.length).fill(0);
    for (let run = 0; run < runs; run++) counted[Math.floor(roll() + drawn(points, roll))]! += 1 / runs;
    for (const [years, chance] of life.entries()) {
      expect(Math.abs(counted[years]! - chance)).toBeLessThan(5 * Math.sqrt((chance * (1 - chance)) / runs) + 1e-12);
    }
  });

  it.each([
    () => yearlyLife(threePoint(-1, 2, 3)),
    () => fixedLife(0),
    () => fixedLife(1.5),
    () => cutOff([0, 1], 0),
    () => chanceLife(1.1, 3),
  ])('refuses a bug of the caller: %s', (call) => {
    expect(call).toThrow(RangeError);
  });
});

describe('lives together', () => {
  it('cut off: what would last longer ends then', () => {
    expect(cutOff([0, 0.1, 0.2, 0.3, 0.4], 3)).toEqual([0, 0.1, 0.2, 0.7]);
    expect(cutOff([0, 0.5, 0.5], 7)).toEqual([0, 0.5, 0.5]);
    expect(cutOff(fixedLife(15), 4)).toEqual(fixedLife(4));
  });

  it('the sooner of two: a cut where one is certain', () => {
    fc.assert(
      fc.property(lifePoints(20), fc.integer({ min: 1, max: 25 }), (points, years) => {
        const life = yearlyLife(points);
        const [both, cut] = [soonest(life, fixedLife(years)), cutOff(life, years)];
        expect(both).toHaveLength(cut.length);
        for (const [year, chance] of both.entries()) expect(chance).toBeCloseTo(cut[year]!, 12);
      }),
    );
  });

  it('the sooner of two: every pair counted', () => {
    const [a, b] = [yearlyLife(threePoint(2, 4, 7)), yearlyLife(threePoint(1, 6, 9))];
    const pairs = new Array<number>(8).fill(0);
    for (const [i, p] of a.entries()) for (const [j, q] of b.entries()) pairs[Math.min(i, j)]! += p * q;
    for (const [year, chance] of soonest(a, b).entries()) expect(chance).toBeCloseTo(pairs[year]!, 12);
  });

  it('survival falls from 1 to 0', () => {
    expect(survival([0, 0.25, 0.25, 0.5])).toEqual([1, 0.75, 0.5, 0]);
  });

  it('quantiles: the year by which so many have ended', () => {
    const life = [0, 0.25, 0.25, 0.5];
    expect([0.1, 0.25, 0.26, 0.5, 0.9, 1].map((p) => lifeQuantile(p, life))).toEqual([1, 1, 2, 2, 3, 3]);
  });

  it('the same chance every year: 1/2, 1/4, 1/8, and the rest later', () => {
    expect(chanceLife(0.5, 3)).toEqual([0, 0.5, 0.25, 0.125, 0.125]);
    expect(total(chanceLife(0.03, 40))).toBeCloseTo(1, 12);
  });
});
