import type { CutProblem } from './problem.ts';

/** A roll worth buying. `price` is in the menu's own money, see `Menu`. */
export interface MenuRoll {
  readonly id: string;
  readonly length: number;
  readonly price: number;
}

/**
 * The rolls worth buying, rising in length and in price, all priced above 0. If some roll is free, money is scaled by
 * `scale` and a free roll costs 1: so of the plans of least money the one with the fewest free rolls is the cheapest.
 */
export interface Menu {
  readonly rolls: readonly MenuRoll[];
  readonly scale: number;
}

/** Leaves out rolls with nothing usable and rolls that are no longer than another that costs no more. */
export function makeMenu(problem: CutProblem): Menu {
  const free = problem.rolls.some((roll) => roll.price === 0);
  // No plan uses more rolls than there are cuts, and no piece is cut into more parts than it has units of length.
  const cuts = problem.pieces.reduce((sum, piece) => sum + mostParts(problem, piece.length), 1);
  const scale = free ? cuts : 1;
  const byLength = problem.rolls
    .filter((roll) => roll.length > 0)
    .toSorted((a, b) => b.length - a.length || a.price - b.price);
  const rolls: MenuRoll[] = [];
  for (const { id, length, price } of byLength) {
    const own = price * scale + (price === 0 ? 1 : 0);
    if (rolls.length === 0 || own < rolls.at(-1)!.price) rolls.push({ id, length, price: own });
  }
  return { rolls: rolls.reverse(), scale };
}

function mostParts(problem: CutProblem, length: number): number {
  const longest = Math.max(...problem.rolls.map((roll) => roll.length));
  const { lap } = problem.splice;
  return longest > lap ? Math.max(1, Math.ceil((length - lap) / (longest - lap))) : 1;
}
