// An amount of money in parts that add up to it.

/**
 * Whole parts of a whole amount, as near to their weights as they go: the largest remainders get what is left over, of equal
 * ones the first. Weights that are all 0 count alike.
 */
export function shared(amount: number, weights: readonly number[]): readonly number[] {
  const sum = weights.reduce((all, one) => all + one, 0);
  const parts = weights.map((weight) => (sum === 0 ? amount / weights.length : (amount * weight) / sum));
  const whole = parts.map(Math.floor);
  const rest = amount - whole.reduce((all, one) => all + one, 0);
  const order = parts.map((part, i) => ({ i, over: part - whole[i]! })).sort((a, b) => b.over - a.over || a.i - b.i);
  for (const { i } of order.slice(0, rest)) whole[i]! += 1;
  return whole;
}
