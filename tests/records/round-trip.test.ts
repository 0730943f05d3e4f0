import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lex } from '../../language/grammar/tokens.ts';
import { allLines, readFile } from '../../language/records/file.ts';
import { fileWith, type Placed, rows } from '../statements/rows.ts';
import { wholeExample } from '../worked-example/text.ts';
import { factsIn, factsOf } from './facts.ts';

// A record says all that its line says: written again from the record's places, in another order, other blanks, it is the same.

const statements = rows.filter(({ row }) => row.class !== 'declaration');

interface Said {
  readonly at: readonly [number, number];
  readonly spans: Readonly<Record<string, readonly [number, number]>>;
}

/** The record of a line, and the line's text. */
function recordOf({ table, row }: Placed, line: string) {
  const text = fileWith(table, line);
  const { problems, declarations } = readFile(text);
  expect(problems).toEqual([]);
  const [first, inside] = declarations[0] ? [...allLines(declarations[0])] : [];
  const statement = (table.name === 'yard' ? inside : first) as unknown as Said & { findings?: readonly Said[] };
  const said = row.word === '' ? statement?.findings?.[0] : statement;
  if (!said) throw new Error(`no record of ${line}`);
  return { said, part: (field: string) => text.slice(...(said.spans[field] ?? [0, 0])) };
}

const plain = (said: Said) =>
  JSON.parse(JSON.stringify(said, (key, value) => (['at', 'spans', 'order'].includes(key) ? undefined : value)));

describe('a record', () => {
  it.each(statements)('can be written again, clauses in any order: $name', (placed) => {
    const { row } = placed;
    const { said, part } = recordOf(placed, row.example);
    const block = /\{.*$/.exec(row.example)?.[0] ?? '';
    const fields = Object.keys(said.spans);
    expect(fields.length).toBeGreaterThan(0);
    const places = fields.filter((field) => field in row.places).map(part);
    const clauses = fields.filter((field) => field in row.clauses).map(part);
    fc.assert(
      fc.property(fc.shuffledSubarray(clauses, { minLength: clauses.length }), (order) => {
        const again = [row.word, ...places, ...order, block].filter((text) => text !== '').join(' ');
        expect(plain(recordOf(placed, again).said)).toEqual(plain(said));
      }),
      { seed: 4, numRuns: 12 },
    );
  });

  it.each(statements)('does not depend on blanks or on line ends before clauses: $name', (placed) => {
    const { row, table } = placed;
    const { said } = recordOf(placed, row.example);
    if (row.example.includes('{')) return;
    const images = lex(row.example).tokens.map((token) => token.image);
    const clauses = new Set(Object.values(row.clauses).map((clause) => clause.word));
    // In findings a clause word goes on a line as well; a set word or a statement word never does.
    const breaks = images.map((image, i) => i > 0 && clauses.has(image) && !table.rows.has(image));
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(' ', '  ', '\t', '\n      '), { minLength: images.length, maxLength: images.length }),
        (gaps) => {
          const again = images.map((image, i) => {
            const gap = i === 0 ? '' : (gaps[i] ?? ' ');
            return (gap.includes('\n') && !breaks[i] ? ' ' : gap) + image;
          });
          expect(strip(plain(recordOf(placed, again.join('')).said))).toEqual(strip(plain(said)));
        },
      ),
      { seed: 5, numRuns: 8 },
    );
  });
});

/** Without the texts of values, in which the blanks are those that were written. */
const strip = (value: unknown) =>
  JSON.stringify(value, (key, inner) =>
    key === 'text' && typeof inner === 'string' ? inner.replace(/\s+/g, ' ') : inner,
  );

describe('the records of a file', () => {
  const { declarations, uses } = readFile(wholeExample);
  const pieces = [
    ...declarations.map(({ whole }) => wholeExample.slice(...whole)),
    ...uses.map(({ path }) => `use "${path}"`),
  ];
  const sorted = (text: string) =>
    factsOf(text)
      .map((fact) => fact.said)
      .sort();

  it('do not depend on the order of its declarations', () => {
    const base = sorted(wholeExample);
    fc.assert(
      fc.property(fc.shuffledSubarray(pieces, { minLength: pieces.length }), (order) => {
        expect(sorted(order.join('\n'))).toEqual(base);
        expect(readFile(order.join('\n')).problems).toEqual([]);
      }),
      { seed: 6, numRuns: 25 },
    );
  });

  it('number the dated records in the order in which they stand', () => {
    const orders = declarations.flatMap(({ statements: all }) =>
      all.flatMap((statement) => ('order' in statement ? [statement.order] : [])),
    );
    expect(orders.length).toBeGreaterThan(10);
    expect(orders).toEqual(orders.map((_, i) => i));
  });

  it('hold nothing of another file: two texts read one after the other are read alike', () => {
    const first = factsIn(readFile(wholeExample));
    readFile('rig Heron { vin "1" } } {');
    expect(factsIn(readFile(wholeExample))).toEqual(first);
  });

  it('are plain data that survive a message between workers', () => {
    const records = readFile(wholeExample);
    expect(structuredClone(records)).toEqual(records);
    expect(JSON.parse(JSON.stringify(records))).toEqual(records);
  });
});
