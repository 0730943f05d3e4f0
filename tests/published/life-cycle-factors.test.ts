import { describe, expect, it } from 'vitest';
import {
  annualValue,
  breakEven,
  type Frame,
  once,
  presentValue,
  seriesFactor,
  singleFactor,
} from '../../language/lifecost/index.ts';

/** A payment alone: one that costs nothing but money. */
const paid = (amount: number, year: number) =>
  once('paid', { title: 'paid', material: amount, labour: 0, days: 0 }, year);

/** Present value of payments in years 0, 1, 2, ... */
function worth(payments: readonly number[], rate: number): number {
  const frame: Frame = { years: payments.length - 1, rate, timing: 'end', dayRate: 0 };
  return payments.reduce((sum, amount, year) => sum + presentValue(paid(amount, year), frame), 0);
}

// NIST Handbook 135 (2020), the factors at 3 %. Those of 6, 7, 11, 13, 16 and 19 years also stand in NIST's printed
// tables, to three digits; the others are computed from the definition.
describe('the factors of NIST Handbook 135 at 3 %', () => {
  it.each([
    [1, 0.9709],
    [5, 0.8626],
    [6, 0.8375],
    [7, 0.8131],
    [10, 0.7441],
    [11, 0.7224],
    [13, 0.681],
    [16, 0.6232],
    [19, 0.5703],
    [20, 0.5537],
    [25, 0.4776],
    [30, 0.412],
  ])('SPV of %i years is %f', (years, factor) => {
    expect(singleFactor(0.03, years)).toBeCloseTo(factor, 4);
  });

  it.each([
    [1, 0.9709],
    [5, 4.5797],
    [10, 8.5302],
    [15, 11.9379],
    [20, 14.8775],
    [25, 17.4131],
    [30, 19.6004],
  ])('UPV of %i years is %f', (years, factor) => {
    expect(seriesFactor(0.03, years)).toBeCloseTo(factor, 4);
  });
});

// R package EngrEcon 1.0.0, example of om_distribute: upkeep of 1,000 in years 3, 6, ... 48 of 50, at 3 %.
it('upkeep every third year of fifty: 8,174.547', () => {
  const payments = Array.from({ length: 51 }, (_, year) => (year > 0 && year % 3 === 0 && year <= 48 ? 1000 : 0));
  expect(worth(payments, 0.03)).toBeCloseTo(8174.547, 3);
});

// The docstrings of numpy-financial.
describe('the examples of numpy-financial', () => {
  it('pmt(0.075 / 12, 12 * 15, 200000) is -1854.0247200054619', () => {
    expect(annualValue(200_000, 0.075 / 12, 180)).toBeCloseTo(1854.0247200054619, 9);
  });

  it('pv(0.05 / 12, 120, -100, 15692.93) is -100.00067131625819', () => {
    const [rate, periods] = [0.05 / 12, 120];
    const value = 100 * seriesFactor(rate, periods) - 15692.93 * singleFactor(rate, periods);
    expect(value).toBeCloseTo(-100.00067131625819, 8);
  });

  it('npv(0.08, [-40000, 5000, 8000, 12000, 30000]) is 3065.22267', () => {
    expect(worth([-40_000, 5000, 8000, 12_000, 30_000], 0.08)).toBeCloseTo(3065.22267, 5);
  });

  it('irr([-100, 39, 59, 55, 20]) is 0.28095: the rate of break-even', () => {
    expect(breakEven((rate) => worth([-100, 39, 59, 55, 20], rate), 0, 1)).toBeCloseTo(0.28095, 5);
  });
});
