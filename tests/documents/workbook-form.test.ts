import { DOMParser, onErrorStopParsing } from '@xmldom/xmldom';
import fc from 'fast-check';
import { unzipSync } from 'fflate';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { EstimatePaper } from '../../language/documents/papers.ts';
import { estimateTables, estimateWorkbook } from '../../language/documents/workbook/index.ts';
import { letterOf } from '../../language/documents/workbook/table.ts';
import { cellLimit, cellText } from '../../language/documents/workbook/text.ts';
import { cellOf, estimateOf, headRow, readWorkbook, sheet, workbookOf } from './workbook-read.ts';

const names = ['Wren', 'Highmeadow'] as const;

/** The paper of the trailer with a text in the place of a material, a seam, and a question. */
function paperWith(text: string): EstimatePaper {
  const paper = estimateOf('Wren');
  const [estimate] = paper.estimates;
  if (!estimate) throw new Error('there is no estimate');
  const [first, ...rest] = estimate.purchases;
  if (!first) throw new Error('nothing is bought');
  const question = { rule: 'not-counted', about: text, text } as const;
  return {
    ...paper,
    name: text,
    estimates: [{ ...estimate, purchases: [{ ...first, material: text }, ...rest], questions: [question] }],
  };
}

const materialIn = async (paper: EstimatePaper) =>
  cellOf(sheet(await readWorkbook(await estimateWorkbook(paper)), 'To buy'), 'material', 0);

describe('what people typed', () => {
  it.each([
    '=1+1',
    '=HYPERLINK("http://example.org","see")',
    '+1',
    '-1',
    '@SUM(A1)',
    '\t=1',
    '\n=1',
    '</t></si><script>alert(1)</script>',
    ']]>&lt;&amp;',
    '_x0041_',
    '  blanks  on both sides  ',
    '\u202eright to left\u202c',
    'Möwe 屋根 🚐',
  ])('stays text: %j', async (text) => {
    const cell = await materialIn(paperWith(text));
    expect(cell.value).toBe(text);
    expect(cell.formula).toBeUndefined();
  });

  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\n=1'])(
    'stays text when a person edits its cell: %j',
    async (text) => {
      expect((await materialIn(paperWith(text))).numFmt).toBe('@');
    },
  );

  it('has one kind of line end', async () => {
    expect((await materialIn(paperWith('a\r\nb\rc'))).value).toBe('a\nb\nc');
  });

  it('shows where a character stood that XML cannot hold', async () => {
    const cell = await materialIn(paperWith('a\u0000b\u001bc\ufffed\ud800e'));
    expect(cell.value).toBe('a\ufffdb\ufffdc\ufffdd\ufffde');
  });

  it('says where it is cut, for a cell holds 32,767 characters', async () => {
    const cell = await materialIn(paperWith('x'.repeat(40_000)));
    expect(String(cell.value)).toHaveLength(cellLimit);
    expect(String(cell.value)).toMatch(/^x+ … \(cut here: a cell holds no more\. .*\)$/);
    expect((await materialIn(paperWith('x'.repeat(cellLimit)))).value).toBe('x'.repeat(cellLimit));
  });

  it('fits into a cell and into XML, whatever it is, and is left alone where it fits', () => {
    const unit = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.constantFrom('\u0000', '\ud800', '\r', '🚐', 'x'.repeat(33_000)),
    );
    fc.assert(
      fc.property(
        fc.array(unit).map((parts) => parts.join('')),
        (text) => {
          const made = cellText(text);
          expect(made.length).toBeLessThanOrEqual(cellLimit);
          expect(() => encodeURIComponent(made)).not.toThrow(); // throws at half a surrogate pair
          expect(cellText(made)).toBe(made);
        },
      ),
    );
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom('a', '屋', '🚐', ' ', '=', '<', '&', '\n') }), (text) => {
        expect(cellText(text)).toBe(text);
      }),
    );
  });
});

