// What a schedule costs: figures that are compared one after the other, the gravest first.

export type Cost = readonly number[];

/** Below this two figures are the same: what is below is noise of the arithmetic. */
const NOTHING = 1e-9;

/** Negative if the first one is better. */
export function compareCost(a: Cost, b: Cost): number {
  for (const [i, one] of a.entries()) {
    const difference = one - (b[i] ?? 0);
    if (Math.abs(difference) > NOTHING) return difference;
  }
  return 0;
}
