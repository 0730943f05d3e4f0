// Draws from a seed, so that the same seed gives the same workspace on every machine.

export interface Draw {
  /** A whole number from `low` to `high`, both included. */
  whole(low: number, high: number): number;
  pick<T>(from: readonly T[]): T;
  /** Whether something happens that happens with this probability. */
  chance(probability: number): boolean;
}

/** Mulberry32, as published by its author: 32 bits of state, even enough for invented records. */
export function draws(seed: number): Draw {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return {
    whole: (low, high) => low + Math.floor(next() * (high - low + 1)),
    pick: (from) => from[Math.floor(next() * from.length)] as (typeof from)[number],
    chance: (probability) => next() < probability,
  };
}