describe.each(names)('the workbook of %s', (name) => {
  it('is made of well-formed XML', async () => {
    const parts = Object.entries(unzipSync(await workbookOf(name)));
    expect(parts.length).toBeGreaterThan(10);
    const parser = new DOMParser({ onError: onErrorStopParsing });
    for (const [part, bytes] of parts) {
      const root = parser.parseFromString(new TextDecoder().decode(bytes), 'text/xml').documentElement;
      expect(root?.namespaceURI, part).toMatch(/^http:/);
    }
  });

  it('marks each cell to be changed by its ground, its frame, and a word in the head', async () => {
    const workbook = await readWorkbook(await workbookOf(name));
    let inputs = 0;
    for (const { name: title, columns, rows } of estimateTables(estimateOf(name))) {
      columns.forEach((column, c) => {
        rows.forEach((row, r) => {
          const made = row[column.key];
          const cell = sheet(workbook, title)
            .getRow(headRow + 1 + r)
            .getCell(c + 1);
          const isInput = made !== undefined && 'input' in made;
          expect(cell.fill?.type === 'pattern' && cell.fill.pattern === 'solid').toBe(isInput);
          expect(cell.border?.left !== undefined).toBe(isInput);
          if (!isInput) return;
          inputs += 1;
          expect(
            sheet(workbook, title)
              .getRow(headRow)
              .getCell(c + 1).value,
          ).toBe(`${column.title} (change)`);
        });
      });
    }
    expect(inputs).toBeGreaterThan(5);
  });

  it('has numbers as numbers', async () => {
    const workbook = await readWorkbook(await workbookOf(name));
    for (const { name: title, columns, rows } of estimateTables(estimateOf(name)))
      columns.forEach((column, c) => {
        rows.forEach((row, r) => {
          const made = row[column.key];
          const { value } = sheet(workbook, title)
            .getRow(headRow + 1 + r)
            .getCell(c + 1);
          if (made && 'number' in made) expect(value).toBe(made.number);
        });
      });
  });

  it('prints each sheet one page wide, the head on every page, and keeps the head in sight', async () => {
    const workbook = await readWorkbook(await workbookOf(name));
    const paperSize = name === 'Wren' ? 1 : 9; // ECMA-376 part 1, 18.3.1.63: letter, A4
    for (const of of workbook.worksheets) {
      expect(of.pageSetup).toMatchObject({ fitToPage: true, fitToWidth: 1, fitToHeight: 0, paperSize });
      expect(of.pageSetup.printTitlesRow).toBe(`${headRow}:${headRow}`);
      expect(of.views[0]).toMatchObject({ state: 'frozen', ySplit: headRow });
      expect(of.headerFooter.oddFooter).toContain(`Estimate: ${name}`);
    }
    expect(sheet(workbook, 'Cautions').pageSetup.orientation).toBe('portrait');
    expect(sheet(workbook, 'Labour').pageSetup.orientation).toBe('landscape');
  });

  it('has names of sheets that every program takes', () => {
    const titles = estimateTables(estimateOf(name)).map((table) => table.name);
    expect(titles.filter((title) => !/^[^[\]:*?/\\']{1,31}$/.test(title))).toEqual([]);
    expect(new Set(titles.map((title) => title.toLowerCase())).size).toBe(titles.length);
  });

  it('has columns wide enough for their figures and the words of their heads', async () => {
    const workbook = await readWorkbook(await workbookOf(name));
    for (const of of workbook.worksheets)
      of.eachRow((row, r) => {
        if (r < headRow) return;
        row.eachCell((cell, c) => {
          const width = of.getColumn(c).width ?? 0;
          const value = cell.result ?? cell.value;
          const shown = typeof value === 'number' ? `${digits.format(value)}${unit(cell.numFmt)}` : '';
          expect(shown.length, `${of.name} ${cell.address}`).toBeLessThan(width);
          if (r === headRow) for (const word of cell.text.split(' ')) expect(word.length).toBeLessThanOrEqual(width);
        });
      });
  });
  const digits = new Intl.NumberFormat('en', { maximumFractionDigits: 3 });
  const unit = (format: unknown) => / "\w+"$/.exec(String(format))?.[0] ?? '';
});

describe('the bytes', () => {
  afterEach(() => {
    vi.useRealTimers();
  });

  it.each(names)('of %s are the same at another time', async (name) => {
    const first = await workbookOf(name);
    vi.useFakeTimers({ now: new Date('1999-12-31T23:59:59Z'), toFake: ['Date'] });
    expect(Buffer.from(await workbookOf(name)).equals(Buffer.from(first))).toBe(true);
  });

  it('tell the as-of date, or the first that a zip can tell', async () => {
    const core = (bytes: Uint8Array) => new TextDecoder().decode(unzipSync(bytes)['docProps/core.xml']);
    expect(core(await workbookOf('Wren'))).toContain('>2026-11-25T12:00:00Z<');
    expect(core(await estimateWorkbook({ ...estimateOf('Wren'), asOf: '1969-07-20' }))).toContain(
      '>1969-07-20T12:00:00Z<',
    );
  });
});

describe('letterOf', () => {
  it.each([
    [0, 'A'],
    [25, 'Z'],
    [26, 'AA'],
    [51, 'AZ'],
    [52, 'BA'],
    [701, 'ZZ'],
    [702, 'AAA'],
  ])('names column %i %s', (column, letter) => {
    expect(letterOf(column)).toBe(letter);
  });
});
