import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { type CutPlan, cutFleet } from '../../language/cutting/index.ts';
import { loadLinearPrograms } from '../../server/solver/highs.ts';
import { faultsOf } from '../cutting/brute.ts';
import { planOf, problemOf } from '../cutting/figures.ts';

/**
 * One-dimensional bin packing and cutting stock with known optima. The figures typed here always run:
 * - u120_00: E. Falkenauer (1996), OR-Library of J. E. Beasley (MIT licence); optimum 48, first-fit-decreasing 49.
 * - PM_u010_01: BPPLib.jl (MIT licence); optimum 5, proved with a MIP solver.
 * - trim-100: V. Chvatal, Linear Programming, chapter 13: stock 100, 453 rolls.
 * The files of the outside checks run when their folder lies beside the project.
 */
const FOLDER = new URL('../../../shared/checks/binpack/', import.meta.url);
const PRICE = 100;

interface Instance {
  readonly name: string;
  readonly capacity: number;
  readonly sizes: readonly number[];
  readonly optimum: number;
}

const table: Record<string, number | string>[] = [];
const solver = await loadLinearPrograms();

/** Solves one instance by the search for one rig and by the engine for fleets; both must prove the known optimum. */
function check({ name, capacity, sizes, optimum }: Instance): void {
  const problem = { ...problemOf(sizes, [[capacity, PRICE]]), budget: { nodes: 300_000 } };
  const start = performance.now();
  const rig = planOf(problem);
  const middle = performance.now();
  const fleet = cutFleet(problem, solver);
  const end = performance.now();
  if (!fleet.ok) throw new Error(`${name}: ${fleet.reason}`);
  table.push({
    instance: name,
    optimum,
    'first fit': rig.firstFitCost / PRICE,
    ...row('rig', rig, middle - start),
    ...row('fleet', fleet.plan, end - middle),
  });
  for (const plan of [rig, fleet.plan]) {
    expect(faultsOf(problem, plan), name).toEqual([]);
    expect(plan.proof, name).not.toBe('none');
    expect({ answer: plan.cost / PRICE, bound: plan.lowerBound / PRICE }, name).toEqual({
      answer: optimum,
      bound: optimum,
    });
  }
}

function row(engine: string, plan: CutPlan, ms: number): Record<string, number | string> {
  const gap = `${(100 * (plan.cost / plan.lowerBound - 1)).toFixed(2)} %`;
  return {
    [engine]: plan.cost / PRICE,
    [`${engine} gap`]: gap,
    [`${engine} proof`]: plan.proof,
    [`${engine} ms`]: Math.round(ms),
  };
}

afterAll(() => console.table(table));

describe('figures typed here', () => {
  it('u120_00: 48 bins where first-fit-decreasing takes 49', () => {
    const sizes = [
      42, 69, 67, 57, 93, 90, 38, 36, 45, 42, 33, 79, 27, 57, 44, 84, 86, 92, 46, 38, 85, 33, 82, 73, 49, 70, 59, 23,
      57, 72, 74, 69, 33, 42, 28, 46, 30, 64, 29, 74, 41, 49, 55, 98, 80, 32, 25, 38, 82, 30, 35, 39, 57, 84, 62, 50,
      55, 27, 30, 36, 20, 78, 47, 26, 45, 41, 58, 98, 91, 96, 73, 84, 37, 93, 91, 43, 73, 85, 81, 79, 71, 80, 76, 83,
      41, 78, 70, 23, 42, 87, 43, 84, 60, 55, 49, 78, 73, 62, 36, 44, 94, 69, 32, 96, 70, 84, 58, 78, 25, 80, 58, 66,
      83, 24, 98, 60, 42, 43, 43, 39,
    ];
    expect(sizes.length).toBe(120);
    check({ name: 'u120_00', capacity: 150, sizes, optimum: 48 });
  });

  it('PM_u010_01: 10 pieces, 5 bins', () => {
    const sizes = [44, 76, 78, 52, 96, 58, 67, 74, 59, 66];
    check({ name: 'PM_u010_01', capacity: 150, sizes, optimum: 5 });
  });

  it('trim-100: 453 rolls', () => {
    const orders: [number, number][] = [
      [45, 97],
      [36, 610],
      [31, 395],
      [14, 211],
    ];
    const sizes = orders.flatMap(([width, demand]) => Array<number>(demand).fill(width));
    check({ name: 'trim-100', capacity: 100, sizes, optimum: 453 });
  });
});

describe('files of the outside checks', () => {
  const present = existsSync(FOLDER);
  const read = (name: string): string => readFileSync(new URL(name, FOLDER), 'utf8');
  const numbers = (text: string): number[] => text.trim().split(/\s+/).map(Number);
  const optima = (): Map<string, number> =>
    new Map(
      read('optima.csv')
        .trim()
        .split('\n')
        .slice(1)
        .map((line) => line.split(','))
        .map((cells) => [cells[0]!, Number(cells[6])]),
    );
  const plain = (name: string): Instance => {
    const [count, capacity, ...sizes] = numbers(read(`${name}.txt`));
    expect(sizes.length).toBe(count);
    return { name, capacity: capacity!, sizes, optimum: optima().get(name)! };
  };
  const named = (prefix: string): string[] =>
    readdirSync(FOLDER)
      .filter((file) => file.startsWith(prefix))
      .map((file) => file.replace('.txt', ''));

  it('PM: all thirty proven', (ctx) => {
    if (!present) ctx.skip('the folder of outside checks is not beside the project');
    const names = named('PM_');
    expect(names.length).toBe(30);
    for (const name of names) check(plain(name));
  });

  it('u120: all ten proven', (ctx) => {
    if (!present) ctx.skip('the folder of outside checks is not beside the project');
    const lines = read('u120_00-09.txt').trim().split('\n');
    const count = Number(lines.shift());
    expect(count).toBe(10);
    for (let n = 0; n < count; n++) {
      const name = lines.shift()!.trim();
      const [capacity, items] = numbers(lines.shift()!);
      const sizes = lines.splice(0, items).map(Number);
      const optimum = optima().get(name)!;
      check({ name, capacity: capacity!, sizes, optimum });
    }
  });

  it('t120: all three proven', (ctx) => {
    if (!present) ctx.skip('the folder of outside checks is not beside the project');
    const names = named('Falkenauer_t120');
    expect(names.length).toBe(3);
    for (const name of names) check(plain(name));
  });
});
