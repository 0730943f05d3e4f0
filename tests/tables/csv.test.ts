import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { csvOf } from '../../language/documents/csv.ts';
import { cellAt, readTable } from '../../language/tables/csv.ts';

const cellsIn = (text: string) => readTable(text).rows.map(({ cells }) => cells);

/** What a cell may hold: quotes, commas, line ends, other scripts, what a spreadsheet would take for a formula. */
const cell = fc
  .string({
    unit: fc.constantFrom('a', 'Ü', '→', '船', ' ', '"', ',', ';', '\t', '\n', '\r\n', "'", '=', '-', '#', '7'),
  })
  .map((text) => text.trim());

describe('a table', () => {
  test('comes back as it was written, whatever its cells hold', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell, cell), { maxLength: 8 }), fc.boolean(), (rows, mark) => {
        const named = rows.map(([a, b, c]) => ({ key: 'x', a, b, c }));
        const text = (mark ? '\uFEFF' : '') + csvOf(['key', 'a', 'b', 'c'], named);
        expect(cellsIn(text)).toEqual(rows.map((row) => ['x', ...row]));
      }),
    );
  });

  test('has each cell where it stands', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell), { minLength: 1, maxLength: 6 }), fc.boolean(), (rows, mark) => {
        const text =
          (mark ? '\uFEFF' : '') + Papa.unparse({ fields: ['k', 'a', 'b'], data: rows.map((row) => ['x', ...row]) });
        const table = readTable(text);
        for (const [i, row] of table.rows.entries())
          for (const [k, written] of ['x', ...(rows[i] as readonly string[])].entries()) {
            const [from, to] = cellAt(text, table, row, k);
            expect(text.slice(from, to).replaceAll('""', '"').trim()).toBe(written);
          }
        expect(table.rows.map(({ line }) => line)).toEqual(
          table.rows.map(({ at }) => text.slice(0, at[0]).split(/\r\n|\n|\r/).length),
        );
      }),
    );
  });

  test.each([
    [',', 'rig,first\nHeron,1\n'],
    [';', 'rig;first\r\nHeron;1\r\n'],
    ['\t', 'rig\tfirst\rHeron\t1\r'],
    [';', '"rig, or unit";first\nHeron;1'],
  ])('is parted by what its first row has most of: %j', (delimiter, text) => {
    expect(readTable(text).delimiter).toBe(delimiter);
    expect(cellsIn(text)).toEqual([['Heron', '1']]);
  });

  test('passes over blank rows and remarks, and counts their lines', () => {
    const text = '# of "2027\n\nrig,first\n# one\n\n  \nHeron,"a\nb"\r\n,\n# end\nTeal,2';
    const table = readTable(text);
    expect(table.header?.line).toBe(3);
    expect(table.rows.map(({ line, cells }) => [line, ...cells])).toEqual([
      [7, 'Heron', 'a\nb'],
      [11, 'Teal', '2'],
    ]);
    expect(table.rows.map(({ at }) => text.slice(...at))).toEqual(['Heron,"a\nb"', 'Teal,2']);
  });

  test('takes the apostrophe from what it guards, and from nothing else', () => {
    expect(cellsIn("a\n'=1+1\n'-x\n'tis\n''=a\n")).toEqual([['=1+1'], ['-x'], ["'tis"], ["'=a"]]);
  });

  test('says of a row that its quotes do not close', () => {
    expect(readTable('rig,note\nHeron,"open\nTeal,x\n').rows).toMatchObject([
      { line: 2, damage: expect.stringContaining('missing') },
    ]);
    expect(readTable('rig,note\nHeron,"a "b" c"\n').rows).toMatchObject([{ damage: expect.stringContaining('twice') }]);
  });

  test('may be empty', () => {
    expect(readTable('')).toMatchObject({ header: undefined, rows: [] });
    expect(readTable('\uFEFF# nothing\n')).toMatchObject({ header: undefined, rows: [] });
  });
});
