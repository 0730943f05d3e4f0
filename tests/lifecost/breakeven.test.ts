import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { breakEven, breakEvenYear, leastLasting } from '../../language/lifecost/index.ts';

describe('the year of break-even', () => {
  it('is the first from which the cumulated cost stays at or below', () => {
    expect(breakEvenYear([100, 0, 0, 0], [30, 30, 30, 30])).toBe(3);
    expect(breakEvenYear([90, 0, 0, 0], [30, 30, 30, 30])).toBe(2);
    expect(breakEvenYear([10, 0, 0, 0], [30, 30, 30, 30])).toBe(0);
  });

  it('is not a year after which it is lost again', () => {
    expect(breakEvenYear([50, 0, 60, 0, 0], [30, 30, 0, 30, 30])).toBe(4);
    expect(breakEvenYear([50, 0, 0, 90], [30, 30, 30, 0])).toBeUndefined();
  });

  it('is at once for equal costs', () => {
    expect(breakEvenYear([0.1, 0.2, 0.3], [0.3, 0.2, 0.1].reverse())).toBe(0);
    expect(breakEvenYear([0.1, 0.2], [0.3 - 0.2, 0.2])).toBe(0);
  });

  it('agrees with looking at every year', () => {
    const amounts = fc.array(fc.tuple(fc.integer({ min: 0, max: 50 }), fc.integer({ min: 0, max: 50 })), {
      minLength: 1,
      maxLength: 12,
    });
    fc.assert(
      fc.property(amounts, (pairs) => {
        const leads = pairs.map((_, year) => pairs.slice(0, year + 1).reduce((sum, [a, b]) => sum + b - a, 0));
        const years = leads.map((_, year) => year).filter((year) => leads.slice(year).every((lead) => lead >= 0));
        expect(
          breakEvenYear(
            pairs.map(([a]) => a),
            pairs.map(([, b]) => b),
          ),
        ).toBe(years[0]);
      }),
    );
  });

  it('needs the same years of both', () => {
    expect(() => breakEvenYear([1, 2], [1])).toThrow(RangeError);
    expect(() => breakEvenYear([], [])).toThrow(RangeError);
  });
});

describe('the least that lasts', () => {
  it('holds from there on', () => {
    expect(leastLasting((life) => life >= 7, 1, 40)).toBe(7);
    expect(leastLasting((life) => life === 3 || life >= 9, 1, 40)).toBe(9);
    expect(leastLasting(() => true, 1, 40)).toBe(1);
    expect(leastLasting((life) => life < 40, 1, 40)).toBeUndefined();
    expect(leastLasting(() => true, 5, 4)).toBeUndefined();
  });
});

describe('break-even by halving', () => {
  it('finds the root of a rising or falling difference', () => {
    fc.assert(
      fc.property(fc.double({ min: -50, max: 50, noNaN: true }), fc.boolean(), (root, rising) => {
        const found = breakEven((x) => (rising ? x - root : root ** 3 - x ** 3), -60, 60);
        expect(Math.abs(found! - root)).toBeLessThan(1e-4);
      }),
    );
  });

  it('is exact where the difference is smooth', () => {
    expect(breakEven((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 14);
  });

  it('finds the step of a difference that jumps', () => {
    expect(breakEven((life) => (Math.floor(life) >= 7 ? -1 : 1), 1, 40)).toBeCloseTo(7, 12);
  });

  it('says that there is none', () => {
    expect(breakEven((x) => x * x + 1, -1, 1)).toBeUndefined();
    expect(breakEven((x) => -1 - x, 0, 5)).toBeUndefined();
  });

  it('takes an end that is even', () => {
    expect(breakEven((x) => x, 0, 5)).toBe(0);
    expect(breakEven((x) => x - 5, 0, 5)).toBe(5);
  });

  it('refuses ends out of order', () => {
    expect(() => breakEven((x) => x, 2, 1)).toThrow(RangeError);
  });
});
