import { describe, expect, it } from 'vitest';
import { cutRolls } from '../../language/cutting/index.ts';
import { faultsOf } from './brute.ts';
import { planOf, problemOf } from './figures.ts';

/** Check case A of the trade notes, 3.7 (invented trailer, worked by hand and by exhaustive search): inches and cents. */
const CASE_A = [316, 316, 100, 100, 100, 106, 34, 34, 76, 28, 28];
const STRIP: [number, number][] = [
  [600, 5800],
  [300, 3100],
];
const NANOMETRES_PER_INCH = 25_400_000;

describe('check case A', () => {
  it('buys two 50 ft rolls and leaves 60 in with the 9 ft offcut', () => {
    const problem = problemOf(CASE_A, STRIP, [108]);
    const plan = planOf(problem);
    expect(faultsOf(problem, plan)).toEqual([]);
    expect(plan).toMatchObject({
      buy: [{ id: 'r1', count: 2 }],
      cost: 11600,
      lowerBound: 11600,
      proof: 'volume',
      splices: 0,
      longestLeft: 60,
      longestLeftProven: true,
    });
  });

  it('buys one 25 ft roll more without the offcut and leaves 256 in', () => {
    const problem = problemOf(CASE_A, STRIP);
    const plan = planOf(problem);
    expect(faultsOf(problem, plan)).toEqual([]);
    expect(plan).toMatchObject({
      buy: [
        { id: 'r1', count: 2 },
        { id: 'r2', count: 1 },
      ],
      cost: 14700,
      proof: 'volume',
      longestLeft: 256,
      longestLeftProven: true,
    });
  });

  it('says the same in nanometres', () => {
    const long = (inches: number) => inches * NANOMETRES_PER_INCH;
    const problem = problemOf(
      CASE_A.map(long),
      STRIP.map(([length, price]) => [long(length), price]),
      [long(108)],
    );
    const plan = planOf(problem);
    expect(faultsOf(problem, plan)).toEqual([]);
    expect(plan).toMatchObject({ cost: 11600, longestLeft: long(60), longestLeftProven: true });
  });
});

it('makes two 41 ft sides, a rear and a two-strip front of 8 ft from two 50 ft and one 25 ft roll, and nothing is cheaper', () => {
  const problem = problemOf([496, 496, 100, 100, 100], STRIP);
  const plan = planOf(problem);
  expect(faultsOf(problem, plan)).toEqual([]);
  expect(plan.buy).toEqual([
    { id: 'r1', count: 2 },
    { id: 'r2', count: 1 },
  ]);
  expect(plan).toMatchObject({ cost: 14700, lowerBound: 14700, splices: 0 });
  // All cheaper purchases: without two 50 ft rolls the sides have no room, two alone leave one 100 in strip over.
});

it('pays for a second 50 ft roll before it splices one of two 28 ft edges', () => {
  // Trade notes 2.3: 50 + 25 ft would cost 95.50 and splice an edge that fits a roll.
  const plan = planOf(
    problemOf(
      [340, 340],
      [
        [600, 6100],
        [300, 3450],
      ],
    ),
  );
  expect(plan).toMatchObject({ cost: 12200, splices: 0, buy: [{ id: 'r1', count: 2 }] });
});

describe('what a person follows', () => {
  it('lists offcuts first, then rolls, each in laying order', () => {
    const plan = planOf(problemOf(CASE_A, STRIP, [108]));
    expect(plan.cuts.map((cut) => [cut.stock.kind, cut.stock.id, cut.stock.number])).toEqual([
      ['offcut', 'o1', 1],
      ['roll', 'r1', 1],
      ['roll', 'r1', 2],
    ]);
    const places = plan.cuts.map((cut) => cut.parts.map((part) => Number(part.piece.slice(1))));
    for (const cut of places) expect(cut).toEqual([...cut].sort((a, b) => a - b));
    expect(places[1]![0]).toBeLessThan(places[2]![0]!);
  });

  it('numbers the parts of a spliced piece from its front', () => {
    const problem = problemOf([496, 90], [[300, 3450]], [], { lap: 2, leastPart: 12 });
    const plan = planOf(problem);
    expect(faultsOf(problem, plan)).toEqual([]);
    expect(plan.cuts.map((cut) => cut.parts)).toEqual([
      [{ piece: 'p1', length: 300, part: [1, 2] }],
      [
        { piece: 'p1', length: 198, part: [2, 2] },
        { piece: 'p2', length: 90 },
      ],
    ]);
    expect(plan).toMatchObject({ splices: 1, cost: 6900, longestLeft: 12, longestLeftProven: true });
  });

  it('shortens a filled roll rather than leave a part below the least', () => {
    const problem = problemOf([305], [[300, 3450]], [], { lap: 2, leastPart: 12 });
    const plan = planOf(problem);
    expect(faultsOf(problem, plan)).toEqual([]);
    expect(plan.cuts.map((cut) => cut.parts[0]!.length)).toEqual([295, 12]);
    expect(plan).toMatchObject({ cost: 6900, proof: 'volume', longestLeft: 288 });
  });

  it('does not splice a piece that only an offcut holds', () => {
    const problem = problemOf([496, 30], [[300, 3450]], [500, 40]);
    const plan = planOf(problem);
    expect(faultsOf(problem, plan)).toEqual([]);
    expect(plan).toMatchObject({ splices: 0, cost: 0, longestLeft: 10 });
  });
});

