import fc from 'fast-check';
import { npv } from 'financial';
import { describe, expect, it } from 'vitest';
import {
  certain,
  coatings,
  costOf,
  type Frame,
  fixedLife,
  meanOf,
  momentsOf,
  presentValue,
  type Renewals,
  renewed,
  rowsOf,
  threePoint,
  type Work,
  type Yearly,
  yearlyLife,
  yearSums,
} from '../../language/lifecost/index.ts';
import { anyCourse, anyFrame, anyWork, anyYearly, lifePoints } from './arbitraries.ts';
import { dice, runOf, sample, yearlyRun } from './simulation.ts';

const recoat: Work = { title: 'recoat', material: 240, labour: 320, days: 1 };
const strip: Work = { title: 'strip', material: 300, labour: 1280, days: 4 };
const frame: Frame = { years: 20, rate: 0.03, timing: 'end', dayRate: 120 };

describe('renewal sums', () => {
  it('by hand: lives of one or two years', () => {
    const life = [0, 0.5, 0.5];
    const course = renewed('coat', { work: recoat, life }, { work: recoat, life });
    // u(t) = (u(t-1) + u(t-2)) / 2 from u(0) = 1.
    const numbers = rowsOf(course, { ...frame, years: 6 }).map((row) => row.number);
    expect(numbers).toEqual([1, 0.5, 0.75, 0.625, 0.6875, 0.65625]);
  });

  it('the table multiplies out, and adds up to the present value', () => {
    fc.assert(
      fc.property(fc.oneof(anyCourse, anyYearly), anyFrame(25), (stream, within) => {
        const rows = rowsOf(stream, within);
        for (const { number, cost, factor, present, work } of rows) {
          expect(present).toBe(number * cost * factor);
          expect(cost).toBe(costOf(work, within));
        }
        const value = presentValue(stream, within);
        expect(value).toBeCloseTo(
          rows.reduce((sum, row) => sum + row.present, 0),
          8,
        );
        // A second way through the same years: backwards.
        expect(momentsOf(stream, within).mean).toBeCloseTo(value, 6);
      }),
    );
  });

  it('against plain simulation', () => {
    const points = threePoint(1.5, 3, 5.5);
    const tape = threePoint(8, 15, 25);
    const cases: [Renewals, ReturnType<typeof threePoint>[]][] = [
      [
        coatings({ title: 'coats', recoat, strip, life: yearlyLife(points), limit: 3, now: 1 }),
        [points, points, points, points, points],
      ],
      [
        renewed('tape', { work: recoat, life: yearlyLife(tape) }, { work: strip, life: yearlyLife(tape) }),
        [tape, tape],
      ],
    ];
    for (const [course, lives] of cases) {
      const roll = dice(11);
      const works: number[] = [];
      const { mean, error } = sample(20_000, () => {
        const run = runOf(course, lives, frame, roll);
        works.push(run.works);
        return run.worth;
      });
      expect(Math.abs(mean - presentValue(course, frame))).toBeLessThan(4.5 * error);
      const expected = rowsOf(course, frame).reduce((sum, row) => sum + row.number, 0);
      expect(Math.abs(works.reduce((sum, count) => sum + count, 0) / works.length - expected)).toBeLessThan(0.05);
    }
  });

  it('the yearly grid is within two percent of true time', () => {
    const points = threePoint(1.5, 3, 5.5);
    const course = coatings({ title: 'coats', recoat, strip, life: yearlyLife(points), limit: 3, now: 1 });
    const roll = dice(12);
    const { mean, error } = sample(20_000, () => runOf(course, new Array(5).fill(points), frame, roll, 'true').worth);
    const off = Math.abs(mean / presentValue(course, frame) - 1);
    expect(off).toBeLessThan(0.02 + (3 * error) / mean);
  });
});

