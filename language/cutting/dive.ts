import { demandOf, type Master, makePricer, type Pattern, patternOf } from './columns.ts';
import type { Purse } from './problem.ts';
import type { Load } from './task.ts';

/** Patterns are asked for at prices between those of the program, which jump, and those of the best bound so far. */
const CALM = 0.6;
/** Rounds of pricing at the start, and after each step of the dive. */
const ROUNDS = 400;
const ROUNDS_BETWEEN = 6;

/**
 * Column generation: adds patterns until the bound of the linear program cannot rise to another rung of money.
 *
 * @param rung the least money of any purchase that is not below a bound
 * @param enough a bound that ends the search
 * @returns money below which the pieces cannot be cut
 */
export function raiseBound(master: Master, rung: (bound: number) => number, enough: number, purse: Purse): number {
  const { task, shelves, program } = master;
  const price = makePricer(task, shelves, task.counts, purse);
  const rate = Math.min(...task.rolls.map((roll) => (roll.cap > 0 ? roll.price / roll.cap : Number.POSITIVE_INFINITY)));
  let centre = Float64Array.from([
    ...task.lengths.map((length) => length * rate),
    ...shelves.map(({ cap }) => cap * rate),
  ]);
  let highest = 0;
  let lower = 0;
  let before = Number.POSITIVE_INFINITY;
  let weight = CALM;
  for (let round = 0; round < ROUNDS && purse.nodes > 0; round++) {
    purse.nodes -= solveSteps(master);
    const { uses, duals } = program.solve();
    const money = moneyOf(master, uses);
    if (rung(Math.floor(money * (1 - 1e-9))) <= lower) break;
    const asked = centre.map((own, i) => weight * own + (1 - weight) * duals[i]!);
    const { bound, better } = price(asked);
    if (bound > highest) {
      highest = bound;
      centre = asked;
      lower = Math.max(lower, rung(bound));
    }
    if (lower >= enough || (better.length === 0 && weight === 0)) break;
    master.add(better);
    // Prices that brought nothing new are left for those of the program itself.
    weight = better.length === 0 || money >= before * (1 - 1e-12) ? 0 : CALM;
    before = money;
  }
  return lower;
}

/** About what one solution of the program takes, in steps of the search. */
function solveSteps({ task, shelves }: Master): number {
  return (task.lengths.length + shelves.length) ** 2;
}

function moneyOf({ task, patterns }: Master, uses: ArrayLike<number>): number {
  return patterns.reduce((sum, { from, on }, i) => sum + (from === 'roll' ? uses[i]! * task.rolls[on]!.price : 0), 0);
}

/**
 * Rounds the linear program to whole patterns, step by step: what is used once or more is cut, the rest is solved again
 * with new patterns; where nothing is used once, the largest fractions are.
 *
 * @param boldness the share of the patterns used in part that is used whole when none is used once or more
 * @param until the total length, in ticks, of the pieces that may be left
 * @returns loads in the order in which they were fixed; the last ones are the least sure
 */
export function dive(master: Master, boldness: number, until: number, purse: Purse): Load[] {
  const { task, program, patterns } = master;
  const left = [...task.counts];
  const shelves = master.shelves.map(({ cap, offcuts }) => ({ cap, offcuts: [...offcuts] }));
  const loads: Load[] = [];
  let open = task.totalTicks;

  // An empty purse ends the search for new patterns, not the dive: the patterns known are still worth more than a guess.
  while (open > until) {
    program.demand(demandOf(left, shelves));
    const price = makePricer(task, shelves, left, purse);
    purse.nodes -= solveSteps(master);
    let { uses, duals } = program.solve();
    for (let round = 0; round < ROUNDS_BETWEEN && purse.nodes > 0; round++) {
      const { better } = price(duals);
      if (better.length === 0) break;
      master.add(better);
      purse.nodes -= solveSteps(master);
      ({ uses, duals } = program.solve());
    }
    const used = patterns.flatMap((pattern, i) => (uses[i]! > 1e-6 ? [{ pattern, times: uses[i]! + 1e-6 }] : []));
    let cut = 0;
    for (const { pattern, times } of used) cut += apply(pattern, Math.floor(times));
    if (cut === 0) {
      used.sort((a, b) => b.times - a.times);
      const most = Math.max(1, Math.ceil(used.length * boldness));
      for (const { pattern } of used) if (cut < most && open > until) cut += apply(pattern, 1);
    }
    if (cut === 0) break;
  }
  return loads;

  /** Cuts a pattern so many times, as long as all its pieces are still wanted. */
  function apply(pattern: Pattern, times: number): number {
    const { from, on, kinds, counts } = pattern;
    let done = 0;
    while (done < times && open > until && kinds.every((kind, i) => left[kind]! >= counts[i]!)) {
      const index = from === 'roll' ? on : shelves[on]!.offcuts.pop();
      if (index === undefined) break;
      const load = {
        kind: from === 'roll' ? ('roll' as const) : ('offcut' as const),
        index,
        counts: task.sizes.map(() => 0),
      };
      for (const [i, kind] of kinds.entries()) {
        load.counts[kind] = counts[i]!;
        left[kind]! -= counts[i]!;
        open -= counts[i]! * task.lengths[kind]!;
      }
      loads.push(load);
      done++;
    }
    return done;
  }
}

/** Makes the patterns of plans found so far known to the master. */
export function seed(master: Master, loads: readonly Load[]): void {
  master.add(loads.map((load) => patternOf(master.shelves, load)));
}
