// The beta distribution with shapes a, b of 1 or more, on 0 ... 1.

/** Chance of a value of at most x: the regularised incomplete beta function I_x(a, b). */
export function betaCdf(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  // The two halves add up to the complete beta function: no gamma function is needed.
  const whole = lowerPart(0.5, a, b) + lowerPart(0.5, b, a);
  return x <= 0.5 ? lowerPart(x, a, b) / whole : 1 - lowerPart(1 - x, b, a) / whole;
}

/** The integral of t^(a-1) (1-t)^(b-1) from 0 to x, for x up to a half: Abramowitz and Stegun 26.5.4, all terms positive. */
function lowerPart(x: number, a: number, b: number): number {
  let term = 1;
  let sum = 1;
  for (let n = 0; term > sum * 1e-17; n++) {
    term *= ((a + b + n) / (a + 1 + n)) * x;
    sum += term;
  }
  return ((x ** a * (1 - x) ** b) / a) * sum;
}
