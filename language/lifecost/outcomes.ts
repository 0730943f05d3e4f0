// A distribution of amounts on an evenly spaced grid of its own.

/** Chances of `origin`, `origin + step`, `origin + 2 step`, ...; they add up to 1. */
export interface Outcomes {
  readonly origin: number;
  readonly step: number;
  readonly chances: Float64Array;
}

/** Chance that is cut off at each end of a distribution and put on its last cell. */
const TAIL = 1e-12;

/** One certain amount. */
export function certainly(amount: number, step: number): Outcomes {
  return { origin: amount, step, chances: Float64Array.of(1) };
}

/** All amounts more by `amount`: exact, the grid moves along. */
export function shifted(outcomes: Outcomes, amount: number): Outcomes {
  return { ...outcomes, origin: outcomes.origin + amount };
}

/**
 * One of several distributions of the same step, by chance. The grid is that of the likeliest; amounts of the others are
 * shared between their two neighbours on it, so that the mean stays exact and no amount moves by a whole step.
 */
export function oneOf(parts: readonly { readonly chance: number; readonly outcomes: Outcomes }[]): Outcomes {
  const [first, ...others] = [...parts].sort((a, b) => b.chance - a.chance);
  if (first === undefined) throw new RangeError('nothing to mix');
  const { origin, step } = first.outcomes;
  if (others.length === 0) return first.outcomes;
  const places = parts.map(({ chance, outcomes }) => {
    const place = (outcomes.origin - origin) / step;
    const near = Math.round(place);
    // A place on the grid but for rounding needs no sharing.
    const exact = Math.abs(place - near) < 1e-9 ? near : place;
    return { chance, chances: outcomes.chances, cell: Math.floor(exact), over: exact - Math.floor(exact) };
  });
  const low = Math.min(...places.map(({ cell }) => cell));
  const high = Math.max(...places.map(({ cell, chances }) => cell + chances.length));
  const mixed = new Float64Array(high - low + 1);
  for (const { chance, chances, cell, over } of places) {
    const [here, next, at] = [chance * (1 - over), chance * over, cell - low];
    for (let i = 0; i < chances.length; i++) {
      mixed[at + i]! += here * chances[i]!;
      mixed[at + i + 1]! += next * chances[i]!;
    }
  }
  return trimmed({ origin: origin + low * step, step, chances: mixed });
}

/** The sum of two independent amounts of the same step. */
export function together(a: Outcomes, b: Outcomes): Outcomes {
  const [long, short] = a.chances.length < b.chances.length ? [b.chances, a.chances] : [a.chances, b.chances];
  const chances = new Float64Array(long.length + short.length - 1);
  for (let i = 0; i < short.length; i++) {
    const chance = short[i]!;
    if (chance === 0) continue;
    for (let j = 0; j < long.length; j++) chances[i + j]! += chance * long[j]!;
  }
  return trimmed({ origin: a.origin + b.origin, step: a.step, chances });
}

export function meanOutcome({ origin, step, chances }: Outcomes): number {
  return origin + step * chances.reduce((sum, chance, i) => sum + chance * i, 0);
}

/** The least amount that is not exceeded with chance `p`, from 0 to 1. */
export function outcomeQuantile(p: number, { origin, step, chances }: Outcomes): number {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`no chance: ${p}`);
  let upTo = 0;
  const at = chances.findIndex((chance) => {
    upTo += chance;
    return chance > 0 && upTo >= p - 1e-9;
  });
  return origin + step * (at < 0 ? chances.length - 1 : at);
}

/**
 * Chance that A is less than B where the two are drawn **independently**; amounts within `tie` of each other (half a cent)
 * count half. Whatever both have in common (prices, the day rate) must be fixed; a life that both share is drawn twice.
 */
export function chanceLess(a: Outcomes, b: Outcomes, tie = 0.005): number {
  let [less, below, upTo, low, high] = [0, 0, 0, 0, 0];
  for (const [i, chance] of a.chances.entries()) {
    const amount = a.origin + a.step * i;
    // below: chance of B < amount - tie; upTo: of B <= amount + tie.
    while (low < b.chances.length && b.origin + b.step * low < amount - tie) below += b.chances[low++]!;
    while (high < b.chances.length && b.origin + b.step * high <= amount + tie) upTo += b.chances[high++]!;
    less += chance * (1 - (below + upTo) / 2);
  }
  return Math.min(1, Math.max(0, less));
}

function trimmed({ origin, step, chances }: Outcomes): Outcomes {
  let [first, last, low, high] = [0, chances.length - 1, 0, 0];
  while (first < last && low + chances[first]! < TAIL) low += chances[first++]!;
  while (last > first && high + chances[last]! < TAIL) high += chances[last--]!;
  const kept = chances.slice(first, last + 1);
  kept[0]! += low;
  kept[kept.length - 1]! += high;
  return { origin: origin + first * step, step, chances: kept };
}
