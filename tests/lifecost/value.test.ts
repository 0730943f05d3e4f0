import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Choice,
  certain,
  chanceCheaper,
  coatings,
  type Frame,
  meanOutcome,
  once,
  outcomeQuantile,
  renewed,
  threePoint,
  valued,
  type Work,
  type Yearly,
  yearlyChance,
  yearlyLife,
} from '../../language/lifecost/index.ts';
import { anyCourse, anyFrame, anyYearly } from './arbitraries.ts';
import { everyRun, trueQuantile } from './enumeration.ts';
import { dice, runOf, sample, yearlyRun } from './simulation.ts';

const work = (title: string, cost: number): Work => ({ title, material: cost, labour: 0, days: 0 });
const only = (stream: Choice['streams'][number]): Choice => ({ name: stream.title, streams: [stream] });
const frame: Frame = { years: 30, rate: 0.03, timing: 'end', dayRate: 120 };

const coatLife = threePoint(2, 3, 5);
const tapeLife = threePoint(8, 15, 25);
const coats = coatings({
  title: 'coats',
  recoat: { title: 'recoat', material: 240, labour: 320, days: 1 },
  strip: { title: 'strip', material: 300, labour: 1280, days: 4 },
  life: yearlyLife(coatLife),
  limit: 3,
  now: 1,
});
const tape = renewed(
  'tape',
  { work: { title: 'tape', material: 230, labour: 320, days: 2 }, life: yearlyLife(tapeLife) },
  { work: { title: 'new tape', material: 250, labour: 700, days: 3 }, life: yearlyLife(tapeLife) },
);
const touchUp: Yearly = {
  kind: 'yearly',
  title: 'touch-up',
  work: { title: 'touch-up', material: 240, labour: 320, days: 1 },
  share: threePoint(0.1, 0.15, 0.25),
  drawn: 'each year',
};

