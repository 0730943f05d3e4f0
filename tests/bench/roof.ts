/** Seeded random roofs and menus for the benchmarks of cutting; lengths are quarter inches, prices cents. */
import type { CutProblem } from '../../language/cutting/index.ts';

const INCH = 4;
export const FOOT = 12 * INCH;
const END_LAP = 2 * INCH;

export type RollMenu = readonly (readonly [feet: number, cents: number])[];

export const MENUS: Readonly<Record<string, RollMenu>> = {
  'A 25+50': [
    [25, 3450],
    [50, 6100],
  ],
  'B 50': [[50, 6100]],
  'C 25..100': [
    [25, 3450],
    [50, 6100],
    [75, 8900],
    [100, 11400],
  ],
  'D 25': [[25, 3450]],
  'E 50+100': [
    [50, 6100],
    [100, 11800],
  ],
  'F odd': [
    [30, 3449],
    [50.5, 6137],
    [75, 8889],
  ],
};

export type Draw = (from: number, to: number) => number;

/** Whole numbers from a seeded generator (mulberry32), both ends included. */
export function drawing(seed: number): Draw {
  let state = seed;
  return (from, to) => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return from + (((mixed ^ (mixed >>> 14)) >>> 0) % (to - from + 1));
  };
}

/** The strips of one roof: edges, caps, joints, slides, framed openings, square frames of round ones, mounts. */
export function rig(draw: Draw): number[] {
  // 45 of 100 rigs are measured in whole feet, 35 in whole inches, 20 in quarter inches.
  const kind = draw(1, 100);
  const step = kind <= 45 ? FOOT : kind <= 80 ? INCH : 1;
  const side = (from: number, to: number): number =>
    draw(Math.ceil(from / step), Math.floor(to / step)) * step + 2 * END_LAP;
  const inches = (from: number, to: number): number => draw(from, to) * INCH + 2 * END_LAP;
  const pieces: number[] = [];
  const add = (length: number, count: number): void => {
    for (let n = 0; n < count; n++) pieces.push(length);
  };
  const long = Math.min(side(16 * FOOT, 41 * FOOT), 41 * FOOT);
  const across = inches(90, 102);
  add(long, draw(0, 1) * 2 + 2);
  add(across, 2 + draw(0, 2));
  for (let slide = draw(0, 4); slide > 0; slide--) {
    add(side(4 * FOOT, 15 * FOOT), 1);
    add(inches(18, 42), 2);
  }
  for (let opening = draw(3, 8); opening > 0; opening--) {
    add(inches(10, 36), 2);
    add(inches(10, 30), 2);
  }
  for (let round = draw(0, 2); round > 0; round--) add(inches(10, 14), 4);
  for (let mount = draw(0, 3); mount > 0; mount--) add(inches(10, 20), 1);
  return pieces;
}

/** The strips of many rigs of some models, rig by rig. `jitter`: every rig is measured apart, so far from its model. */
export function fleet(
  seed: number,
  { rigs, models, jitter }: { readonly rigs: number; readonly models: number; readonly jitter: number },
): number[][] {
  const draw = drawing(seed);
  const known = Array.from({ length: models }, () => rig(draw));
  return Array.from({ length: rigs }, (_, r) =>
    known[r % models]!.map((length) => Math.min(41 * FOOT, length + draw(-jitter, jitter))),
  );
}

export function problemOf(pieces: readonly number[], menu: RollMenu, offcuts: readonly number[] = []): CutProblem {
  return {
    pieces: pieces.map((length, i) => ({ id: `${i + 1}`, length })),
    rolls: menu.map(([feet, price]) => ({ id: `${feet} ft`, length: feet * FOOT, price })),
    offcuts: offcuts.map((length, i) => ({ id: `cut ${i + 1}`, length })),
    splice: { lap: END_LAP, leastPart: 12 * INCH },
  };
}

/** Median, 95th percentile and worst of some times, in milliseconds. */
export function quantiles(times: readonly number[], digits = 2): string {
  const sorted = times.toSorted((a, b) => a - b);
  const at = (share: number): string =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!.toFixed(digits);
  return `${at(0.5)} / ${at(0.95)} / ${at(1)}`;
}
