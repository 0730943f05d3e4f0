// Discount factors of the life-cycle cost method, for constant-price ("real") rates as for nominal ones.
// Method: NIST Handbook 135 (2020), Life-Cycle Costing Manual; ASTM E917. Names of the factors: ASTM adjunct ADJE091717.

/**
 * When in its year a yearly flow is counted: at the end (the usual choice, and ours), or in the middle. Single events
 * are discounted from their own date and know no such choice.
 */
export type Timing = 'end' | 'middle';

/** SPV, single present value: what 1 at `time` years (a fraction may be) is worth today, `(1 + d)^-t`. */
export function singleFactor(rate: number, time: number): number {
  requireRate(rate);
  if (!(time >= 0 && time < Infinity)) throw new RangeError(`no time from today: ${time}`);
  return (1 + rate) ** -time;
}

/** UPV, uniform present value: 1 in each of `years` years. `((1 + d)^n - 1) / (d (1 + d)^n)`, and n for d = 0. */
export function seriesFactor(rate: number, years: number, timing: Timing = 'end'): number {
  return growingFactor(rate, 0, years, timing);
}

/**
 * UPV*, modified uniform present value: a flow that is 1 at today's prices and grows by `growth` a year, in each of
 * `years` years. `A (1 - A^n) / (1 - A)` with `A = (1 + e) / (1 + d)`, and n for e = d. In the middle of the years each
 * exponent is less by a half.
 */
export function growingFactor(rate: number, growth: number, years: number, timing: Timing = 'end'): number {
  requireRate(rate);
  requireRate(growth);
  requireYears(years);
  const log = Math.log1p(growth) - Math.log1p(rate);
  // A^t summed as a geometric series: expm1 keeps its digits where A is almost 1.
  const sum = log === 0 ? years : (Math.exp(log) * Math.expm1(years * log)) / Math.expm1(log);
  return timing === 'end' ? sum : sum * Math.exp(-log / 2);
}

/** The even yearly amount, at the end of each of `years` years (1 or more), that has the given present value. */
export function annualValue(presentValue: number, rate: number, years: number): number {
  if (years === 0) throw new RangeError('no year to spread a value over');
  return presentValue / seriesFactor(rate, years);
}

/** Throws a RangeError on what is no rate a year. */
export function requireRate(rate: number): void {
  if (!(rate > -1 && rate < Infinity)) throw new RangeError(`no rate: ${rate}`);
}

/** Throws a RangeError on what is no whole number of years. */
export function requireYears(years: number): void {
  if (!Number.isInteger(years) || years < 0) throw new RangeError(`no whole number of years: ${years}`);
}
