// Labels that would lie on each other are moved apart.

/**
 * Places for labels, as near as may be to those wanted, in the same order, `gap` apart and between `low` and `high`. If they
 * cannot all have room, they share what there is.
 */
export function spread(wanted: readonly number[], gap: number, low: number, high: number): readonly number[] {
  const apart = wanted.length > 1 ? Math.min(gap, (high - low) / (wanted.length - 1)) : gap;
  const order = wanted.map((place, i) => ({ place, i })).sort((a, b) => a.place - b.place || a.i - b.i);
  const placed: number[] = [];
  for (const [k, { place }] of order.entries())
    placed.push(Math.max(place, low, k === 0 ? low : (placed[k - 1] as number) + apart));
  for (let k = placed.length - 1; k >= 0; k--) {
    const most = k === placed.length - 1 ? high : (placed[k + 1] as number) - apart;
    placed[k] = Math.min(placed[k] as number, most);
  }
  const out: number[] = [];
  for (const [k, { i }] of order.entries()) out[i] = placed[k] as number;
  return out;
}
