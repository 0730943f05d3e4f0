/**
 * Times the purchase on seeded random rigs and prints p50, p95 and the worst, the share proven, and what the plan saves
 * against first-fit-decreasing. Run it with `node tests/bench/cutting.ts [rigs per menu]`; lengths are quarter inches.
 */
import { type CutPlan, type CutProblem, cutRolls } from '../../language/cutting/index.ts';
import { makeMenu } from '../../language/cutting/menu.ts';
import { makeStage } from '../../language/cutting/plan.ts';
import { spliceChoices } from '../../language/cutting/splices.ts';
import { cheapestStages } from '../../language/cutting/stages.ts';
import { drawing, FOOT, MENUS, problemOf, quantiles, type RollMenu, rig } from './roof.ts';

const NODES = 200_000;

function rigProblem(seed: number, menu: RollMenu, offcuts: number): CutProblem {
  const draw = drawing(seed);
  const pieces = rig(draw);
  const held = Array.from({ length: offcuts }, () => draw(3 * FOOT, 22 * FOOT));
  return { ...problemOf(pieces, menu, held), budget: { nodes: NODES } };
}

/** Milliseconds that the purchase alone takes: the first two aims. */
function timePurchase(problem: CutProblem): number {
  const start = performance.now();
  const menu = makeMenu(problem);
  const longest = menu.rolls.at(-1)!.length;
  const long = problem.pieces.flatMap(({ length }, piece) => (length > longest ? [{ piece, length }] : []));
  const { choices } = spliceChoices(long, { ...problem, rolls: menu.rolls });
  cheapestStages(
    choices.map((choice) => makeStage(problem, menu, choice)),
    { nodes: NODES },
  );
  return performance.now() - start;
}

function timePlan(problem: CutProblem): { plan: CutPlan; ms: number } {
  const start = performance.now();
  const result = cutRolls(problem);
  const ms = performance.now() - start;
  if (!result.ok) throw new Error(`rig has no plan: ${result.reason}`);
  return { plan: result.plan, ms };
}

const count = Number(process.argv[2] ?? 100);
for (let seed = 0; seed < 40; seed++) timePlan(rigProblem(seed, MENUS['A 25+50']!, seed % 4));

const rows: Record<string, Record<string, string>> = {};
const all: { plan: CutPlan; ms: number; purchase: number }[] = [];
for (const [name, menu] of Object.entries(MENUS)) {
  for (const offcuts of [0, 3]) {
    const runs = Array.from({ length: count }, (_, i) => {
      const problem = rigProblem(1000 + i, menu, offcuts);
      return { purchase: timePurchase(problem), ...timePlan(problem) };
    });
    all.push(...runs);
    rows[`${name}, ${offcuts} offcuts`] = summary(runs);
  }
}
rows.all = summary(all);
console.table(rows);

function summary(runs: readonly { plan: CutPlan; ms: number; purchase: number }[]): Record<string, string> {
  const share = (holds: (plan: CutPlan) => boolean): string =>
    `${((100 * runs.filter(({ plan }) => holds(plan)).length) / runs.length).toFixed(1)} %`;
  const cost = runs.reduce((sum, { plan }) => sum + plan.cost, 0);
  const firstFit = runs.reduce((sum, { plan }) => sum + plan.firstFitCost, 0);
  return {
    'purchase ms p50/p95/max': quantiles(runs.map((run) => run.purchase)),
    'all aims ms p50/p95/max': quantiles(runs.map((run) => run.ms)),
    'money proven': share((plan) => plan.proof !== 'none'),
    'by volume': share((plan) => plan.proof === 'volume'),
    'leftover proven': share((plan) => plan.longestLeftProven),
    'first fit beaten': share((plan) => plan.cost < plan.firstFitCost),
    saved: `${(100 * (1 - cost / firstFit)).toFixed(2)} %`,
  };
}
