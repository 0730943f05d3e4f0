import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { evaluate, type Unit, unit } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { jsonSchemas, printSchema } from '../../language/documents/schemas.ts';
import type { Explained } from '../../language/explain.ts';
import { check } from '../../server/cli/check.ts';
import { asked } from '../../server/cli/paths.ts';
import { dates, paper, papers } from './examples.ts';

const root = new URL('../../', import.meta.url);
const schemaFile = (name: string) => readFileSync(new URL(`client/schemas/${name}`, root), 'utf8');
const json = [...papers].filter(([name]) => name.endsWith('.json'));

/** Every figure with an explanation in a document. */
function* figures(value: unknown): Iterable<Explained> {
  if (typeof value !== 'object' || value === null) return;
  if ('formula' in value && 'inputs' in value) yield value as Explained;
  for (const one of Object.values(value)) yield* figures(one);
}

/** Every text anywhere in a document. */
function* texts(value: unknown): Iterable<string> {
  if (typeof value === 'string') yield value;
  else if (typeof value === 'object' && value !== null) for (const one of Object.values(value)) yield* texts(one);
}

describe('the published schemas', () => {
  it('do not drift from what is written (npm run generate:schemas)', () => {
    const schemas = Object.entries(jsonSchemas());
    expect(schemas.map(([name]) => name)).toEqual([
      'estimate.schema.json',
      'schedule.schema.json',
      'check.schema.json',
      'compare.schema.json',
      'rigs.schema.json',
      'seams.schema.json',
      'dues.schema.json',
      'visits.schema.json',
      'budget.schema.json',
    ]);
    for (const [name, schema] of schemas) expect(schemaFile(name)).toBe(printSchema(schema));
  });

  // An independent validator, over the published files.
  const ajv = new Ajv2020({ strict: false, formats: { date: true } });
  const compile = (name: string) => ajv.compile(JSON.parse(schemaFile(`${name}.schema.json`)));
  const valid = { estimate: compile('estimate'), schedule: compile('schedule'), check: compile('check') };

  it.each(json)('%s is valid, and says which schema it has', (name, text) => {
    const kind = name.includes('.estimate.') ? 'estimate' : 'schedule';
    const data = JSON.parse(text);
    valid[kind](data);
    expect(valid[kind].errors).toBe(null);
    expect(data.document).toBe(JSON.parse(schemaFile(`${kind}.schema.json`)).$id);
    expect(data.asOf).toBe(dates.asOf);
  });

  it('refuse a paper in which something is amiss', () => {
    const estimate = JSON.parse(paper('Wren.estimate.json'));
    delete estimate.estimates[0].totals.complete;
    expect(valid.estimate(estimate)).toBe(false);
    const schedule = JSON.parse(paper('Wren.schedule.json'));
    schedule.schedule.visits[0].days[0] = 20270404;
    expect(valid.schedule(schedule)).toBe(false);
  });

  it('hold for what `rigseam check --json` says', () => {
    const from = fileURLToPath(root).replace(/[\\/]$/, '');
    const found = ['examples/single', 'examples/fleet'].map((folder) =>
      check(asked([`${from}/${folder}`], from), dates),
    );
    for (const each of found) {
      valid.check(each);
      expect(valid.check.errors).toBe(null);
    }
    const [finding] = found.flatMap(({ findings }) => findings);
    expect(finding).toBeDefined();
    expect(valid.check({ files: 1, findings: [{ ...finding, severity: 'fatal' }] })).toBe(false);
  });
});

const known: Readonly<Record<string, string>> = { 'fl-oz': 'floz', 'sq-ft': 'sqft', 'sq-m': 'm2', gal: 'gallon' };
/** Half of the last place that a text of the unit shows: feet and inches to 1/4 in. */
const halfPlace: Readonly<Record<string, number>> = {
  ft: 0.125 / 12,
  in: 0.125,
  gal: 0.005,
  L: 0.005,
  m: 0.005,
  h: 0.005,
};
const measure = /(\d+(?: \d+\/\d+)?(?:\.\d+)?|\d+\/\d+) (in|ft|mm|m|sq-ft|sq-m|fl-oz|gal|mL|L|h)(?![\w-])/g;

