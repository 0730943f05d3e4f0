/**
 * The question and the answer of cutting tape from rolls. Every length is an integer in one unit that the caller chooses
 * (Rigseam passes nanometres), every price an integer in minor units of money. The unit cancels: only ratios matter.
 */

/** A strip of tape that the job needs in one run. `length` > 0. Pieces are given in laying order. */
export interface Piece {
  readonly id: string;
  readonly length: number;
}

/** A roll that can be bought in any number. `length` is the usable length (waste taken off), `price` >= 0. */
export interface RollOnSale {
  readonly id: string;
  readonly length: number;
  readonly price: number;
}

/** One length of tape on hand, free of charge. */
export interface Offcut {
  readonly id: string;
  readonly length: number;
}

/** What to cut from what. `budget.nodes` bounds each of the two searches (money, leftover); there is no clock. */
export interface CutProblem {
  readonly pieces: readonly Piece[];
  readonly rolls: readonly RollOnSale[];
  readonly offcuts: readonly Offcut[];
  /** `lap`: how far two parts of a spliced piece overlap; `leastPart`: no part is shorter. */
  readonly splice: { readonly lap: number; readonly leastPart: number };
  readonly budget?: { readonly nodes: number };
}

/** One cut: a whole piece, or part `k` of `n` of a spliced one, numbered from the front of the piece. */
export interface CutPart {
  readonly piece: string;
  readonly length: number;
  readonly part?: readonly [number, number];
}

/** One roll or offcut with what is cut from it, in laying order, and what is left. Rolls of one id count from 1. */
export interface StockCut {
  readonly stock: { readonly kind: 'roll' | 'offcut'; readonly id: string; readonly number: number };
  readonly length: number;
  readonly parts: readonly CutPart[];
  readonly left: number;
}

/** The cutting list, the purchase, and what is proven about both. */
export interface CutPlan {
  /** Offcuts that are cut first, then rolls; each in the order in which laying needs them. Untouched offcuts are left out. */
  readonly cuts: readonly StockCut[];
  readonly buy: readonly { readonly id: string; readonly count: number }[];
  readonly cost: number;
  /** No purchase with as few splices costs less. `cost === lowerBound` exactly when `proof` is not `none`. */
  readonly lowerBound: number;
  /**
   * `volume`: no cheaper purchase is long enough; `search`: none that is long enough can be cut to the pieces (shown by
   * prices or by trying); `none`: not proven within the budget.
   */
  readonly proof: 'volume' | 'search' | 'none';
  readonly splices: number;
  /** The longest single length left over, an untouched offcut included. */
  readonly longestLeft: number;
  /** No plan of this cost and as few splices leaves a longer one. */
  readonly longestLeftBound: number;
  readonly longestLeftProven: boolean;
  /** What first-fit-decreasing would have paid, as a yardstick. */
  readonly firstFitCost: number;
}

/** `no-rolls`: nothing is on sale and the offcuts do not hold these pieces; `cannot-splice`: no allowed splice makes them. */
export type CutResult =
  | { readonly ok: true; readonly plan: CutPlan }
  | { readonly ok: false; readonly reason: 'no-rolls' | 'cannot-splice'; readonly pieces: readonly string[] };

/** A count of search steps that is used up, so that the same problem always gets the same answer. */
export interface Purse {
  nodes: number;
}
