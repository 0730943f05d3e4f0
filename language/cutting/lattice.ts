import { gcd } from './task.ts';

/** The least money `>= from` that any purchase of at least `need` length costs. */
export type LeastMoney = (from: number, need: number) => number;

/** Prices with more residues than this (a roll of 10,000.00 with a step of one cent) are bounded by their rate alone. */
const MOST_RESIDUES = 1_000_000;

/**
 * The money ladder for purchases of any size, in memory that does not grow with the money. Every purchase is some rolls
 * of the best value and some others. What the others cost leaves a residue modulo the best roll's price, and `lost[r]`
 * is the least length (times that price) that rolls with residue `r` fall short of the best value; one roll after the
 * other is walked round the residues (Boecker and Liptak's round robin for the money-changing problem). So money `z`
 * buys at most `(z * length - lost[z mod price]) / price`. For money below some hundred rolls this may be more than can
 * be bought, so it is a lower bound on the money there, and exact above.
 *
 * @param rolls `length` usable, in whole units so small that length times price times rolls stays a safe integer;
 *   `exact` false says that they may not, and the bound is rounded down accordingly
 */
export function leastMoney(
  rolls: readonly { readonly length: number; readonly price: number }[],
  exact: boolean,
): LeastMoney {
  const usable = rolls.filter((roll) => roll.length > 0);
  const best = usable.reduce((a, b) => (b.length * a.price > a.length * b.price ? b : a));
  const step = usable.reduce((sum, roll) => gcd(sum, roll.price), 0);
  const residues = best.price / step;
  const lost = residues > MOST_RESIDUES ? undefined : lostOf();

  return (from, need) => {
    const worth = Math.max(0, exact ? need : Math.floor(need * (1 - 1e-12))) * best.price;
    if (!lost) return Math.max(from, Math.ceil((worth / best.length) * (1 - 1e-12)));
    let least = Number.POSITIVE_INFINITY;
    for (let r = 0; r < residues; r++) {
      const bound = Math.max(from, Math.ceil((worth + lost[r]!) / best.length));
      const rounds = Math.ceil((bound - r * step) / best.price);
      least = Math.min(least, r * step + Math.max(0, rounds) * best.price);
    }
    return least;
  };

  function lostOf(): Float64Array {
    const table = new Float64Array(residues).fill(Number.POSITIVE_INFINITY);
    table[0] = 0;
    for (const roll of usable) {
      const shift = (roll.price / step) % residues;
      if (shift === 0) continue;
      const less = best.length * roll.price - roll.length * best.price;
      const cycles = gcd(shift, residues);
      for (let start = 0; start < cycles; start++) {
        // Twice round: the first round comes past the least entry of the cycle, the second carries it to all others.
        for (let n = 0, r = start; n < (2 * residues) / cycles; n++) {
          const next = (r + shift) % residues;
          table[next] = Math.min(table[next]!, table[r]! + less);
          r = next;
        }
      }
    }
    return table;
  }
}
