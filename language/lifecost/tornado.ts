// Which of the inputs moves the result most.

/** What an input may be. */
export interface Spread {
  readonly low: number;
  readonly base: number;
  readonly high: number;
}

/** The result with one input at its ends and all others at their base. */
export interface Bar<Name extends string = string> {
  readonly name: Name;
  readonly input: Spread;
  readonly atLow: number;
  readonly atHigh: number;
  /** How far the ends lie apart, never negative. */
  readonly swing: number;
  /** Whether the result changes its sign between low, base and high: this input alone decides which is cheaper. */
  readonly decides: boolean;
}

/** A tornado: the result at the base of all inputs, and a bar for each input, the widest first. */
export interface Tornado<Name extends string = string> {
  readonly base: number;
  readonly bars: readonly Bar<Name>[];
}

/** Varies one input at a time. Equal swings stay in the order of the inputs. */
export function tornado<Name extends string>(
  inputs: Readonly<Record<Name, Spread>>,
  result: (values: Readonly<Record<Name, number>>) => number,
): Tornado<Name> {
  const names = Object.keys(inputs) as Name[];
  const bases = Object.fromEntries(names.map((name) => [name, inputs[name].base])) as Record<Name, number>;
  const base = result(bases);
  const bars = names.map((name): Bar<Name> => {
    const input = inputs[name];
    const [atLow, atHigh] = [result({ ...bases, [name]: input.low }), result({ ...bases, [name]: input.high })];
    const values = [atLow, base, atHigh];
    const decides = Math.min(...values) < 0 && Math.max(...values) > 0;
    return { name, input, atLow, atHigh, swing: Math.max(...values) - Math.min(...values), decides };
  });
  return { base, bars: bars.sort((a, b) => b.swing - a.swing) };
}
