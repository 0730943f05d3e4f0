// A table that was written, read by a reader that is not ours.
import { Workbook } from '@cj-tech-master/excelts';
import { expect, test } from 'vitest';
import { csvOf } from '../../language/documents/csv.ts';

test('holds the same cells for a spreadsheet, and no formula', async () => {
  const rows = [
    { rig: 'Heron', unit: 'a "b", c', note: '=1+1' },
    { rig: 'Teal-船', unit: "o'clock", note: '@SUM(A1)' },
  ];
  const book = new Workbook();
  const sheet = await book.readCsv(csvOf(['rig', 'unit', 'note'], rows));
  const cells = [1, 2, 3].map((row) => [1, 2, 3].map((column) => sheet.getCell(row, column).value));
  expect(cells).toEqual([
    ['rig', 'unit', 'note'],
    ['Heron', 'a "b", c', "'=1+1"],
    ['Teal-船', "o'clock", "'@SUM(A1)"],
  ]);
});
