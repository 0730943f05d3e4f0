/**
 * What the engine needs of a solver of linear programs. It is handed in, so that the engine stays pure and runs, with a
 * weaker bound, where there is none.
 */
export interface LinearPrograms {
  /**
   * Runs `use` with a covering program: least `sum price * x` where `x >= 0` and every row `i` gets at least `demand[i]`.
   * The program is given back when `use` returns.
   *
   * @returns what `use` returns, or undefined when the solver gave up: then the engine goes on without it
   */
  covering<T>(demand: ArrayLike<number>, use: (program: CoveringProgram) => T): T | undefined;
}

/** One way to use up a roll or an offcut: what it costs and how much of each row it covers, other rows 0. */
export interface Column {
  readonly price: number;
  readonly rows: readonly number[];
  readonly values: readonly number[];
}

/** A program that is solved again and again, with more columns or other demands. Numbers of columns count from 0. */
export interface CoveringProgram {
  /** Adds columns that may be used any number of times. */
  add(columns: readonly Column[]): void;
  /** Changes what the rows must get. */
  demand(of: ArrayLike<number>): void;
  /** Solves to the optimum: how often each column is used, and the price of one more of each row. */
  solve(): { readonly uses: ArrayLike<number>; readonly duals: ArrayLike<number> };
}