describe('the distribution of the present value', () => {
  it('has chances that add up to 1, the exact mean, the exact deviation but for the grid, and quantiles in order', () => {
    fc.assert(
      fc.property(
        fc.array(fc.oneof(anyCourse, anyYearly), { minLength: 1, maxLength: 3 }),
        anyFrame(20),
        (streams, within) => {
          const { mean, deviation, outcomes, low, median, high } = valued({ name: 'any', streams }, within);
          expect(outcomes.chances.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 8);
          expect(Math.min(...outcomes.chances)).toBeGreaterThanOrEqual(0);
          expect(Math.abs(meanOutcome(outcomes) - mean)).toBeLessThan(1e-7 * Math.max(1, mean));
          const variance = outcomes.chances.reduce(
            (sum, chance, i) => sum + chance * (outcomes.origin + i * outcomes.step - mean) ** 2,
            0,
          );
          expect(Math.sqrt(variance)).toBeGreaterThanOrEqual(deviation * (1 - 1e-4) - 1e-6);
          expect(Math.sqrt(variance)).toBeLessThanOrEqual(deviation * 1.002 + 1e-6);
          expect(low).toBeLessThanOrEqual(median);
          expect(median).toBeLessThanOrEqual(high);
        },
      ),
    );
  });

  it('has the quantiles of all possible courses, counted one by one, within its tolerance', () => {
    fc.assert(
      fc.property(anyCourse, anyFrame(9), (course, within) => {
        const { outcomes, tolerance, mean } = valued(only(course), within);
        const possible = everyRun(course, within);
        expect(possible.reduce((sum, { worth, chance }) => sum + worth * chance, 0)).toBeCloseTo(mean, 6);
        for (const p of [0.1, 0.5, 0.9]) {
          // A single amount of some chance is spread over neighbouring cells: the quantile may move by a little chance.
          const [least, most] = [trueQuantile(p - 0.005, possible), trueQuantile(p + 0.005, possible)];
          const found = outcomeQuantile(p, outcomes);
          expect(found).toBeGreaterThanOrEqual(least - tolerance - 1e-6);
          expect(found).toBeLessThanOrEqual(most + tolerance + 1e-6);
        }
      }),
      { numRuns: 200 },
    );
  });

  it.each([
    ['coats', [coats], (roll: () => number) => runOf(coats, new Array(5).fill(coatLife), frame, roll).worth],
    ['tape', [tape], (roll: () => number) => runOf(tape, [tapeLife, tapeLife], frame, roll).worth],
    ['touch-up', [touchUp], (roll: () => number) => yearlyRun(touchUp, frame, roll)],
    [
      'touch-up of a share that holds',
      [{ ...touchUp, drawn: 'once' as const }],
      (roll: () => number) => yearlyRun({ ...touchUp, drawn: 'once' }, frame, roll),
    ],
    [
      'tape with touch-up',
      [tape, touchUp],
      (roll: () => number) => runOf(tape, [tapeLife, tapeLife], frame, roll).worth + yearlyRun(touchUp, frame, roll),
    ],
  ] as const)('%s: against plain simulation', (name, streams, run) => {
    const { outcomes, tolerance } = valued({ name, streams }, frame);
    const roll = dice(3);
    const runs = 20_000;
    const { sorted } = sample(runs, () => run(roll));
    for (const p of [0.1, 0.5, 0.9]) {
      const found = outcomeQuantile(p, outcomes);
      // Between the simulated quantiles four standard errors of the chance apart.
      const off = 4 * Math.sqrt((p * (1 - p)) / runs);
      expect(found).toBeGreaterThan(sorted[Math.floor((p - off) * runs)]! - tolerance);
      expect(found).toBeLessThan(sorted[Math.ceil((p + off) * runs)]! + tolerance);
    }
  });

  it('is one amount where nothing is uncertain', () => {
    const streams = [
      once('now', work('a', 500), 0),
      { ...touchUp, share: certain(0.2) },
      once('sold', work('b', -90), 30),
    ];
    const value = valued({ name: 'certain', streams }, frame);
    expect(value.outcomes.chances).toHaveLength(1);
    expect([value.deviation, value.tolerance]).toEqual([0, 0]);
    for (const amount of [value.low, value.median, value.high]) expect(amount).toBeCloseTo(value.mean, 9);
  });

  it('of a yearly loss is binomial', () => {
    // No discount: 10 years, a chance of 1/5, 100 each time. Binomial(10, 0.2): 0.107, 0.268, 0.302, ... up to 1, 2, 3.
    const leak = yearlyChance('leak', work('leak', 100), 0.2, 10);
    const value = valued(only(leak), { ...frame, years: 10, rate: 0 });
    expect(value.mean).toBeCloseTo(200, 9);
    expect(value.deviation).toBeCloseTo(100 * Math.sqrt(10 * 0.2 * 0.8), 9);
    // Single amounts are spread over a few cells, so the chance of none is looked for half-way to one.
    const { origin, step, chances } = value.outcomes;
    const none = chances.reduce((sum, chance, i) => sum + (origin + i * step < 50 ? chance : 0), 0);
    expect(none).toBeCloseTo(0.8 ** 10, 9);
    expect([value.low, value.median, value.high].map((amount) => Math.round(amount / 100))).toEqual([0, 2, 4]);
  });

  it('of something dear and next to impossible stays on a grid of bearable size', () => {
    for (const chance of [1e-4, 1e-7, 1e-10]) {
      const ruin = yearlyChance('ruin', work('ruin', 1e6), chance, 40);
      const value = valued({ name: 'ruin', streams: [ruin, touchUp] }, { ...frame, years: 40 });
      expect(value.outcomes.chances.length).toBeLessThan(20_000);
      const calm = valued(only(touchUp), { ...frame, years: 40 });
      expect(Math.abs(value.median - calm.median)).toBeLessThan(
        value.tolerance + calm.tolerance + 0.01 * calm.deviation,
      );
    }
  });

  it('has no grid to go mad where costs and returns cancel out', () => {
    const streams = [
      { ...touchUp, share: certain(1) },
      { ...touchUp, share: certain(1), work: { ...touchUp.work, material: -240, labour: -320, days: -1 } },
    ];
    const value = valued({ name: 'nothing', streams }, frame);
    expect(value.outcomes.chances).toHaveLength(1);
    expect(value.mean).toBeCloseTo(0, 9);
  });

  it('takes what lowers the cost for what it is', () => {
    const refund: Yearly = { ...touchUp, work: work('refund', -100), share: threePoint(0, 0.5, 1) };
    const value = valued(only(refund), { ...frame, years: 1, rate: 0 });
    expect(value.mean).toBeCloseTo(-50, 9);
    expect(value.low).toBeLessThan(value.high);
    // A tenth of a triangle over 0 ... 1: at sqrt(0.05) from its end.
    expect(Math.abs(value.low + 100 * (1 - Math.sqrt(0.05)))).toBeLessThan(value.tolerance);
  });

  it('is the same on every run', () => {
    const all: Choice = { name: 'all', streams: [coats, tape, touchUp] };
    expect(valued(all, frame)).toEqual(valued(all, frame));
  });
});

