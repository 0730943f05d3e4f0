// The work of a visit, task by task: how much of it there is, how long that takes, what it costs.
import type { Explained, Input } from '../explain.ts';
import { roofArea } from '../measure/areas.ts';
import { figureInput, type Long, run, sumOf, units, type Wide } from '../measure/figure.ts';
import type { Policy, Roof, Stated } from '../resolve/types.ts';
import type { ThreePoints } from '../statements/slots/lists.ts';
import type { TaskRate } from '../statements/slots/quantities.ts';
import type { Task } from '../statements/words.ts';
import { hoursText, type System } from '../values/display.ts';
import { rounded } from '../values/exact.ts';
import { moneyOf } from '../values/money.ts';
import { priced } from './priced.ts';
import type { LabourLine, Question } from './schema.ts';
import type { Takeoff } from './takeoff.ts';

/** How much there is of a task: a length, an area, or a number of times. */
export type Quantity =
  | { readonly kind: 'length'; readonly long: Long }
  | { readonly kind: 'area'; readonly wide: Wide }
  | { readonly kind: 'times'; readonly count: number; readonly figure: Explained };

export interface VisitTask {
  readonly task: Task;
  readonly quantity: Quantity;
}

const TREATING = new Set(['tape', 'seal', 'strip', 'replace', 'rebed']);

/**
 * The tasks of a visit in the order of work. A visit that tapes or seals begins with washing the whole roof; covers,
 * shrouds and caps of what is treated come off once; every visit is set up and cleared.
 */
export function tasksOf(jobs: readonly Takeoff[], roof: Roof | undefined, system: System): readonly VisitTask[] {
  const words = new Set(jobs.map(({ plan }) => plan.statement.word));
  const all = <T>(of: (job: Takeoff) => readonly T[]): readonly T[] => jobs.flatMap(of);
  const liquids = (task: string) =>
    all(({ liquids }) => liquids.flatMap((l) => (l.task === task ? (l.length ?? []) : [])));
  const strips = (hard: boolean) => all(({ stripped }) => stripped.flatMap((s) => (s.hard === hard ? s.length : [])));
  const beads = (around: boolean) => all((job) => job.beads.flatMap((b) => (b.around === around ? b.length : [])));
  const pieces = (frame: boolean) => all((job) => job.pieces.flatMap((p) => (p.frame === frame ? p : [])));
  const covered = new Map(
    jobs
      .filter(({ plan }) => TREATING.has(plan.statement.word))
      .flatMap(({ items }) => items.flatMap((item) => (item.comesOff ? [[item.name, item.count] as const] : []))),
  );
  const along = (task: Task, parts: readonly Long[]): VisitTask[] =>
    parts.length === 0 ? [] : [{ task, quantity: { kind: 'length', long: runOf(parts, system) } }];
  const over = (task: Task, wanted: boolean): VisitTask[] =>
    wanted && roof !== undefined ? [{ task, quantity: { kind: 'area', wide: roofArea(roof, system) } }] : [];
  const times = (task: Task, count: number, rule: string): VisitTask[] =>
    count === 0 ? [] : [{ task, quantity: { kind: 'times', count, figure: timesFigure(count, rule) } }];
  const covers = [...covered.values()].reduce((sum, count) => sum + count, 0);
  /** Each item once, however many plans name it; a plan of the whole roof is one. */
  const each = (word: Takeoff['plan']['statement']['word']): number => {
    const mine = jobs.filter(({ plan }) => plan.statement.word === word);
    const items = new Map(mine.flatMap(({ items }) => items.map(({ name, count }) => [name, count] as const)));
    return items.size === 0 ? Number(mine.length > 0) : [...items.values()].reduce((sum, count) => sum + count, 0);
  };
  return [
    ...times('set-up', 1, 'once a visit'),
    ...over('inspect', words.has('inspect')),
    ...times('inspect-inside', words.has('inspect') ? 1 : 0, 'once an inspection'),
    ...over('wash', isWashed(jobs)),
    ...times('cover', covers, 'what comes off and goes back on'),
    ...along('strip', strips(false)),
    ...along('strip-hard', strips(true)),
    ...along(
      'rebed',
      all(({ bedded }) => bedded),
    ),
    ...along('wipe', liquids('wipe')),
    ...along('prime', liquids('prime')),
    ...along('lay', pieces(false)),
    ...along('frame', pieces(true)),
    ...along('press', [...pieces(false), ...pieces(true)]),
    ...along('gun', beads(false)),
    ...along('gun-around', beads(true)),
    ...times('replace', each('replace'), 'each part'),
    ...times('patch', each('patch'), 'each place'),
    ...times('tighten', each('tighten'), 'each part'),
    ...over('coat', words.has('coat')),
    ...times('dry-out', each('dry'), 'each place'),
    ...times('temporary-cover', each('cover'), 'each place'),
  ];
}

