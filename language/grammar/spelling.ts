// Nearest spelling, for "did you mean".

/** Damerau-Levenshtein distance (optimal string alignment), given up as soon as it must exceed `limit`. */
export function distance(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) > limit) return limit + 1;
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    let least = i;
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let cost = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        cost = Math.min(cost, beforeLast[j - 2]! + 1);
      row.push(cost);
      if (cost < least) least = cost;
    }
    if (least > limit) return limit + 1;
    beforeLast = last;
    last = row;
  }
  return last[b.length]!;
}

/** The candidate nearest to a word, when it is near enough to be meant: one slip in a short word, two in a long one. */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  const limit = word.length <= 2 ? 0 : word.length <= 5 ? 1 : 2;
  const lower = word.toLowerCase();
  let best: string | undefined;
  let bestCost = limit + 1;
  for (const candidate of candidates) {
    if (candidate === word) continue;
    const cost =
      candidate.toLowerCase() === lower ? 0 : distance(lower, candidate.toLowerCase(), Math.min(limit, bestCost));
    if (cost < bestCost) {
      best = candidate;
      bestCost = cost;
    }
  }
  return bestCost <= limit ? best : undefined;
}
