// Where the cheaper of two choices changes.

/**
 * The first year from which on the cumulated cost of A stays at or below that of B to the end. Yearly amounts from year 0
 * on, such as expected present values; a difference of less than a billionth of the whole counts as none.
 */
export function breakEvenYear(a: readonly number[], b: readonly number[]): number | undefined {
  if (a.length !== b.length || a.length === 0) throw new RangeError('two rows of as many years are needed');
  let ahead = 0;
  const leads = a.map((cost, year) => (ahead += b[year]! - cost));
  const scale = a.reduce((sum, cost, year) => sum + Math.abs(cost) + Math.abs(b[year]!), 0);
  const year = leads.findLastIndex((lead) => lead < -1e-9 * scale) + 1;
  return year < a.length ? year : undefined;
}

/**
 * The least whole number, from `from` to `to`, for which `holds` and goes on holding up to `to`: the least life at which
 * tape is the cheaper one, the least horizon at which it pays. Undefined if it does not hold at `to`.
 */
export function leastLasting(holds: (value: number) => boolean, from: number, to: number): number | undefined {
  let value = to;
  while (value >= from && holds(value)) value--;
  return value < to ? value + 1 : undefined;
}

/**
 * Where a difference of costs changes its sign between `low` and `high`, by halving: the price, rate or life of break-even,
 * to the last digit of a double. Undefined if it has the same sign at both ends. With several changes, one of them.
 */
export function breakEven(difference: (value: number) => number, low: number, high: number): number | undefined {
  if (!(low <= high)) throw new RangeError(`not in order: ${low}, ${high}`);
  const [atLow, atHigh] = [difference(low), difference(high)];
  if (atLow === 0) return low;
  if (atHigh === 0) return high;
  if (atLow > 0 === atHigh > 0) return undefined;
  let [left, right] = [low, high];
  for (;;) {
    const middle = left + (right - left) / 2;
    if (middle <= left || middle >= right) return middle;
    if (difference(middle) > 0 === atLow > 0) left = middle;
    else right = middle;
  }
}
