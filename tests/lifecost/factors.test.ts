import fc from 'fast-check';
import { mirr, npv, pv } from 'financial';
import { describe, expect, it } from 'vitest';
import {
  adjustedReturn,
  annualValue,
  discountedPayback,
  growingFactor,
  savingsToInvestment,
  seriesFactor,
  singleFactor,
} from '../../language/lifecost/index.ts';

const rates = fc.double({ min: -0.05, max: 0.3, noNaN: true });
const years = fc.integer({ min: 1, max: 60 });
const close = (a: number, b: number): void => {
  expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(b)));
};

// `financial` is a general-purpose finance library, a port of numpy-financial.
describe('against a general-purpose finance library', () => {
  it('the single factor is the value of 1 at the end', () => {
    fc.assert(fc.property(rates, years, (rate, n) => close(singleFactor(rate, n), -pv(rate, n, 0, 1))));
  });

  it('the series factor is the value of 1 a period', () => {
    const far = rates.filter((rate) => Math.abs(rate) > 1e-4);
    fc.assert(fc.property(far, years, (rate, n) => close(seriesFactor(rate, n), -pv(rate, n, 1))));
  });

  it('the growing factor is the net present value of a growing flow', () => {
    fc.assert(
      fc.property(rates, rates, years, (rate, growth, n) => {
        const flow = Array.from({ length: n + 1 }, (_, year) => (year === 0 ? 0 : (1 + growth) ** year));
        close(growingFactor(rate, growth, n), npv(rate, flow));
      }),
    );
  });

  it('the adjusted return is its modified internal rate', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.2, noNaN: true }),
        fc.array(fc.integer({ min: 1, max: 900 }), { minLength: 1, maxLength: 30 }),
        (rate, savings) => {
          const saved = savings.reduce((sum, each, i) => sum + each * singleFactor(rate, i + 1), 0);
          const sir = savingsToInvestment(saved, 1000);
          close(adjustedReturn(sir, rate, savings.length), mirr([-1000, ...savings], rate, rate));
        },
      ),
    );
  });
});

describe('edges', () => {
  it('without discount a series counts its years', () => {
    expect(seriesFactor(0, 17)).toBe(17);
    expect(singleFactor(0, 17)).toBe(1);
    expect(annualValue(340, 0, 17)).toBe(20);
  });

  it('growth as high as the discount counts the years', () => {
    expect(growingFactor(0.03, 0.03, 25)).toBe(25);
  });

  it('keeps its digits where growth and discount are almost alike', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e-7, max: 1e-7, noNaN: true }), years, (tiny, n) => {
        let sum = 0;
        for (let year = 1; year <= n; year++) sum += ((1.03 + tiny) / 1.03) ** year;
        close(growingFactor(0.03, 0.03 + tiny, n), sum);
      }),
    );
  });

  it('in the middle of the years each flow comes half a year earlier', () => {
    fc.assert(
      fc.property(rates, rates, years, (rate, growth, n) => {
        let sum = 0;
        for (let year = 1; year <= n; year++) sum += ((1 + growth) / (1 + rate)) ** (year - 0.5);
        close(growingFactor(rate, growth, n, 'middle'), sum);
      }),
    );
  });

  it('no years, no value', () => {
    expect(seriesFactor(0.03, 0)).toBe(0);
  });

  it.each([
    () => singleFactor(-1, 1),
    () => singleFactor(Number.NaN, 1),
    () => singleFactor(0.03, -1),
    () => seriesFactor(0.03, 1.5),
    () => seriesFactor(0.03, -1),
    () => annualValue(100, 0.03, 0),
    () => growingFactor(0.03, -2, 3),
    () => savingsToInvestment(100, 0),
    () => adjustedReturn(-1, 0.03, 10),
    () => adjustedReturn(2, 0.03, 0),
  ])('refuses a bug of the caller: %s', (call) => {
    expect(call).toThrow(RangeError);
  });
});

describe('discounted payback', () => {
  it('is the first year whose cumulated savings cover the extra investment', () => {
    // 100 / 1.1 + 100 / 1.21 = 173.55; with 100 / 1.331 = 248.69.
    expect(discountedPayback([100, 100, 100], 173.5, 0.1)).toBe(2);
    expect(discountedPayback([100, 100, 100], 173.6, 0.1)).toBe(3);
    expect(discountedPayback([100, 100, 100], 248.7, 0.1)).toBeUndefined();
  });

  it('is at once where nothing more is invested', () => {
    expect(discountedPayback([], 0, 0.03)).toBe(0);
  });

  it('without discount is plain payback', () => {
    expect(discountedPayback([50, 50, 50], 150, 0)).toBe(3);
  });
});
