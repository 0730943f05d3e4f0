// The estimate of a rig: what its plans take, what is to be bought and how it is cut, what the work costs.
import type { Explained } from '../explain.ts';
import { roofArea } from '../measure/areas.ts';
import { sumOf } from '../measure/figure.ts';
import { compareKeys } from '../measure/layorder.ts';
import { openPlans } from '../resolve/done.ts';
import type { Cleaner, Dates, RigView } from '../resolve/types.ts';
import { seamStates } from '../seams/index.ts';
import { hoursText } from '../values/display.ts';
import { assumptionsOf } from './assumptions.ts';
import { buyContainers } from './containers.ts';
import { isWashed, labourLine, tasksOf } from './labour.ts';
import { jobLine, liquidLine, numbered } from './lines.ts';
import { type LiquidNeed, liquidNeed } from './liquid.ts';
import { type Needing, type Needs, needsOf, uncovered } from './needs.ts';
import type { Scene } from './scene.ts';
import type { Estimate, LabourLine, Purchase, Question } from './schema.ts';
import { onHandOf } from './stock.ts';
import { type Takeoff, takeOff } from './takeoff.ts';
import { buyTape, type Numbered } from './tape.ts';
import { currencyOf, otherCurrencies, totalsOf } from './totals.ts';
import { type Visit, visitsOf } from './visits.ts';

/** A visit with its number. */
interface Planned extends Visit, Needing {
  readonly number: number;
}

/**
 * The estimate of a rig's plans on the as-of date: plain data, every figure explained. Each line of money is rounded half
 * up at the minor unit and the sums are those of the rounded lines. What cannot be counted or priced is an open question.
 */
export function estimateOf(view: RigView, dates: Dates): Estimate {
  return estimateWithNeeds(view, dates).estimate;
}

/** The estimate of a rig, and what it needs of each material, for a purchase together with others. */
export function estimateWithNeeds(
  view: RigView,
  { asOf }: Dates,
): { readonly estimate: Estimate; readonly needs: Needs } {
  const { rig } = view;
  const { policy } = rig;
  const system = policy.units.value;
  const questions: Question[] = [];
  const scene: Scene = { view, asOf, states: seamStates(view, asOf), system };
  const visits = plannedVisits(scene, questions);
  const jobs = visits.flatMap((visit) => visit.jobs);
  questions.push(...jobs.flatMap((job) => job.questions));

  const pieces = numberedPieces(visits);
  const currency = currencyOf(policy, [...pricesOf(visits)]);
  const needs = needsOf(visits, pieces);
  questions.push(...uncovered(visits));
  const { purchases, cutting } = purchasesOf(needs, scene, currency, questions);

  const labour: LabourLine[] = [];
  for (const visit of visits) {
    for (const task of tasksOf(visit.jobs, rig.roof, system)) {
      const line = labourLine(visit.number, task, policy, system);
      if (line !== undefined && 'rule' in line) questions.push(line);
      else if (line !== undefined) labour.push(line);
    }
  }
  if (labour.length > 0 && policy.labour === undefined) {
    const text = 'The policy does not say what an hour of work costs: the work has hours and no money.';
    questions.push({ rule: 'no-labour-rate', about: 'labour', text });
  }
  const priced = [
    ...purchases.map(({ material, cost }) => ({ about: material, ...(cost && { cost }) })),
    ...labour.map(({ cost }) => ({ about: 'labour', ...(cost && { cost }) })),
  ];
  questions.push(...otherCurrencies(priced, currency));

  const open = questions.filter((one, i) => questions.findIndex(({ text }) => text === one.text) === i);
  const body = {
    visits: visits.map(({ number, from, to, liquids }) => ({
      number,
      from,
      ...(to === undefined ? {} : { to }),
      liquids: liquids.map(liquidLine),
    })),
    jobs: visits.flatMap(({ number, jobs: mine }) => mine.map((job) => jobLine(job, number, pieces.get(job) ?? []))),
    cutting,
    purchases,
    labour,
    hours: hoursOf(labour),
    totals: totalsOf(purchases, labour, policy, currency, open),
  };
  const estimate: Estimate = {
    rig: { name: rig.name, file: rig.file, ...(rig.identity.unit && { unit: rig.identity.unit.value }) },
    asOf,
    system,
    ...body,
    assumptions: assumptionsOf(body),
    questions: open,
  };
  return { estimate, needs };
}

