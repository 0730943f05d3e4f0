/**
 * Times the purchase on seeded random rigs and prints p50, p95 and the worst, the share proven, and what the plan saves
 * against first-fit-decreasing. Run it with `node tests/bench/cutting.ts [rigs per menu]`; lengths are quarter inches.
 */
import { type CutPlan, type CutProblem, cutRolls } from '../../language/cutting/index.ts';
import { makeMenu } from '../../language/cutting/menu.ts';
import { makeStage } from '../../language/cutting/plan.ts';
import { spliceChoices } from '../../language/cutting/splices.ts';
import { cheapestStages } from '../../language/cutting/stages.ts';

const INCH = 4;
const FOOT = 12 * INCH;
const END_LAP = 2 * INCH;
const NODES = 200_000;

const MENUS: Record<string, readonly (readonly [feet: number, cents: number])[]> = {
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

type Draw = (from: number, to: number) => number;

/** Whole numbers from a seeded generator (mulberry32), both ends included. */
function drawing(seed: number): Draw {
  let state = seed;
  return (from, to) => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return from + (((mixed ^ (mixed >>> 14)) >>> 0) % (to - from + 1));
  };
}

/** The strips of one roof: edges, caps, joints, slides, framed openings, square frames of round ones, mounts. */
function rig(draw: Draw): number[] {
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

function rigProblem(seed: number, menu: readonly (readonly [number, number])[], offcuts: number): CutProblem {
  const draw = drawing(seed);
  return {
    pieces: rig(draw).map((length, i) => ({ id: `${i + 1}`, length })),
    rolls: menu.map(([feet, price]) => ({ id: `${feet} ft`, length: feet * FOOT, price })),
    offcuts: Array.from({ length: offcuts }, (_, i) => ({ id: `cut ${i + 1}`, length: draw(3 * FOOT, 22 * FOOT) })),
    splice: { lap: END_LAP, leastPart: 12 * INCH },
    budget: { nodes: NODES },
  };
}

/** Milliseconds that the purchase alone takes: the first two aims. */
function timePurchase(problem: CutProblem): number {
  const start = performance.now();
  const menu = makeMenu(problem);
  const longest = menu.rolls.at(-1)!.length;
  const long = problem.pieces.flatMap(({ length }, piece) => (length > longest ? [{ piece, length }] : []));
  const { choices } = spliceChoices(long, { ...problem, rolls: menu.rolls });
  cheapestStages(
    choices.map((choice) => makeStage(problem, menu, choice)),
    { nodes: NODES },
  );
  return performance.now() - start;
}

function timePlan(problem: CutProblem): { plan: CutPlan; ms: number } {
  const start = performance.now();
  const result = cutRolls(problem);
  const ms = performance.now() - start;
  if (!result.ok) throw new Error(`rig has no plan: ${result.reason}`);
  return { plan: result.plan, ms };
}

function quantiles(times: readonly number[]): string {
  const sorted = times.toSorted((a, b) => a - b);
  const at = (share: number): string =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!.toFixed(2);
  return `${at(0.5)} / ${at(0.95)} / ${at(1)}`;
}

const count = Number(process.argv[2] ?? 100);
for (let seed = 0; seed < 40; seed++) timePlan(rigProblem(seed, MENUS['A 25+50']!, seed % 4));

const rows: Record<string, Record<string, string>> = {};
const all: { plan: CutPlan; ms: number; purchase: number }[] = [];
for (const [name, menu] of Object.entries(MENUS)) {
  for (const offcuts of [0, 3]) {
    const runs = Array.from({ length: count }, (_, i) => {
      const problem = rigProblem(1000 + i, menu, offcuts);
      return { purchase: timePurchase(problem), ...timePlan(problem) };
    });
    all.push(...runs);
    rows[`${name}, ${offcuts} offcuts`] = summary(runs);
  }
}
rows.all = summary(all);
console.table(rows);

function summary(runs: readonly { plan: CutPlan; ms: number; purchase: number }[]): Record<string, string> {
  const share = (holds: (plan: CutPlan) => boolean): string =>
    `${((100 * runs.filter(({ plan }) => holds(plan)).length) / runs.length).toFixed(1)} %`;
  const cost = runs.reduce((sum, { plan }) => sum + plan.cost, 0);
  const firstFit = runs.reduce((sum, { plan }) => sum + plan.firstFitCost, 0);
  return {
    'purchase ms p50/p95/max': quantiles(runs.map((run) => run.purchase)),
    'all aims ms p50/p95/max': quantiles(runs.map((run) => run.ms)),
    'money proven': share((plan) => plan.proof !== 'none'),
    'by volume': share((plan) => plan.proof === 'volume'),
    'leftover proven': share((plan) => plan.longestLeftProven),
    'first fit beaten': share((plan) => plan.cost < plan.firstFitCost),
    saved: `${(100 * (1 - cost / firstFit)).toFixed(2)} %`,
  };
}
