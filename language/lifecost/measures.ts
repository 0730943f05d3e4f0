// How an alternative does against a base case. Method and names: NIST Handbook 135 (2020), ASTM E917, E964, E1057.
import { requireRate, requireYears, singleFactor } from './factors.ts';

/** The life-cycle cost of the base case less that of the alternative, in present values. */
export function netSavings(base: number, alternative: number): number {
  return base - alternative;
}

/** SIR: present value of the savings in running costs per unit of extra investment, which must be positive. */
export function savingsToInvestment(savings: number, extraInvestment: number): number {
  if (!(extraInvestment > 0)) throw new RangeError(`no extra investment: ${extraInvestment}`);
  return savings / extraInvestment;
}

/** AIRR, the yearly yield if savings are put in again at the discount rate: `(1 + d) SIR^(1/n) - 1`. */
export function adjustedReturn(sir: number, rate: number, years: number): number {
  requireRate(rate);
  requireYears(years);
  if (years === 0 || sir < 0) throw new RangeError(`no return of ${sir} over ${years} years`);
  return (1 + rate) * sir ** (1 / years) - 1;
}

/**
 * Discounted payback: the first year in which the savings of years 1, 2, ..., discounted at the ends of the years, have
 * covered the extra investment. Undefined if they never do; later losses may undo it.
 */
export function discountedPayback(
  savings: readonly number[],
  extraInvestment: number,
  rate: number,
): number | undefined {
  if (extraInvestment <= 0) return 0;
  let saved = 0;
  const year = savings.findIndex((saving, i) => {
    saved += saving * singleFactor(rate, i + 1);
    return saved >= extraInvestment;
  });
  return year < 0 ? undefined : year + 1;
}
