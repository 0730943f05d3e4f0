// The same rigs as YAML, as a careful person would lay them out, and what a JSON Schema says of them: for the peer.
import type { GeneratedRig } from './records.ts';

type Plain = string | readonly string[] | readonly Fields[] | undefined;
type Fields = Readonly<Record<string, Plain>>;

/** Texts that YAML would read as something else are quoted. */
const scalar = (text: string) => (/^[A-Za-z][\w ./-]*$/.test(text) ? text : `"${text}"`);

function fieldLines(fields: Fields, indent: string): string[] {
  return Object.entries(fields).flatMap(([key, value]) => {
    if (value === undefined) return [];
    if (typeof value === 'string') return [`${indent}${key}: ${scalar(value)}`];
    if (value.every((one) => typeof one === 'string')) return [`${indent}${key}: [${value.map(scalar).join(', ')}]`];
    const inner = (value as readonly Fields[]).flatMap((one) => {
      const [first = '', ...rest] = fieldLines(one, `${indent}    `);
      return [`${indent}  - ${first.trimStart()}`, ...rest];
    });
    return [`${indent}${key}:`, ...inner];
  });
}

export const rigYaml = (rig: GeneratedRig): string => `${fieldLines(rig as unknown as Fields, '').join('\n')}\n`;

const text = { type: 'string' } as const;
const texts = { type: 'array', items: text } as const;
const like = (pattern: string) => ({ type: 'string', pattern });
const date = like('^\\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\\d|3[01])$');
const temperature = like('^-?[0-9.]+ [FC]$');
const percent = like('^[0-9.]+ %$');
const length = like('^[0-9]+( [0-9]+/[0-9]+)? (in|ft|mm|cm|m)( [0-9]+( [0-9]+/[0-9]+)? in)?$');
const object = (required: readonly string[], properties: object) => ({
  type: 'object',
  additionalProperties: false,
  required,
  properties,
});

export const yamlSchema = {
  $schema: 'http://json-schema.org/draft-07/schema#',
  ...object(['name', 'like', 'done'], {
    name: text,
    like: text,
    under: text,
    group: text,
    unit: text,
    vin: like('^[A-HJ-NPR-Z0-9]{17}$'),
    built: like('^\\d{4}-\\d{2}$'),
    acquired: date,
    kept: date,
    rate: like('^[0-9.]+ [A-Z]{3}$'),
    done: {
      type: 'array',
      items: object(['verb', 'date'], {
        verb: {
          enum: [
            'found',
            'inspected',
            'leaked',
            'washed',
            'dried',
            'covered',
            'stripped',
            'rebedded',
            'sealed',
            'taped',
            'stored',
            'trip',
          ],
        },
        date,
        until: date,
        time: like('^\\d{2}:\\d{2}$'),
        seams: texts,
        inside: text,
        suspect: text,
        moisture: percent,
        with: texts,
        lot: text,
        air: temperature,
        surface: temperature,
        humidity: percent,
        took: like('^[0-9]+ (h|min)$'),
        by: text,
        note: text,
        looks: {
          type: 'array',
          items: object(['seam', 'condition'], {
            seam: text,
            condition: { enum: ['sound', 'chalky', 'hairline', 'cracked', 'lifting', 'open', 'not-seen'] },
            from: length,
            to: length,
            moisture: percent,
            inside: text,
            note: text,
          }),
        },
      }),
    },
    plans: {
      type: 'array',
      items: object(['verb'], {
        verb: { enum: ['inspect', 'wash', 'seal', 'tape'] },
        seams: texts,
        with: texts,
        after: date,
        before: date,
      }),
    },
  }),
} as const;