/** The measure that a text such as `18 ft 8 3/4 in` names, and how far it may be from the figure. */
function measured(text: string): { readonly value: Unit; readonly within: Unit } | undefined {
  const parts = [...text.matchAll(measure)];
  if (parts.map(([part]) => part).join(' ') !== text || parts.length === 0) return undefined;
  const each = parts.map(([, number = '', name = '']) => {
    const amount = number.split(' ').reduce((sum, one) => sum + Number(evaluate(one)), 0);
    return unit(amount, known[name] ?? name);
  });
  const name = parts[0]?.[2] ?? '';
  const place = name === 'mL' || name === 'mm' ? 0.5 : name === 'sq-m' ? 0.005 : (halfPlace[name] ?? 0.05);
  return {
    value: each.reduce((sum, one) => evaluate('a + b', { a: sum, b: one }) as Unit),
    within: unit(place * 1.0001, known[name] ?? name),
  };
}

// mathjs is a general expression evaluator with units of its own: it knows nothing of rigs.
describe('every figure', () => {
  it('can be worked out again from its formula and inputs', () => {
    let count = 0;
    for (const [name, text] of json) {
      for (const figure of figures(JSON.parse(text))) {
        // Some names are words of mathjs (`end`): each gets a mark of its own.
        const scope = Object.fromEntries(figure.inputs.map((input) => [`of_${input.name}`, input.value]));
        expect(Object.keys(scope), figure.formula).toHaveLength(figure.inputs.length);
        const formula = figure.inputs.reduce(
          (all, input) => all.replace(new RegExp(`\\b${input.name}\\b`, 'g'), `of_${input.name}`),
          figure.formula,
        );
        const off = Math.abs(Number(evaluate(formula, scope)) - figure.value);
        const message = `${name}: ${figure.text} = ${figure.formula} of ${JSON.stringify(scope)}`;
        expect(off, message).toBeLessThanOrEqual(1e-6 * Math.max(1, Math.abs(figure.value)));
        count++;
      }
    }
    expect(count).toBeGreaterThan(1000);
  });

  it('says in words what its value says in its unit', () => {
    let count = 0;
    for (const [name, text] of json) {
      for (const figure of figures(JSON.parse(text))) {
        const said = measured(figure.text);
        if (said === undefined) continue;
        const to = known[figure.unit] ?? figure.unit;
        const off = Math.abs(said.value.toNumber(to) - figure.value);
        expect(off, `${name}: ${figure.text} is ${figure.value} ${figure.unit}`).toBeLessThanOrEqual(
          said.within.toNumber(to),
        );
        count++;
      }
    }
    expect(count).toBeGreaterThan(500);
  });
});

const shownFigure =
  /(?<![\d.-])(?:\d+ ft \d+(?: \d+\/\d+)? in|\d+ ft \d+\/\d+ in|\d+(?:\.\d+)?(?: \d+\/\d+)? (?:in|ft|sq-ft|sq-m|fl-oz|mL|gal|L|m|mm|h|min|USD|EUR|%|strips?|cartridges?|rolls?)(?![\w-]))|(?:overdue|in|since) \d+ days?/g;

/** What a paper shows, but for its cautions, which are no figures of the rig. */
const shownIn = (text: string) => (text.split(/^#+ Cautions/m)[0] ?? '').match(shownFigure) ?? [];

describe('the JSON beside a Markdown paper', () => {
  // What is late and the budget have rows for other tools instead.
  const all = [...papers.keys()].filter((name) => name.endsWith('.md') && !/\.(late|budget)\./.test(name));
  it.each(all)('has every figure that %s shows', (name) => {
    // A rig's part of a fleet's schedule has its figures in that of the fleet.
    const data = JSON.parse(paper(name.replace(/^\w+\.(?=\w+\.schedule)/, '').replace(/md$/, 'json')));
    const held = new Set([...texts(data)].flatMap((text) => text.match(shownFigure) ?? []));
    const shown = shownIn(paper(name));
    expect(shown.length).toBeGreaterThan(5);
    expect(shown.filter((figure) => !held.has(figure))).toEqual([]);
  });

  it('explains the hours of every visit and task, and the days to every due date', () => {
    const { schedule, figures: explained } = JSON.parse(paper('Highmeadow.schedule.json'));
    const tasks = schedule.visits.flatMap((visit: { tasks: { id: string; minutes: number }[] }) => visit.tasks);
    expect(Object.keys(explained.tasks).sort()).toEqual(tasks.map(({ id }: { id: string }) => id).sort());
    for (const { id, minutes } of tasks) expect(explained.tasks[id].value).toBeCloseTo(minutes / 60, 9);
    for (const { id, minutes } of schedule.visits) expect(explained.visits[id].value).toBeCloseTo(minutes / 60, 2);
    for (const { id, days } of schedule.dues) expect(explained.dues[id].value).toBe(days);
    expect(new Set(schedule.dues.map(({ id }: { id: string }) => id)).size).toBe(schedule.dues.length);
  });
});