/** Whether the visit washes the roof: where that is planned, and before anything is taped or sealed. */
export function isWashed(jobs: readonly Takeoff[]): boolean {
  return jobs.some(({ plan, pieces, beads }) => plan.statement.word === 'wash' || pieces.length + beads.length > 0);
}

/** A task as a line of the estimate; a question where no rate fits; nothing where the policy makes it part of another. */
export function labourLine(
  visit: number,
  { task, quantity }: VisitTask,
  policy: Policy,
  system: System,
): LabourLine | Question | undefined {
  const rate = policy.rates[task] as Policy['rates'][Task] | undefined;
  if (rate?.value === 'none') return undefined;
  const timed = rate && hoursOf(task, quantity, rate as Stated<ThreePoints<TaskRate>>, system);
  if (timed === undefined) {
    return {
      rule: 'no-rate',
      about: task,
      text: `The policy has no rate for \`${task}\` that fits ${quantityFigure(quantity).unit}.`,
    };
  }
  const cost = costOf(timed.likely, policy);
  const line = { visit, task, quantity: quantityFigure(quantity), hours: timed };
  return cost === undefined ? line : { ...line, cost };
}

export function quantityFigure(quantity: Quantity): Explained {
  if (quantity.kind === 'length') return quantity.long.figure;
  return quantity.kind === 'area' ? quantity.wide.figure : quantity.figure;
}

function timesFigure(count: number, rule: string): Explained {
  const text = count === 1 ? 'once' : `${count} times`;
  return {
    value: count,
    unit: 'times',
    text,
    rule,
    formula: 'number',
    inputs: [{ name: 'number', value: count, text }],
  };
}

function runOf(parts: readonly Long[], system: System): Long {
  const { formula, inputs } = sumOf(
    parts.map(({ figure }) => figure),
    'part',
  );
  const per = units[system].run.nm / units[system].length.nm;
  const nm = parts.reduce((sum, part) => sum + part.nm, 0);
  return run(nm, system, { rule: 'all of it together', formula: `(${formula}) / ${per}`, inputs });
}

/** Least, likely and most hours: the slowest rate gives the most. Undefined where the rate does not fit the quantity. */
function hoursOf(
  task: Task,
  quantity: Quantity,
  { value, origin }: Stated<ThreePoints<TaskRate>>,
  system: System,
): LabourLine['hours'] | undefined {
  const points = [value.least, value.likely, value.most].map((rate) => hours(task, quantity, rate, origin, system));
  const [a, likely, b] = points;
  if (a === undefined || likely === undefined || b === undefined) return undefined;
  return a.value <= b.value ? { least: a, likely, most: b } : { least: b, likely, most: a };
}

function hours(
  task: Task,
  quantity: Quantity,
  rate: TaskRate,
  origin: Input['origin'],
  system: System,
): Explained | undefined {
  const name = task.replaceAll('-', '_');
  const amount = figureInput('quantity', quantityFigure(quantity));
  const figure = (value: number, rule: string, formula: string, input: Input): Explained => ({
    value,
    unit: 'h',
    text: hoursText(value * 60),
    rule,
    formula,
    inputs: [amount, input],
  });
  const from = origin === undefined ? {} : { origin };
  if (rate.kind === 'effort') {
    if (quantity.kind !== 'times') return undefined;
    const input = { name: `${name}_time`, value: rate.minutes, unit: 'min', text: rate.text, ...from };
    return figure((quantity.count * rate.minutes) / 60, 'times the time of one', `quantity * ${name}_time / 60`, input);
  }
  const unit = units[system];
  const [kind, perHour, of] =
    rate.kind === 'length-rate'
      ? (['length', rate.nmPerH / unit.run.nm, unit.run.unit] as const)
      : (['area', rate.mm2PerH / unit.area.mm2, unit.area.unit] as const);
  if (quantity.kind !== kind || perHour === 0) return undefined;
  const input = { name: `${name}_rate`, value: perHour, unit: `${of} per h`, text: rate.text, ...from };
  return figure(
    (amount.value as number) / perHour,
    'by what one person does in an hour',
    `quantity / ${name}_rate`,
    input,
  );
}

/** The cost of likely hours, rounded half up for each line. */
function costOf(likely: Explained, { labour, workday }: Policy): LabourLine['cost'] {
  if (labour === undefined) return undefined;
  const { amount, currency, per, text } = labour.value;
  const day = per === 'day' ? workday.value.minutes / 60 : 1;
  if (day === 0) return undefined;
  const money = moneyOf(rounded((likely.value * Number(amount)) / day, 9), currency);
  const wage = { name: 'labour', value: Number(amount), unit: `${currency} per ${per}`, text, origin: labour.origin };
  const inputs = [figureInput('hours', likely), wage];
  if (per === 'h') return priced(money, 'hours times the price of one', 'hours * labour', inputs);
  const workdayInput = { name: 'workday', value: day, unit: 'h', text: workday.value.text, origin: workday.origin };
  return priced(money, 'days times the price of one', 'hours / workday * labour', [...inputs, workdayInput]);
}
