import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { evaluate } from 'mathjs';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { cautionsFor } from '../../language/documents/cautions.ts';
import { jsonSchemas, printSchema } from '../../language/documents/schemas.ts';
import type { Explained } from '../../language/explain.ts';
import { fleet, papers, papersOf, papersOfText, single } from './examples.ts';

const json = [...papers].filter(([name]) => name.endsWith('.json'));
const schemaFile = (name: string) => readFileSync(new URL(`../../client/schemas/${name}`, import.meta.url), 'utf8');

/** Every figure with an explanation in a document. */
function* figures(value: unknown): Iterable<Explained> {
  if (Array.isArray(value)) for (const one of value) yield* figures(one);
  else if (typeof value === 'object' && value !== null) {
    if ('formula' in value && 'inputs' in value) yield value as Explained;
    for (const one of Object.values(value)) yield* figures(one);
  }
}

describe('what is written', () => {
  it('is six papers for each rig and each fleet', () => {
    const names = new Set([...papers.keys()].map((name) => name.split('.')[0]));
    expect([...names].sort()).toEqual([
      'Brook',
      'Cairn',
      'Dell',
      'Fell',
      'Glen',
      'Heath',
      'Highmeadow',
      'Lough',
      'Moor',
      'Wren',
    ]);
    for (const name of names)
      for (const end of [
        'estimate.md',
        'estimate.csv',
        'estimate.json',
        'schedule.md',
        'schedule.ics',
        'schedule.json',
      ])
        expect(papers.has(`${name}.${end}`)).toBe(true);
  });

  it('has the same bytes on a second run, whatever the order in which files are seen', () => {
    const turned = (texts: Record<string, string>) => Object.fromEntries(Object.entries(texts).reverse());
    for (const texts of [single, fleet])
      for (const [name, text] of papersOf(turned(texts))) expect(text, name).toBe(papers.get(name));
  });

  it('names no folder of this machine', () => {
    for (const [name, text] of papers) expect(text, name).not.toMatch(/"file": "\//);
  });
});

describe('the JSON papers', () => {
  it('have published schemas that do not drift (npm run generate:schemas)', () => {
    for (const [name, schema] of Object.entries(jsonSchemas())) expect(schemaFile(name)).toBe(printSchema(schema));
  });

  const ajv = new Ajv2020({ strict: false, formats: { date: true } });
  const valid = {
    estimate: ajv.compile(JSON.parse(schemaFile('estimate.schema.json'))),
    schedule: ajv.compile(JSON.parse(schemaFile('schedule.schema.json'))),
  };
  it.each(json)('%s is valid by its schema', (name, text) => {
    const validate = name.includes('.estimate.') ? valid.estimate : valid.schedule;
    validate(JSON.parse(text));
    expect(validate.errors).toBe(null);
  });

  it('are refused by the schema when something is amiss', () => {
    const paper = JSON.parse(papers.get('Wren.estimate.json') as string);
    delete paper.estimates[0].totals.complete;
    expect(valid.estimate(paper)).toBe(false);
  });

  // mathjs is a general expression evaluator: it knows nothing of rigs.
  it('explain every figure so that it can be worked out again', () => {
    let count = 0;
    for (const [name, text] of json) {
      for (const figure of figures(JSON.parse(text))) {
        // Some names are words of mathjs (`end`): each gets a mark of its own.
        const scope = Object.fromEntries(figure.inputs.map((input) => [`of_${input.name}`, input.value]));
        const formula = figure.inputs.reduce(
          (text, { name }) => text.replace(new RegExp(`\\b${name}\\b`, 'g'), `of_${name}`),
          figure.formula,
        );
        const again = Number(evaluate(formula, scope));
        expect(
          Math.abs(again - figure.value),
          `${name}: ${figure.text} = ${figure.formula} of ${JSON.stringify(scope)}`,
        ).toBeLessThanOrEqual(1e-6 * Math.max(1, Math.abs(figure.value)));
        count++;
      }
    }
    expect(count).toBeGreaterThan(1000);
  });

  it.each(['Wren', 'Highmeadow', 'Dell'])('hold every figure that the Markdown of %s shows', (name) => {
    const figureText = /\d+(?:\.\d+)?(?: \d+\/\d+)? (?:in|ft|sq-ft|sq-m|fl-oz|mL|gal|L|m|mm|h|USD|EUR)\b/g;
    const known = papers.get(`${name}.estimate.json`) as string;
    const shown = (papers.get(`${name}.estimate.md`) as string).split('## Cautions')[0]?.match(figureText) ?? [];
    expect(shown.length).toBeGreaterThan(20);
    for (const figure of shown) expect(known.includes(figure), figure).toBe(true);
  });
});

const awkward = `tape Strip { width 4 in  roll 50 ft at 58 USD  bonds-to epdm }
policy P { currency USD  labour 50 USD per h  tax 6 % on materials }
rig Odd under P {
  unit "=1+2\\";=1+2 | *x* <b>"
  built 2020-03
  roof 20 ft by 8 ft epdm
  cap rear
  quote "=HYPERLINK(\\"x\\")" 100 USD for recoat until 2027-01-31
  tape rear with Strip
}
`;

describe('what people typed', () => {
  it('never becomes a formula in a spreadsheet', () => {
    const names = { ...single, 'a.rig': awkward };
    const csv = papersOfText(names['a.rig']).get('Odd.estimate.csv') as string;
    const rows = Papa.parse<string[]>(csv.trim()).data;
    for (const cell of rows.flat()) expect(cell).not.toMatch(/^[=+@\t\r\n]|^-\D/);
  });
  it('never becomes markup in Markdown', () => {
    const markdown = papersOfText(awkward).get('Odd.estimate.md') as string;
    expect(markdown).toContain('Unit =1+2";=1+2 \\| \\*x\\* \\<b\\>.');
  });
  // OWASP, CSV Injection: the published pair.
  it('is escaped in CSV as OWASP shows', () => {
    expect(Papa.unparse([['=1+2";=1+2']], { escapeFormulae: /^[=+\-@\t\r\n]/ })).toBe(`"'=1+2"";=1+2"`);
  });
  it('leaves numbers of a CSV numbers', () => {
    const rows = Papa.parse<Record<string, string>>((papers.get('Wren.estimate.csv') as string).trim(), {
      header: true,
    }).data;
    const total = rows.find((row) => row.section === 'total' && row.item === 'total');
    const { estimates } = JSON.parse(papers.get('Wren.estimate.json') as string);
    expect(Number(total?.amount)).toBe(Number(estimates[0].totals.total.money.amount));
  });
});

describe('cautions', () => {
  const all = {
    roofWork: true,
    solvents: true,
    urethane: true,
    stripping: true,
    washing: true,
    openings: true,
    wet: true,
    old: true,
  };
  it('are at most seven, falls first', () => {
    const cautions = cautionsFor(all);
    expect(cautions).toHaveLength(7);
    expect(cautions[0]?.text).toMatch(/^Falls/);
  });
  it('are only those that apply', () => {
    expect(
      cautionsFor({
        ...all,
        roofWork: false,
        solvents: false,
        urethane: false,
        stripping: false,
        washing: false,
        wet: false,
      }),
    ).toEqual([]);
  });
  it('stand in both papers of every rig with planned work, and no paper says that a roof is safe or dry', () => {
    for (const [name, text] of papers) {
      if (name.endsWith('.md') && text.includes('## The work')) expect(text, name).toContain('Falls');
      expect(text, name).not.toMatch(/\b(roof|rig) is (safe|dry)\b/i);
      expect(text, name).not.toMatch(/safe to walk/i);
    }
  });
});

describe('a rig without plans', () => {
  it('has papers that say so', () => {
    const written = papersOfText(
      'rig Bare {\n  roof 20 ft by 8 ft epdm\n  cap rear\n  inspected 2026-10-01 { rest sound }\n}\n'
        .replace('{ rest', '{\n rest')
        .replace('sound }', 'sound\n }'),
    );
    expect(written.get('Bare.estimate.md')).toContain('Nothing is planned');
    expect(written.get('Bare.schedule.md')).toContain('2027-04-01');
  });
});
