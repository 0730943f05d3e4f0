import { describe, expect, it } from 'vitest';
import type { Line } from '../../language/grammar/lines.ts';
import type { Problem } from '../../language/grammar/problem.ts';
import { linesOfText, readFile } from '../../language/records/file.ts';
import { readStatement } from '../../language/records/statement.ts';
import { allTables } from '../../language/statements/vocabulary.ts';
import { clauseWords, spellings } from '../../language/statements/words.ts';
import { fileWith, type Placed, rows } from './rows.ts';

/** The line of a row's example, in a file of its own. */
function exampleLine({ table, row }: Placed): Line {
  let { lines } = linesOfText(fileWith(table, row.example));
  while (lines[0]?.head !== (row.word || 'bath-vent')) lines = lines[0]?.block ?? [];
  return lines[0];
}

describe('the statement table', () => {
  it('has rows for all kinds of blocks', () => {
    expect(rows.length).toBeGreaterThan(200);
  });

  it.each(rows)('reads its own example: $name', ({ table, row }) => {
    expect(readFile(fileWith(table, row.example)).problems).toEqual([]);
  });

  it.each(rows.filter(({ row }) => row.class !== 'declaration'))('gives a record by its schema: $name', (placed) => {
    const problems: Problem[] = [];
    const { row, table } = placed;
    const line = exampleLine(placed);
    // In a block whose lines open with names, the name is read with the rest.
    const named =
      row.word === ''
        ? { ...line, parts: [{ kind: 'word', text: line.head, at: line.headAt } as const, ...line.parts] }
        : line;
    const read = readStatement(named, row, table, problems);
    expect(problems).toEqual([]);
    if (!read.whole) throw new Error('the example is not whole');
    expect(row.schema.parse(read.record)).toEqual(read.record);
    // The schema is no formality: it refuses a field that the row does not have, and a place that is missing.
    expect(row.schema.safeParse({ ...read.record, other: 1 }).success).toBe(false);
    const needed = Object.entries(row.places).filter(([, place]) => !place.optional);
    for (const [field] of needed)
      expect(row.schema.safeParse({ ...read.record, [field]: undefined }).success).toBe(false);
  });

  it.each(rows)('says what it is for: $name', ({ row }) => {
    expect(row.help).toMatch(/^[A-Z].+[.]$/);
    for (const clause of Object.values(row.clauses)) expect(clause.help).toMatch(/^[A-Z].+[.]$/);
  });

  it.each(rows)('asks for values by kind and example: $name', ({ row }) => {
    const slots = [...Object.values(row.places), ...Object.values(row.clauses)].map(({ slot }) => slot);
    for (const { what, example } of slots) {
      expect(what).not.toBe('');
      if (what !== 'nothing more') expect(example).not.toBe('');
    }
  });

  it.each(rows)('gives examples that can be read, for every clause: $name', ({ row, table }) => {
    for (const [field, { word, slot }] of Object.entries(row.clauses)) {
      const example = `${word} ${slot.example}`.trim();
      const said = ` ${row.example} `.includes(` ${word} `);
      if (said || row.class === 'declaration') continue;
      const { problems, declarations } = readFile(fileWith(table, row.example.replace(/(?= \{|$)/, ` ${example}`)));
      expect({ example, problems }).toEqual({ example, problems: [] });
      const [statement] = declarations[0]?.statements ?? [];
      const inner = statement as unknown as { findings: unknown[]; lines: unknown[] };
      const record = row.word === '' ? inner.findings[0] : table.name === 'yard' ? inner.lines[0] : statement;
      expect(record).toHaveProperty(field);
    }
  });

  it.each(rows)('gives examples that can be read, for every place: $name', ({ row, table }) => {
    const places = Object.values(row.places).map(({ slot }) => slot.example);
    const needed = Object.values(row.clauses).filter((clause) => clause.needed);
    const line = [row.word, ...places, ...needed.map(({ word, slot }) => `${word} ${slot.example}`)]
      .filter(Boolean)
      .join(' ');
    expect({ line, problems: readFile(fileWith(table, line)).problems }).toEqual({ line, problems: [] });
  });

  it.each(rows.filter(({ row }) => row.word !== ''))(
    'asks once for what comes next when its word stands alone: $name',
    ({ row, table }) => {
      const { problems } = readFile(fileWith(table, row.word));
      const places = Object.values(row.places).filter((place) => !place.optional);
      const needed = Object.values(row.clauses).filter((clause) => clause.needed);
      expect(problems.map(({ rule }) => rule)).toEqual([
        ...places.slice(0, 1).map(() => 'missing-value'),
        ...needed.map(() => 'missing-clause'),
      ]);
      for (const { message } of problems) expect(message).toMatch(/such as `.+`/);
    },
  );

  it.each(rows)('has its clause words reserved: $name', ({ row }) => {
    const slots = [...Object.values(row.places), ...Object.values(row.clauses)].map(({ slot }) => slot);
    const words = [
      ...Object.values(row.clauses).map((clause) => clause.word),
      ...slots.flatMap((slot) => slot.inside ?? []),
    ];
    expect(words.filter((word) => !clauseWords.has(word))).toEqual([]);
  });

  it.each(rows)('shows one field once: $name', ({ row }) => {
    const fields = [...Object.keys(row.places), ...Object.keys(row.clauses)];
    expect(new Set(fields).size).toBe(fields.length);
    expect(fields.filter((field) => ['word', 'at', 'spans', 'doc', 'order', 'findings'].includes(field))).toEqual([]);
    const words = Object.values(row.clauses).map((clause) => clause.word);
    expect(new Set(words).size).toBe(words.length);
  });

  it('opens every line with a word that may stand there', () => {
    for (const table of allTables())
      for (const word of table.rows.keys()) {
        expect(word).toMatch(/^[a-z]+(-[a-z]+)*$/);
        for (const spelling of spellings(word)) expect(linesOfText(fileWith(table, spelling)).problems).toEqual([]);
      }
  });

  it('builds a schema once, when it is asked for', () => {
    for (const { row } of rows) expect(row.schema).toBe(row.schema);
  });
});