describe('the chance to be the cheaper one', () => {
  it('and that of the other add up to 1', () => {
    fc.assert(
      fc.property(anyCourse, fc.oneof(anyCourse, anyYearly), anyFrame(15), (one, other, within) => {
        const [a, b] = [valued(only(one), within), valued(only(other), within)];
        expect(chanceCheaper(a, b) + chanceCheaper(b, a)).toBeCloseTo(1, 8);
      }),
    );
  });

  it('against plain simulation', () => {
    const within = { ...frame, dayRate: 40 };
    const [a, b] = [valued(only(tape), within), valued(only(touchUp), within)];
    const roll = dice(8);
    const runs = 20_000;
    let cheaper = 0;
    for (let i = 0; i < runs; i++) {
      if (runOf(tape, [tapeLife, tapeLife], within, roll).worth < yearlyRun(touchUp, within, roll)) cheaper++;
    }
    const chance = chanceCheaper(a, b);
    expect(chance).toBeGreaterThan(0.01);
    expect(chance).toBeLessThan(0.99);
    expect(Math.abs(cheaper / runs - chance)).toBeLessThan(0.02);
  });

  it('is a half for like choices, all or nothing for certain ones', () => {
    const certainly = (cost: number) => valued(only(once('now', work('now', cost), 0)), frame);
    expect(chanceCheaper(certainly(100), certainly(100))).toBe(0.5);
    expect(chanceCheaper(certainly(100), certainly(101))).toBe(1);
    expect(chanceCheaper(certainly(102), certainly(101))).toBe(0);
    expect(chanceCheaper(valued(only(tape), frame), valued(only(tape), frame))).toBeCloseTo(0.5, 9);
  });

  it('with a fixed rival is the chance to stay under it', () => {
    const life = yearlyLife(threePoint(2, 4, 6));
    const course = renewed('w', { work: work('w', 100), life }, { work: work('w', 100), life });
    const within = { ...frame, years: 9 };
    const rival = 240;
    const under = everyRun(course, within).reduce((sum, { worth, chance }) => sum + (worth < rival ? chance : 0), 0);
    const rivals = valued(only(once('now', work('now', rival), 0)), within);
    expect(chanceCheaper(valued(only(course), within), rivals)).toBeCloseTo(under, 2);
  });
});

it('six choices over forty years take far less time than a person notices', () => {
  const within = { ...frame, years: 40 };
  const leak = yearlyChance('leak', work('leak', 5000), 0.02, 40);
  const choices: Choice[] = [
    [touchUp],
    [coats],
    [tape],
    [tape, touchUp],
    [coats, leak],
    [tape, leak, once('re-roof', work('r', 9000), 20)],
  ].map((streams, i) => ({ name: `${i}`, streams }));
  const once40 = () => choices.map((choice) => valued(choice, within).mean);
  once40();
  const times = Array.from({ length: 5 }, () => {
    const start = performance.now();
    once40();
    return performance.now() - start;
  });
  // About 15 ms on two cores of 2020; the bound leaves room for a busy machine, and still notices a lost order of size.
  expect(Math.min(...times)).toBeLessThan(150);
});