describe('plain truths', () => {
  it('without discount the present value is the plain sum', () => {
    fc.assert(
      fc.property(anyCourse, anyYearly, anyFrame(25), (course, yearly, within) => {
        const plain = { ...within, rate: 0 };
        for (const stream of [course, yearly]) {
          const rows = rowsOf(stream, plain);
          expect(presentValue(stream, plain)).toBeCloseTo(
            rows.reduce((sum, row) => sum + row.number * row.cost, 0),
            8,
          );
        }
      }),
    );
  });

  it('a certain course is worth what a finance library says', () => {
    fc.assert(
      fc.property(anyWork, fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 30 }), (work, life, years) => {
        const within = { ...frame, years };
        const course = renewed('work', { work, life: fixedLife(life) }, { work, life: fixedLife(life) });
        const flow = Array.from({ length: years }, (_, year) => (year % life === 0 ? costOf(work, within) : 0));
        expect(presentValue(course, within)).toBeCloseTo(npv(within.rate, flow), 6);
      }),
    );
  });

  it('a longer life never costs more', () => {
    const longer = fc.tuple(lifePoints(10), fc.integer({ min: 0, max: 12 }), fc.integer({ min: 1, max: 4 }));
    fc.assert(
      fc.property(longer, anyWork, anyWork, anyFrame(25), ([points, quarters, limit], one, other, within) => {
        const { least, likely, most } = points;
        const more = threePoint(least + quarters / 8, likely + quarters / 4, most + quarters / 4);
        const cost = (life: typeof points) =>
          presentValue(
            coatings({ title: 'coats', recoat: one, strip: other, life: yearlyLife(life), limit, now: 0 }),
            within,
          );
        // The works keep their order; each comes later, or never.
        expect(cost(more)).toBeLessThanOrEqual(cost(points) + 1e-6);
      }),
    );
  });

  it('days off the road are counted, and paid at the day rate', () => {
    const course = renewed('strip', { work: strip, life: fixedLife(5) }, { work: strip, life: fixedLife(5) });
    const years = yearSums({ name: 'strip', streams: [course] }, frame);
    expect(years).toHaveLength(21);
    expect(years.filter((year) => year.days > 0).map((year) => [year.year, year.days, year.cost])).toEqual(
      [0, 5, 10, 15].map((year) => [year, 4, 300 + 1280 + 4 * 120]),
    );
  });
});

describe('yearly shares', () => {
  const touchUp: Yearly = {
    kind: 'yearly',
    title: 'touch-up',
    work: recoat,
    share: threePoint(0.1, 0.15, 0.25),
    drawn: 'each year',
  };

  it('against plain simulation', () => {
    for (const timing of ['end', 'middle'] as const) {
      const within = { ...frame, timing };
      const roll = dice(5);
      const { mean, error } = sample(20_000, () => yearlyRun(touchUp, within, roll));
      expect(Math.abs(mean - presentValue(touchUp, within))).toBeLessThan(4.5 * error);
    }
  });

  it('run from their first year to their last', () => {
    const rows = rowsOf({ ...touchUp, from: 0, through: 3 }, frame);
    expect(rows.map((row) => row.year)).toEqual([0, 1, 2, 3]);
    for (const row of rows) expect(row.number).toBe(meanOf(touchUp.share));
    expect(rowsOf({ ...touchUp, through: 99 }, frame).at(-1)?.year).toBe(20);
  });

  it('in the middle of the year only flows come earlier, not single works', () => {
    const course = renewed('w', { work: recoat, life: fixedLife(3) }, { work: recoat, life: fixedLife(3) });
    const within: Frame = { ...frame, timing: 'middle' };
    expect(presentValue(course, within)).toBe(presentValue(course, frame));
    expect(presentValue(touchUp, within)).toBeCloseTo(presentValue(touchUp, frame) * Math.sqrt(1.03), 9);
  });

  it('grow where they are told to', () => {
    const rows = rowsOf({ ...touchUp, share: certain(1), growth: 0.02 }, { ...frame, years: 2 });
    expect(rows.map((row) => row.cost)).toEqual([680 * 1.02, 680 * 1.02 ** 2]);
  });
});

it('refuses a horizon that is no number of years', () => {
  const course = renewed('w', { work: recoat, life: fixedLife(3) }, { work: recoat, life: fixedLife(3) });
  expect(() => presentValue(course, { ...frame, years: 2.5 })).toThrow(RangeError);
  expect(() => presentValue(course, { ...frame, rate: -1 })).toThrow(RangeError);
});
