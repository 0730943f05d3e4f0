// The core against trying everything, on small random cases: the best of all schedules is found, and no bound is above it.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Activity,
  type Aim,
  leastAssignment,
  type Project,
  search,
  solve,
} from '../../language/schedule/core/index.ts';

const horizon = 24;

/**
 * The best that any starts give, by trying all of them in turn; written apart from the core. All earlier activities have
 * lower numbers. Only starts that break nothing are gone on with.
 */
function bestOfAll({ activities, resources }: Project, aim: Aim): number | undefined {
  let best: number | undefined;
  const starts: number[] = [];
  const fits = (one: Activity, start: number): boolean => {
    if (start < (one.release ?? 0) || start + one.duration > (one.deadline ?? horizon)) return false;
    for (const { activity, lag } of one.after)
      if (start < (starts[activity] as number) + (activities[activity] as Activity).duration + lag) return false;
    for (let t = start; t < start + one.duration; t++) {
      if (one.forbidden?.(t)) return false;
      for (const [k, capacity] of resources.entries()) {
        let used = one.uses[k] as number;
        for (const [j, other] of starts.entries()) {
          const mate = activities[j] as Activity;
          if (other <= t && t < other + mate.duration) used += mate.uses[k] as number;
        }
        if (used > capacity(t)) return false;
      }
    }
    return true;
  };
  const aimed = () =>
    aim === 'makespan'
      ? Math.max(0, ...starts.map((start, i) => start + (activities[i] as Activity).duration))
      : starts.reduce((sum, start, i) => {
          const { due, weight, duration } = activities[i] as Activity;
          return due === undefined ? sum : sum + (weight ?? 1) * Math.max(0, start + duration - due);
        }, 0);
  const go = (): void => {
    const value = aimed();
    // Neither value falls as more is placed.
    if (best !== undefined && value >= best) return;
    const one = activities[starts.length];
    if (!one) {
      best = value;
      return;
    }
    for (let start = 0; start + one.duration <= horizon; start++) {
      if (!fits(one, start)) continue;
      starts.push(start);
      go();
      starts.pop();
    }
  };
  go();
  return best;
}

const activity = (index: number) =>
  fc.record({
    duration: fc.integer({ min: 1, max: 3 }),
    uses: fc.tuple(fc.integer({ min: 0, max: 2 }), fc.integer({ min: 0, max: 2 })),
    after: fc
      .uniqueArray(fc.integer({ min: 0, max: Math.max(0, index - 1) }), { maxLength: index === 0 ? 0 : 2 })
      .chain((firsts) =>
        fc
          .tuple(...firsts.map(() => fc.integer({ min: 0, max: 2 })))
          .map((lags) => firsts.map((first, i) => ({ activity: first, lag: lags[i] as number }))),
      ),
    release: fc.integer({ min: 0, max: 3 }),
    due: fc.integer({ min: 1, max: 9 }),
    weight: fc.integer({ min: 1, max: 6 }),
    shut: fc.uniqueArray(fc.integer({ min: 0, max: 8 }), { maxLength: 2 }),
  });

const project: fc.Arbitrary<Project> = fc
  .tuple(
    fc.integer({ min: 1, max: 5 }).chain((count) => fc.tuple(...Array.from({ length: count }, (_, i) => activity(i)))),
    fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 6, maxLength: 6 }),
  )
  .map(([rows, low]) => ({
    activities: rows.map(({ shut, ...row }) => ({ ...row, forbidden: (t: number) => shut.includes(t) })),
    // A calendar: the first resource has fewer on some of the first days.
    resources: [(t: number) => (t < low.length ? (low[t] as number) : 3), () => 2],
    horizon,
  }));

