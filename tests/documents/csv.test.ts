import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import type { EstimatePaper } from '../../language/documents/papers.ts';
import { paper, papers, papersOfText } from './examples.ts';

const head = [
  'rig',
  'section',
  'item',
  'what',
  'quantity',
  'unit',
  'unit price',
  'currency',
  'amount',
  'proof',
  'explanation',
];
const rowsOf = (text: string) => Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true });
const csv = [...papers].filter(([name]) => name.endsWith('.estimate.csv'));

describe('the CSV papers', () => {
  it.each(csv)('%s keeps to RFC 4180: one head, whole rows, CR LF', (_, text) => {
    const { data, errors, meta } = rowsOf(text);
    expect(errors).toEqual([]);
    expect(meta.fields).toEqual(head);
    expect(data.length).toBeGreaterThan(3);
    expect(text.endsWith('\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });

  it.each(csv)('%s has numbers where numbers belong', (_, text) => {
    for (const row of rowsOf(text).data)
      for (const column of ['quantity', 'unit price', 'amount'])
        expect(Number.isFinite(Number(row[column])), JSON.stringify(row)).toBe(true);
  });

  it('come to the total of the JSON, bought and worked line by line', () => {
    const { data } = rowsOf(paper('Wren.estimate.csv'));
    const { estimates } = JSON.parse(paper('Wren.estimate.json')) as EstimatePaper;
    const cents = (section: string, item?: string) =>
      data
        .filter((row) => row.section === section && (item === undefined || row.item === item) && row.what !== 'in all')
        .reduce((sum, row) => sum + Math.round(100 * Number(row.amount)), 0);
    const total = Math.round(100 * Number(estimates[0]?.totals.total?.money.amount));
    expect(cents('buy') + cents('labour') + cents('total', 'tax')).toBe(total);
    expect(cents('total', 'total')).toBe(total);
  });

  it('carry the proof of each purchase and the sum behind each figure', () => {
    const { data } = rowsOf(paper('Wren.estimate.csv'));
    expect(data.find((row) => row.section === 'buy' && row.item === 'SeamStrip4')?.proof).toBe(
      '1 roll, 58.50 USD, proven cheapest',
    );
    expect(data.find((row) => row.section === 'piece' && row.item === 'rear')?.explanation).toContain(
      'length + 2 * end_lap; length = 7 ft 8 in, end_lap = 2 in',
    );
  });
});

describe('what people typed', () => {
  const awkward = `tape Strip { width 4 in  roll 50 ft at 58 USD  bonds-to epdm }
policy P { currency USD  labour 50 USD per h  tax 6 % on materials }
rig Odd under P {
  roof 20 ft by 8 ft epdm
  cap rear
  inspected 2025-06-01 {
    rear open note "=HYPERLINK(\\"x\\")"
  }
  tape rear with Strip
}
`;
  it('never becomes a formula', () => {
    const { data } = rowsOf(paper('Odd.estimate.csv', papersOfText(awkward)));
    expect(data.length).toBeGreaterThan(5);
    for (const cell of data.flatMap((row) => Object.values(row))) expect(cell).not.toMatch(/^[=+@\t\r\n]|^-\D/);
  });

  // OWASP, CSV Injection: the published pair, through our own writer.
  it('is escaped as OWASP shows', async () => {
    const { estimateCsv } = await import('../../language/documents/estimate-csv.ts');
    const odd = JSON.parse(paper('Odd.estimate.json', papersOfText(awkward))) as EstimatePaper;
    const [due] = odd.unplanned;
    const texts = ['=1+2";=1+2', '+1', '-1', '@x', '\tx', '\rx', '\nx', 'a=1'];
    const unplanned = texts.map((title) => ({ ...(due as NonNullable<typeof due>), title }));
    const text = estimateCsv({ ...odd, unplanned });
    expect(text).toContain(`,not planned,"'=1+2"";=1+2",`);
    const items = rowsOf(text)
      .data.filter((row) => row.section === 'not planned')
      .map((row) => row.item);
    expect(items).toEqual(texts.map((title) => (title === 'a=1' ? title : `'${title}`)));
  });
});