it('does not splice two pieces that one long offcut holds', () => {
  const problem = problemOf([496, 496, 30], [[300, 3450]], [1000]);
  const plan = planOf(problem);
  expect(faultsOf(problem, plan)).toEqual([]);
  expect(plan).toMatchObject({ splices: 0, cost: 3450, longestLeft: 270 });
});

describe('edges', () => {
  it('buys nothing for no pieces and keeps the offcut', () => {
    const plan = planOf(problemOf([], STRIP, [15_240_000_000, 70]));
    expect(plan).toMatchObject({ cuts: [], buy: [], cost: 0, proof: 'volume', longestLeft: 15_240_000_000 });
    expect(plan.longestLeftProven).toBe(true);
  });

  it('names the pieces that nothing on hand holds when nothing is on sale', () => {
    const problem = problemOf([90, 40, 50], [], [100]);
    expect(cutRolls(problem)).toEqual({ ok: false, reason: 'no-rolls', pieces: ['p2', 'p3'] });
    expect(planOf(problemOf([60, 40], [], [100]))).toMatchObject({ cost: 0, longestLeft: 0, splices: 0 });
  });

  it('treats a roll with nothing usable as not on sale', () => {
    expect(cutRolls(problemOf([10], [[0, 500]]))).toEqual({ ok: false, reason: 'no-rolls', pieces: ['p1'] });
    expect(planOf(problemOf([10], [[-6, 500], [20, 900]])).cost).toBe(900); // biome-ignore format: one line reads better
  });

  it('cannot splice from rolls that the lap or the least part uses up', () => {
    const short = problemOf([20, 4], [[5, 100]], [], { lap: 5, leastPart: 1 });
    expect(cutRolls(short)).toEqual({ ok: false, reason: 'cannot-splice', pieces: ['p1'] });
    const least = problemOf([20], [[15, 100]], [], { lap: 2, leastPart: 12 });
    expect(cutRolls(least)).toEqual({ ok: false, reason: 'cannot-splice', pieces: ['p1'] });
  });

  it('splices every piece when all rolls are shorter', () => {
    const problem = problemOf([410, 410, 410], [[168, 2000]], [], { lap: 2, leastPart: 12 });
    const plan = planOf(problem);
    expect(faultsOf(problem, plan)).toEqual([]);
    expect(plan).toMatchObject({ splices: 6, cost: 16000 });
  });

  it('says so when lengths are too fine for its tables', () => {
    const problem = problemOf([3_160_000_001, 1_000_000_007, 1_060_000_003], [[6_000_000_000, 5800]]);
    const plan = planOf(problem);
    expect(faultsOf(problem, plan)).toEqual([]);
    expect(plan).toMatchObject({ cost: 5800, proof: 'volume', longestLeft: 779_999_989, longestLeftProven: true });
  });

  it('admits an unproven answer when the budget is used up', () => {
    // Twenty pieces of more than a third of the roll need ten rolls; with the short ones the volume says eight.
    const lengths = [...Array.from({ length: 20 }, (_, i) => 335 + i), 290, 291, 292];
    const problem = { ...problemOf(lengths, [[1000, 100]]), budget: { nodes: 0 } };
    const plan = planOf(problem);
    expect(faultsOf(problem, plan)).toEqual([]);
    expect(plan).toMatchObject({ cost: 1000, lowerBound: 800, proof: 'none' });
    expect(planOf({ ...problem, budget: { nodes: 100_000 } })).toMatchObject({ cost: 1000, proof: 'search' });
  });

  it('refuses figures that no caller should pass', () => {
    expect(() => cutRolls(problemOf([0], STRIP))).toThrow(RangeError);
    expect(() => cutRolls(problemOf([1.5], STRIP))).toThrow(RangeError);
    expect(() => cutRolls(problemOf([1], [[10, -1]]))).toThrow(RangeError);
  });
});
