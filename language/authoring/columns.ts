// The columns of lines that are written for a person: as in the worked example of the language.

/** What the first word of a statement is padded to inside a rig. */
export const column = 13;
/** That of a plan. */
export const planColumn = 9;

/** The column behind a run of names: rounded up to multiples of 4, so that one longer name seldom moves its neighbours. */
export const nextColumn = (names: readonly string[]): number =>
  Math.ceil((Math.max(0, ...names.map((name) => name.length)) + 1) / 4) * 4;
