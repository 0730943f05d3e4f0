/**
 * Times the pooled purchase of seeded fleets, with the solver of linear programs and without, and prints the gap to the
 * proven bound, what the plan saves against first-fit-decreasing, and what pooling saves against buying for each rig
 * alone (those purchases proven). Run it with `node tests/bench/fleets.ts [seeds]`; lengths are quarter inches.
 */
import { type CutPlan, type CutProblem, type CutResult, cutFleet, cutRolls } from '../../language/cutting/index.ts';
import { loadLinearPrograms } from '../../server/solver/highs.ts';
import { drawing, FOOT, fleet, MENUS, problemOf, quantiles } from './roof.ts';

const KINDS = [
  { rigs: 10, models: 10, jitter: 0, offcuts: 3 },
  { rigs: 100, models: 10, jitter: 0, offcuts: 0 },
  { rigs: 100, models: 60, jitter: 1, offcuts: 20 },
  { rigs: 300, models: 60, jitter: 0, offcuts: 0 },
  { rigs: 300, models: 300, jitter: 0, offcuts: 0 },
  { rigs: 300, models: 300, jitter: 1, offcuts: 30 },
];

interface Run {
  readonly plan: CutPlan;
  readonly ms: number;
  readonly alone: CutPlan;
  readonly aloneMs: number;
  readonly rigByRig: number | undefined;
}

function planOf(result: CutResult): CutPlan {
  if (!result.ok) throw new Error(`fleet has no plan: ${result.reason}`);
  return result.plan;
}

function timed<T>(call: () => T): { readonly value: T; readonly ms: number } {
  const start = performance.now();
  const value = call();
  return { value, ms: performance.now() - start };
}

/** What all rigs pay when each buys alone, or undefined when one of those purchases is not proven. */
function rigByRig(rigs: readonly number[][], problem: (pieces: readonly number[]) => CutProblem): number | undefined {
  const known = new Map<string, number | undefined>();
  let sum: number | undefined = 0;
  for (const pieces of rigs) {
    const key = pieces.join();
    if (!known.has(key)) {
      const { proof, cost } = planOf(cutRolls(problem(pieces)));
      known.set(key, proof === 'none' ? undefined : cost);
    }
    const cost = known.get(key);
    sum = sum === undefined || cost === undefined ? undefined : sum + cost;
  }
  return sum;
}

const solver = await loadLinearPrograms();
if (!solver) throw new Error('the solver of linear programs did not load');
const seeds = Number(process.argv[2] ?? 2);
const rows: Record<string, Record<string, string>> = {};
for (const { offcuts, ...kind } of KINDS) {
  const bySize: Run[] = [];
  for (const [name, menu] of Object.entries(MENUS)) {
    const runs = Array.from({ length: seeds }, (_, i): Run => {
      const rigs = fleet(7000 + i, kind);
      const draw = drawing(i);
      const held = Array.from({ length: offcuts }, () => draw(3 * FOOT, 22 * FOOT));
      const problem = problemOf(rigs.flat(), menu, held);
      const { value: plan, ms } = timed(() => planOf(cutFleet(problem, solver)));
      const { value: alone, ms: aloneMs } = timed(() => planOf(cutFleet(problem)));
      // Offcuts would count as saved by pooling; it is told where there are none.
      const each = offcuts === 0 ? rigByRig(rigs, (pieces) => problemOf(pieces, menu)) : undefined;
      return { plan, ms, alone, aloneMs, rigByRig: each };
    });
    bySize.push(...runs);
    const what = `${kind.rigs} rigs, ${kind.models} models${kind.jitter > 0 ? ', each measured apart' : ''}`;
    rows[`${what}, ${offcuts} offcuts, ${name}`] = summary(runs);
  }
  rows[`all of ${kind.rigs}/${kind.models}, ${offcuts} offcuts`] = summary(bySize);
}
console.table(rows);

function summary(runs: readonly Run[]): Record<string, string> {
  const sum = (of: (run: Run) => number): number => runs.reduce((total, run) => total + of(run), 0);
  const worst = (of: (run: Run) => CutPlan): string =>
    `${(100 * Math.max(...runs.map((run) => of(run).cost / of(run).lowerBound - 1))).toFixed(3)} %`;
  const proven = (of: (run: Run) => CutPlan): string =>
    `${runs.filter((run) => of(run).proof !== 'none').length} of ${runs.length}`;
  const pooled = runs.filter((run) => run.rigByRig !== undefined);
  const apart = pooled.reduce((total, run) => total + run.rigByRig!, 0);
  const together = pooled.reduce((total, run) => total + run.plan.cost, 0);
  return {
    'ms p50/p95/max': quantiles(
      runs.map((run) => run.ms),
      0,
    ),
    proven: proven((run) => run.plan),
    'widest gap': worst((run) => run.plan),
    'without solver ms': quantiles(
      runs.map((run) => run.aloneMs),
      0,
    ),
    'proven without': proven((run) => run.alone),
    'gap without': worst((run) => run.alone),
    'under first fit': `${(100 * (1 - sum((run) => run.plan.cost) / sum((run) => run.plan.firstFitCost))).toFixed(2)} %`,
    'under rig by rig': pooled.length === 0 ? '' : `${(100 * (1 - together / apart)).toFixed(2)} %`,
  };
}
