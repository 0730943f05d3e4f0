// What the property tests of the life cost draw from.
import fc from 'fast-check';
import {
  coatings,
  type Frame,
  type Renewals,
  renewed,
  type ThreePoint,
  threePoint,
  type Work,
  type Yearly,
  type YearlyLife,
  yearlyLife,
} from '../../language/lifecost/index.ts';

/** To a millionth: nobody tells finer, and doubles near 0 have too few digits to hold sums against each other. */
export const figure = fc.integer({ min: 0, max: 40_000_000 }).map((millionths) => millionths / 1e6);

export const ordered = fc
  .tuple(figure, figure, figure)
  .map((all) => [...all].sort((a, b) => a - b) as [number, number, number]);

/** Points of either shape; those whose range is next to nothing are left to the cases that are certain. */
export const anyPoints: fc.Arbitrary<ThreePoint> = fc
  .tuple(ordered, fc.constantFrom('triangular' as const, 'pert' as const))
  .map(([[least, likely, most], shape]) => threePoint(least, likely, most, shape))
  .filter(({ least, most }) => most - least > 1e-3);

/** Lives from under a year up to `most` years, triangular or certain. */
export const lifePoints = (most: number): fc.Arbitrary<ThreePoint> =>
  fc
    .array(fc.integer({ min: 1, max: most * 4 }), { minLength: 3, maxLength: 3 })
    .map((quarters) => quarters.sort((a, b) => a - b).map((quarter) => quarter / 4))
    .map(([least, likely, most]) => threePoint(least!, likely!, most!));

export const anyWork: fc.Arbitrary<Work> = fc.record({
  title: fc.constantFrom('recoat', 'strip', 'tape'),
  material: fc.integer({ min: 0, max: 900 }),
  labour: fc.integer({ min: 0, max: 2000 }),
  days: fc.integer({ min: 0, max: 5 }),
});

export const anyFrame = (years: number): fc.Arbitrary<Frame> =>
  fc.record({
    years: fc.integer({ min: 0, max: years }),
    rate: fc.constantFrom(0, 0.02, 0.03, 0.07),
    timing: fc.constantFrom('end' as const, 'middle' as const),
    dayRate: fc.constantFrom(0, 80, 150),
  });

const life: fc.Arbitrary<YearlyLife> = lifePoints(12).map((points) => yearlyLife(points));

/** Coats with a limit, or a work that is renewed. */
export const anyCourse: fc.Arbitrary<Renewals> = fc.oneof(
  fc
    .record({
      recoat: anyWork,
      strip: anyWork,
      life,
      limit: fc.integer({ min: 1, max: 4 }),
      now: fc.integer({ min: 0, max: 4 }),
    })
    .map((coating) => coatings({ title: 'coats', ...coating })),
  fc.tuple(anyWork, anyWork, life, life).map(([first, again, life, later]) => {
    return renewed('tape', { work: first, life }, { work: again, life: later });
  }),
);

export const anyYearly: fc.Arbitrary<Yearly> = fc
  .record({
    work: anyWork,
    share: fc
      .array(fc.integer({ min: 0, max: 100 }), { minLength: 3, maxLength: 3 })
      .map((percents) => percents.sort((a, b) => a - b).map((percent) => percent / 100))
      .map(([least, likely, most]) => threePoint(least!, likely!, most!)),
    drawn: fc.constantFrom('once' as const, 'each year' as const),
  })
  .map((stream) => ({ kind: 'yearly', title: 'touch-up', ...stream }));
