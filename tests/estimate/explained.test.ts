import { ConstantNode, type MathNode, parse, SymbolNode } from 'mathjs';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { type Due, duesOf } from '../../language/due/index.ts';
import type { Input } from '../../language/explain.ts';
import { dates, fleet, papers, single } from '../documents/examples.ts';
import { projectOf } from '../project/workspace.ts';

// Every figure of the written documents, worked out again from what it says of itself: numbers by mathjs, a general
// library that knows nothing of rigs, dates by Temporal. The walk is over plain JSON: what is added to a document later
// is checked too.

interface Written {
  readonly value: unknown;
  readonly unit?: string;
  readonly formula: string;
  readonly inputs: readonly Input[];
}

function* figuresIn(data: unknown): Generator<Written> {
  if (typeof data !== 'object' || data === null) return;
  if ('value' in data && 'formula' in data && 'inputs' in data) yield data as Written;
  for (const each of Object.values(data)) yield* figuresIn(each);
}

/** The number that a formula gives over its inputs. */
function numberOf({ formula, inputs }: Pick<Written, 'formula' | 'inputs'>): number {
  const known = new Map(inputs.map(({ name, value }) => [name, value]));
  if (known.size !== inputs.length) throw new Error(`an input stands twice: ${formula}`);
  const filled = parse(formula).transform((node: MathNode) => {
    const value = node instanceof SymbolNode ? known.get(node.name) : undefined;
    return value === undefined ? node : new ConstantNode(value as number);
  });
  return Number(filled.evaluate());
}

type Term = Temporal.PlainDate | Temporal.Duration | number;

const isDate = (value: unknown): boolean => typeof value === 'string' && /^\d{4}-\d{2}-\d{2}$/.test(value);

/** A date, a period such as `1 year 6 months`, or a number. */
function termOf(value: number | string): Term {
  if (typeof value === 'number') return value;
  if (isDate(value)) return Temporal.PlainDate.from(value);
  const parts = [...value.matchAll(/(\d+) (year|month|week|day)s?/g)];
  if (parts.map(([part]) => part).join(' ') !== value) throw new Error(`${value} is no date and no period`);
  return Temporal.Duration.from(Object.fromEntries(parts.map(([, count, unit]) => [`${unit}s`, Number(count)])));
}

/** The date that a formula such as `min(found + within, departure - 1 day)` gives over its inputs. */
function dateOf({ formula, inputs }: Pick<Written, 'formula' | 'inputs'>): string {
  const known = new Map(inputs.map(({ name, value }) => [name, termOf(value)]));
  known.set('day', Temporal.Duration.from({ days: 1 }));
  return String(evaluated(parse(formula)));

  function evaluated(node: MathNode): Term {
    if ('content' in node) return evaluated(node.content as MathNode);
    if (node instanceof ConstantNode) return node.value as number;
    if (node instanceof SymbolNode) {
      const term = known.get(node.name);
      if (term === undefined) throw new Error(`${node.name} is no input: ${formula}`);
      return term;
    }
    const { args, fn } = node as MathNode & { readonly args: readonly MathNode[]; readonly fn: unknown };
    return applied(String((fn as { name?: string }).name ?? fn), args.map(evaluated));
  }

  function applied(how: string, [a, b, ...more]: readonly Term[]): Term {
    const later = a instanceof Temporal.PlainDate && b instanceof Temporal.PlainDate;
    if (how === 'min' && later && more.length === 0) return Temporal.PlainDate.compare(a, b) <= 0 ? a : b;
    if (how === 'min' && later) return applied('min', [applied('min', [a, b]), ...more]);
    if (how === 'subtract' && later) return b.until(a, { largestUnit: 'day' }).days;
    if (a instanceof Temporal.PlainDate && b !== undefined && !(b instanceof Temporal.PlainDate)) {
      const period = typeof b === 'number' ? Temporal.Duration.from({ days: b }) : b;
      if (how === 'add') return a.add(period);
      if (how === 'subtract') return a.subtract(period);
    }
    // Half of a number of days is rounded down to a day.
    if (how === 'divide' && typeof a === 'number' && typeof b === 'number') return Math.floor(a / b);
    if (how === 'multiply' && a === 1 && b instanceof Temporal.Duration) return b;
    throw new Error(`${how} is not for dates: ${formula}`);
  }
}

const documents = [...papers].filter(([name]) => name.endsWith('.json')).map(([name, text]) => [name, text] as const);

describe('the figures of the written documents', () => {
  it.each(documents)('%s: each comes out again from its formula, within 1e-9', (name, text) => {
    const figures = [...figuresIn(JSON.parse(text))];
    expect(figures.length, name).toBeGreaterThan(10);
    const wrong = figures.filter((figure) => {
      const { value, inputs } = figure;
      if (isDate(value)) return dateOf(figure) !== value;
      // What is left of a roll may be nothing: then the inputs say how fine it can be worked.
      const size = Math.max(0, ...inputs.map((input) => (typeof input.value === 'number' ? Math.abs(input.value) : 0)));
      const off = Math.abs(numberOf(figure) - (value as number));
      return !(off <= 1e-9 * Math.abs(value as number) + 1e-13 * size);
    });
    expect(wrong).toEqual([]);
  });

  it('are more than a thousand', () => {
    const count = documents.reduce((sum, [, text]) => sum + [...figuresIn(JSON.parse(text))].length, 0);
    console.info(`${count} figures in ${documents.length} documents recomputed from their explanations`);
    expect(count).toBeGreaterThan(1000);
  });

  it('would not pass by chance: a figure that is off by a millionth is found', () => {
    const [, text] = documents.find(([name]) => name === 'Wren.estimate.json')!;
    const changed = [...figuresIn(JSON.parse(text))].filter(({ value }) => typeof value === 'number' && value !== 0);
    for (const figure of changed.slice(0, 200)) {
      const off = numberOf(figure) / ((figure.value as number) * (1 + 1e-6)) - 1;
      expect(Math.abs(off)).toBeGreaterThan(1e-9);
    }
  });
});

/** Every due date of a folder of the examples, seen from some days of its life. */
function duesIn(texts: Readonly<Record<string, string>>, asOf: string): readonly Due[] {
  const project = projectOf(texts);
  const on = { asOf, today: asOf > dates.today ? asOf : dates.today };
  return Object.keys(texts).flatMap((path) => project.rigs(path).flatMap((view) => duesOf(view, on)));
}

describe('the dates that fall due', () => {
  const dues = ['2025-06-01', '2026-05-01', '2026-08-01', '2026-11-25', '2027-06-01', '2036-01-01'].flatMap((asOf) =>
    [single, fleet].flatMap((texts) => duesIn(texts, asOf)),
  );

  it('come out again from their formulas', () => {
    const wrong = dues.flatMap(({ date, moved, because, explained }) => {
      const again = dateOf(explained);
      return again === (moved?.from ?? date) ? [] : [{ date, again, because, formula: explained.formula }];
    });
    console.info(
      `${dues.length} dates recomputed, by ${new Set(dues.map(({ explained }) => explained.formula)).size} formulas`,
    );
    expect(wrong).toEqual([]);
    expect(dues.length).toBeGreaterThan(300);
  });
});