function plannedVisits(scene: Scene, questions: Question[]): readonly Planned[] {
  return visitsOf(openPlans(scene.view.rig, scene.asOf), scene.asOf).map((visit, i) => {
    const counted = new Set<string>();
    const jobs = visit.plans.map((plan) => takeOff(plan, scene, counted));
    return { ...visit, number: i + 1, jobs, liquids: washOf(jobs, scene, questions) };
  });
}

/** The washing of the whole roof, by the cleaner of a planned wash, else the policy's. */
function washOf(jobs: readonly Takeoff[], { view, system }: Scene, questions: Question[]): readonly LiquidNeed[] {
  const { roof, policy } = view.rig;
  if (!isWashed(jobs)) return [];
  if (roof === undefined) {
    questions.push({
      rule: 'not-counted',
      about: 'wash',
      text: 'The roof has no size, so its washing is not counted.',
    });
    return [];
  }
  const planned = jobs.find(({ plan, materials }) => plan.statement.word === 'wash' && materials.cleaner !== undefined);
  const name = policy.washWith?.value;
  const found = name === undefined ? undefined : view.material(name);
  const cleaner: Cleaner | undefined = planned?.materials.cleaner ?? (found?.kind === 'cleaner' ? found : undefined);
  if (cleaner === undefined) {
    const text = 'No cleaner is named for washing the roof: only its area is counted.';
    questions.push({ rule: 'no-cleaner', about: 'wash', text });
  }
  return [liquidNeed('wash', cleaner, roofArea(roof, system), undefined, system)];
}

/** The pieces of all jobs, numbered from 1 through all visits in laying order. */
function numberedPieces(visits: readonly Planned[]): ReadonlyMap<Takeoff, readonly Numbered[]> {
  const all = visits.flatMap(({ jobs }) =>
    jobs
      .flatMap((job) => job.pieces.map((piece) => ({ job, piece })))
      .sort((a, b) => compareKeys(a.piece.lay, b.piece.lay)),
  );
  const byJob = new Map<Takeoff, Numbered[]>();
  for (const [i, { job, piece }] of all.entries()) {
    byJob.set(job, [...(byJob.get(job) ?? []), numbered(piece, i + 1, job.tape!.name)]);
  }
  return byJob;
}

function* pricesOf(visits: readonly Planned[]): Generator<string | undefined> {
  for (const { jobs, liquids } of visits) {
    for (const { tape, sealant, liquids: mine } of jobs) {
      for (const sale of tape?.rolls ?? []) yield sale.price?.currency;
      for (const sale of [...(sealant?.cartridges ?? []), ...(sealant?.cases ?? [])]) yield sale.price?.currency;
      for (const { material } of mine) for (const sale of material?.containers ?? []) yield sale.price?.currency;
    }
    for (const { material } of liquids) for (const sale of material?.containers ?? []) yield sale.price?.currency;
  }
}

function purchasesOf(
  needs: Needs,
  { view, asOf, system }: Scene,
  currency: string | undefined,
  questions: Question[],
): Pick<Estimate, 'purchases' | 'cutting'> {
  const { policy } = view.rig;
  const purchases: Purchase[] = [];
  const cutting: Estimate['cutting'][number][] = [];
  for (const { tape, pieces } of needs.tapes) {
    const bought = buyTape(tape, pieces, onHandOf(view.rig, tape, asOf), policy, currency, system);
    purchases.push(bought.purchase);
    if (bought.cutting !== undefined) cutting.push(bought.cutting);
    questions.push(...bought.questions);
  }
  for (const { material, fillings } of needs.poured) {
    const bought = buyContainers(material, fillings, onHandOf(view.rig, material, asOf), policy, currency, system);
    purchases.push(bought.purchase);
    questions.push(...bought.questions);
  }
  return { purchases, cutting };
}

function hoursOf(labour: readonly LabourLine[]): Estimate['hours'] {
  const sum = (which: keyof LabourLine['hours']): Explained => {
    const figures = labour.map(({ hours }) => hours[which]);
    const value = figures.reduce((total, figure) => total + figure.value, 0);
    return { value, unit: 'h', text: hoursText(value * 60), rule: 'all tasks together', ...sumOf(figures, 'task') };
  };
  return { least: sum('least'), likely: sum('likely'), most: sum('most') };
}