describe('against trying everything', () => {
  for (const aim of ['makespan', 'lateness'] as const) {
    test(`${aim}: as good as the best of all, and the bound is not above it`, () => {
      let tight = 0;
      let runs = 0;
      fc.assert(
        fc.property(project, (one) => {
          const best = bestOfAll(one, aim);
          fc.pre(best !== undefined);
          const found = solve(one, aim, 600);
          expect(found.unplaced).toBe(0);
          expect(aim === 'makespan' ? found.makespan : found.lateness).toBe(best);
          const bound = aim === 'makespan' ? found.bounds.makespan : found.bounds.lateness;
          expect(bound).toBeLessThanOrEqual(best as number);
          runs++;
          if (bound === best) tight++;
        }),
        { numRuns: 120 },
      );
      console.log(`${aim}: ${runs} cases, the bound is tight in ${tight}`);
    });
  }
});

describe('the search', () => {
  const five: Project = {
    activities: [4, 1, 3, 2, 5].map((duration, i) => ({ duration, uses: [1], after: [], due: 5, weight: i + 1 })),
    resources: [() => 1],
    horizon: 20,
  };
  test('is the same twice, and with a seed of its own', () => {
    expect(solve(five, 'lateness', 300)).toEqual(solve(five, 'lateness', 300));
    expect(solve(five, 'lateness', 300, 9).lateness).toBe(solve(five, 'lateness', 300).lateness);
  });
  test('gets no worse with more schedules', () => {
    const values = [1, 10, 40, 200].map((budget) => solve(five, 'lateness', budget).lateness);
    expect(values).toEqual([...values].sort((a, b) => b - a));
  });
  test('what cannot be in time is left out, and so is what waits for it', () => {
    const { starts, unplaced } = solve(
      {
        activities: [
          { duration: 4, uses: [1], after: [], deadline: 3 },
          { duration: 1, uses: [1], after: [{ activity: 0, lag: 0 }] },
          { duration: 1, uses: [1], after: [] },
        ],
        resources: [() => 1],
        horizon: 20,
      },
      'makespan',
      50,
    );
    expect([starts, unplaced]).toEqual([[undefined, undefined, 0], 2]);
  });
  test('takes any decoder, and stops where nothing can be better', () => {
    // The cost of a list is the number of pairs out of order.
    const { list, schedules } = search<readonly number[]>(
      {
        before: [[], [], [], [], []],
        decode: (order) => order,
        cost: (order) => [order.reduce((sum, a, i) => sum + order.slice(i).filter((b) => b < a).length, 0)],
        isBest: ([pairs]) => pairs === 0,
      },
      [[4, 3, 2, 1, 0]],
      5000,
      1,
    );
    expect(list).toEqual([0, 1, 2, 3, 4]);
    expect(schedules).toBeLessThan(5000);
  });
});

describe('the assignment of jobs to places', () => {
  /** Every way, one after the other. */
  const leastOfAll = (costs: readonly (readonly number[])[], taken: readonly number[] = []): number => {
    const row = costs[taken.length];
    if (!row) return taken.reduce((sum, place, job) => sum + (costs[job]?.[place] as number), 0);
    return Math.min(
      ...row.map((_, place) =>
        taken.includes(place) ? Number.POSITIVE_INFINITY : leastOfAll(costs, [...taken, place]),
      ),
    );
  };
  const one = fc.oneof(
    { arbitrary: fc.integer({ min: 0, max: 30 }), weight: 5 },
    fc.constant(Number.POSITIVE_INFINITY),
  );
  test('costs what the best of all ways costs, or cannot be done', () => {
    fc.assert(
      fc.property(
        fc
          .tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 6 }))
          .chain(([jobs, places]) =>
            fc.array(fc.array(one, { minLength: places, maxLength: places }), { minLength: jobs, maxLength: jobs }),
          ),
        (costs) => {
          const best = leastOfAll(costs);
          const found = leastAssignment(
            costs.length,
            costs[0]?.length ?? 0,
            (job, place) => costs[job]?.[place] as number,
          );
          expect(found).toBe(best === Number.POSITIVE_INFINITY ? undefined : best);
        },
      ),
      { numRuns: 300 },
    );
  });
});
