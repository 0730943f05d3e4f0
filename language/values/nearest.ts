/**
 * The candidate that is most like a mistyped word, or undefined if none is near: at most one slip (a letter wrong,
 * missing, too many, or two swapped) in words of up to four letters, two in longer ones. Case counts as half a slip.
 */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  let best: string | undefined;
  let least = (word.length <= 4 ? 1 : 2) + 0.25;
  for (const candidate of candidates) {
    if (Math.abs(candidate.length - word.length) > 2 || candidate.length <= least) continue;
    const caseOff = candidate.toLowerCase() === word.toLowerCase() ? 0 : 0.25;
    const distance = slips(word.toLowerCase(), candidate.toLowerCase()) + caseOff;
    if (distance < least || (distance === least && best === undefined)) {
      best = candidate;
      least = distance;
    }
  }
  return best;
}

/** Optimal string alignment distance: insertions, deletions, substitutions and swaps of neighbours. */
function slips(a: string, b: string): number {
  let before: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let cost = Math.min(above[j]! + 1, row[j - 1]! + 1, above[j - 1]! + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) cost = Math.min(cost, before[j - 2]! + 1);
      row.push(cost);
    }
    before = above;
    above = row;
  }
  return above[b.length]!;
}
