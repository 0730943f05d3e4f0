/**
 * The question and the answer of cutting tape from rolls. Every length is an integer in one unit that the caller chooses
 * (Rigseam passes nanometres), every price an integer in minor units of money. The unit cancels: only ratios matter.
 */

/** A strip of tape that the job needs in one run. `length` > 0. Pieces are given in laying order. */
export interface Piece {
  readonly id: string;
  readonly length: number;
  /** Stretches, measured from the front end, in which no splice should lie: openings, corners. */
  readonly keepOff?: readonly (readonly [from: number, to: number])[];
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
  /**
   * `lap`: how far two parts of a spliced piece overlap; `leastPart`: no part is shorter. `voluntary`: a piece that a
   * roll holds may be spliced too where that saves money; then money comes before the number of splices.
   */
  readonly splice: { readonly lap: number; readonly leastPart: number; readonly voluntary?: true };
  readonly budget?: { readonly nodes: number };
}

/** One cut: a whole piece, or part `k` of `n` of a spliced one, numbered from the front of the piece. */
export interface CutPart {
  readonly piece: string;
  readonly length: number;
  readonly part?: readonly [number, number];
}

/** Where two parts of a piece overlap. Part 1 is the forward one, and each part lies over the next. */
export interface Joint {
  readonly piece: string;
  /** Between parts `after` and `after + 1`. */
  readonly after: number;
  /** The middle of the lap, measured from the front end of the piece. */
  readonly at: number;
  /** It lies in a stretch that should have no splice: the stock has no slack to move it out. */
  readonly inKeepOff: boolean;
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
   * `volume`: no cheaper purchase is long enough; `lp`: the bound of the linear program over all ways to cut a roll says
   * so; `search`: none that is long enough can be cut to the pieces (shown by prices or by trying); `none`: not proven
   * within the budget.
   */
  readonly proof: 'volume' | 'lp' | 'search' | 'none';
  readonly splices: number;
  /** Every splice and where it lies, in laying order. */
  readonly joints: readonly Joint[];
  /** What one splice more would save, where splices are not allowed for money's sake and one is known to save some. */
  readonly oneSpliceSaves?: number;
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
