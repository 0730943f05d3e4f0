// How cells look. An input has a ground, a frame, and a head that says so: never the colour alone.
import type { CellStyle } from 'hucre/xlsx';
import type { Cell, Column } from './table.ts';
import { looksLikeFormula } from './text.ts';

const line = { style: 'thin', color: { rgb: '7F7F7F' } } as const;
const ground = (rgb: string) => ({ type: 'pattern', pattern: 'solid', fgColor: { rgb } }) as const;
const wrapped = { vertical: 'top', wrapText: true } as const;
/** Figures keep away from the text that begins in the next column. */
const toTheRight = { horizontal: 'right', indent: 1 } as const;
const side = (right: boolean | undefined) => (right ? toTheRight : ({ horizontal: 'left' } as const));

export const font = { name: 'Calibri', size: 11 } as const;
const bold = { ...font, bold: true } as const;

export const titleStyle: CellStyle = { font: { ...bold, size: 14 } };
export const noteStyle: CellStyle = { alignment: wrapped };

export const headStyle = ({ right }: Column): CellStyle => ({
  font: bold,
  fill: ground('E7E6E6'),
  border: { bottom: line },
  alignment: { ...wrapped, ...side(right) },
});

export const headText = ({ title, input }: Column): string => (input ? `${title} (change)` : title);

export function styleOf(cell: Cell, { right }: Column): CellStyle {
  const strong = cell.look === 'strong' ? { font: bold } : {};
  if ('text' in cell)
    return {
      ...strong,
      alignment: { ...wrapped, ...side(right) },
      // Stays a text when a person opens the cell and leaves it again.
      ...(looksLikeFormula(cell.text) ? { numFmt: '@' } : {}),
    };
  const shown: CellStyle = { ...strong, numFmt: cell.format, alignment: { vertical: 'top', ...toTheRight } };
  return 'input' in cell
    ? { ...shown, fill: ground('FFF2CC'), border: { top: line, right: line, bottom: line, left: line } }
    : shown;
}
