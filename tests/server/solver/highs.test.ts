import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Column, CoveringProgram } from '../../../language/cutting/index.ts';
import { linearPrograms, loadLinearPrograms } from '../../../server/solver/highs.ts';

const solver = await loadLinearPrograms();

function solved(demand: readonly number[], columns: readonly Column[]): ReturnType<CoveringProgram['solve']> {
  const answer = solver!.covering(demand, (program) => {
    program.add(columns);
    return program.solve();
  });
  if (!answer) throw new Error('the solver gave up');
  return answer;
}

const rowsOf = (values: readonly number[]): Pick<Column, 'rows' | 'values'> => ({
  rows: values.map((_, i) => i),
  values,
});

describe('linear programs', () => {
  it('solves a cutting problem worked by hand', () => {
    // Rolls of 10 at price 1, pieces of 4 and of 3: one piece of 4 with two of 3 fills a roll.
    const columns = [
      { price: 1, ...rowsOf([2, 0]) },
      { price: 1, ...rowsOf([1, 2]) },
      { price: 1, ...rowsOf([0, 3]) },
    ];
    const { uses, duals } = solved([20, 10], columns);
    expect(Array.from(uses)).toEqual([expect.closeTo(7.5), expect.closeTo(5), expect.closeTo(0)]);
    expect(Array.from(duals)).toEqual([expect.closeTo(0.5), expect.closeTo(0.25)]);
  });

  it('finds prices that are worth what the columns cost, and that no column undercuts', () => {
    const column = fc.tuple(fc.integer({ min: 1, max: 9 }), fc.array(fc.nat(4), { minLength: 4, maxLength: 4 }));
    fc.assert(
      fc.property(
        fc.array(column, { maxLength: 8 }),
        fc.array(fc.nat(9), { minLength: 4, maxLength: 4 }),
        (some, demand) => {
          // A single of each row keeps it solvable.
          const singles = demand.map((_, i): Column => ({ price: 10, rows: [i], values: [1] }));
          const columns = [...singles, ...some.map(([price, values]) => ({ price, ...rowsOf(values) }))];
          const { uses, duals } = solved(demand, columns);
          const cost = columns.reduce((sum, { price }, i) => sum + price * uses[i]!, 0);
          const worth = demand.reduce((sum, wanted, i) => sum + wanted * duals[i]!, 0);
          expect(cost).toBeCloseTo(worth, 6);
          for (const { price, rows, values } of columns) {
            expect(rows.reduce((sum, row, i) => sum + values[i]! * duals[row]!, 0)).toBeLessThan(price + 1e-6);
          }
        },
      ),
      { numRuns: 200, seed: 81 },
    );
  });

  it('goes on from one program to the next: more columns, other demands', () => {
    const costs = solver!.covering([4, 4], (program) => {
      const cost = (prices: readonly number[]): number => {
        const { uses } = program.solve();
        return prices.reduce((sum, price, i) => sum + price * uses[i]!, 0);
      };
      program.add([
        { price: 3, rows: [0], values: [1] },
        { price: 3, rows: [1], values: [1] },
      ]);
      const alone = cost([3, 3]);
      program.add([{ price: 4, rows: [0, 1], values: [1, 1] }]);
      const together = cost([3, 3, 4]);
      program.demand([1, 2]);
      return [alone, together, cost([3, 3, 4])];
    });
    expect(costs).toEqual([24, 16, 7]);
  });

  it('gives up where there is no optimum, and is of use again afterwards', () => {
    expect(solver!.covering([1], (program) => program.solve())).toBeUndefined();
    expect(Array.from(solved([1], [{ price: 1, rows: [0], values: [1] }]).uses)).toEqual([1]);
  });

  it('lets faults of the engine through', () => {
    expect(() =>
      solver!.covering([1], () => {
        throw new TypeError('a bug');
      }),
    ).toThrow('a bug');
  });

  it('answers nothing more after an abort, and says so once', () => {
    let told = 0;
    const aborting = linearPrograms(
      {
        createModel: () => {
          throw new Error('Aborted()');
        },
      },
      () => {
        told++;
      },
    );
    expect(aborting.covering([1], () => 1)).toBeUndefined();
    expect(aborting.covering([1], () => 1)).toBeUndefined();
    expect(told).toBe(1);
  });
});
