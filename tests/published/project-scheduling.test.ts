// The core of the schedule on ten instances of the project scheduling library PSPLIB, set j30 (Kolisch and Sprecher 1996,
// files and optima as in `optima.csv`), and on one that is small enough to stand here. A verifier written apart checks
// every answer.
import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Project, type Starts, solve } from '../../language/schedule/core/index.ts';

/** Patterson format: activities and resources, capacities, then duration, demands, number of successors, successors. */
function projectOf(text: string): { readonly project: Project; readonly capacities: readonly number[] } {
  const numbers = text
    .split(/\s+/)
    .filter((word) => word !== '')
    .map(Number);
  let at = 0;
  const next = () => numbers[at++] as number;
  const [count, kinds] = [next(), next()];
  const capacities = Array.from({ length: kinds }, next);
  const rows = Array.from({ length: count }, () => {
    const duration = next();
    const uses = Array.from({ length: kinds }, next);
    return { duration, uses, followers: Array.from({ length: next() }, () => next() - 1) };
  });
  const activities = rows.map(({ duration, uses }, i) => ({
    duration,
    uses,
    after: rows.flatMap(({ followers }, first) => (followers.includes(i) ? [{ activity: first, lag: 0 }] : [])),
  }));
  const horizon = rows.reduce((sum, { duration }) => sum + duration, 1);
  return { project: { activities, resources: capacities.map((capacity) => () => capacity), horizon }, capacities };
}

/** What is wrong with a schedule, going by the rows alone. */
function faults(project: Project, capacities: readonly number[], starts: Starts): readonly string[] {
  const out: string[] = [];
  const used = new Map<string, number>();
  for (const [i, { duration, uses, after }] of project.activities.entries()) {
    const start = starts[i];
    if (start === undefined || !Number.isInteger(start) || start < 0) {
      out.push(`${i} has no start`);
      continue;
    }
    for (const { activity } of after) {
      const end = (starts[activity] ?? Number.NaN) + (project.activities[activity]?.duration ?? Number.NaN);
      if (!(end <= start)) out.push(`${i} begins before ${activity} ends`);
    }
    for (let t = start; t < start + duration; t++)
      for (const [k, use] of uses.entries()) used.set(`${k} ${t}`, (used.get(`${k} ${t}`) ?? 0) + use);
  }
  for (const [key, sum] of used)
    if (sum > (capacities[Number(key.split(' ')[0])] as number)) out.push(`too much of ${key}`);
  return out;
}

const unlimited = ({ activities, horizon }: Project): Project => ({
  activities,
  horizon,
  resources: (activities[0]?.uses ?? []).map(() => () => 1e6),
});

const budget = 3000;
const folder = new URL('../../../shared/checks/project-scheduling/', import.meta.url);

const present = existsSync(folder);

describe('ten instances of PSPLIB j30', () => {
  const rows = present ? readFileSync(new URL('optima.csv', folder), 'utf8').trim().split('\n').slice(1) : [];
  const instances = rows.map((row) => {
    const [file = '', critical, , optimum] = row.split(',');
    return { file, critical: Number(critical), optimum: Number(optimum) };
  });
  test('there are ten', (ctx) => {
    if (!present) ctx.skip('the folder of outside checks is not beside the project');
    expect(instances).toHaveLength(10);
  });

  test('no answer breaks a constraint, the mean gap to the optimum is below 2 %, no bound is above it', (ctx) => {
    if (!present) ctx.skip('the folder of outside checks is not beside the project');
    const gaps = instances.map(({ file, critical, optimum }) => {
      const { project, capacities } = projectOf(readFileSync(new URL(file, folder), 'utf8'));
      const { starts, makespan, bounds, unplaced, schedules } = solve(project, 'makespan', budget);
      expect(unplaced, file).toBe(0);
      expect(faults(project, capacities, starts), file).toEqual([]);
      expect(bounds.criticalPath, file).toBe(critical);
      expect(bounds.makespan, file).toBeLessThanOrEqual(optimum);
      expect(makespan, file).toBeGreaterThanOrEqual(optimum);
      expect(schedules).toBeLessThanOrEqual(budget + 2);
      return { file, makespan, optimum, bound: bounds.makespan, schedules, gap: makespan / optimum - 1 };
    });
    const mean = gaps.reduce((sum, { gap }) => sum + gap, 0) / gaps.length;
    console.table(gaps);
    console.log(`mean gap ${(100 * mean).toFixed(2)} % with ${budget} schedules each`);
    expect(mean).toBeLessThan(0.02);
  });

  test('with unlimited resources the makespan is the critical path', (ctx) => {
    if (!present) ctx.skip('the folder of outside checks is not beside the project');
    for (const { file, critical } of instances) {
      const { project } = projectOf(readFileSync(new URL(file, folder), 'utf8'));
      expect(solve(unlimited(project), 'makespan', 10).makespan, file).toBe(critical);
    }
  });
});

/** Six jobs between two dummies, one resource of 4: worked out by hand. 2 and 3 fill it, then 4 and 5, then 6 and 7. */
const small = `
8 1
4
0 0 2 2 3
3 2 1 4
3 2 1 5
2 3 1 6
2 1 1 7
4 2 1 8
4 2 1 8
0 0 0
`;

describe('an instance that stands here', () => {
  const { project, capacities } = projectOf(small);
  test('its optimum is 9: three periods, two, four, and the resource is full but for one period', () => {
    const { starts, makespan, bounds } = solve(project, 'makespan', 200);
    expect(faults(project, capacities, starts)).toEqual([]);
    expect([makespan, bounds.criticalPath, bounds.resource]).toEqual([9, 9, 9]);
  });
  test('the verifier sees what is wrong', () => {
    const { starts } = solve(project, 'makespan', 200);
    expect(faults(project, [3], starts)).not.toEqual([]);
    expect(
      faults(
        project,
        capacities,
        starts.map(() => 0),
      ),
    ).not.toEqual([]);
  });
});
