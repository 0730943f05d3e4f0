// Small pieces of Markdown. What people typed is shown as they typed it: nothing of it becomes markup.

/** A text in a line or a table cell: line breaks become blanks, marks are escaped. */
export function plain(text: string): string {
  return text
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/[\\`*_[\]<>|~#$]/g, (mark) => `\\${mark}`)
    .replace(/&/g, '&amp;')
    .replace(/^([-+])/, '\\$1')
    .replace(/^(\d+)([.)])(?=\s|$)/, '$1\\$2');
}

type Align = 'left' | 'right';

/** The head of a column. */
export type Column = readonly [title: string, align: Align];
export const left = (title: string): Column => [title, 'left'];
export const right = (title: string): Column => [title, 'right'];

/** A table. Cells are finished Markdown: escape what people typed with {@link plain}. Empty without rows. */
export function table(head: readonly Column[], rows: readonly (readonly string[])[]): string {
  if (rows.length === 0) return '';
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [
    line(head.map(([title]) => title)),
    line(head.map(([, align]) => (align === 'right' ? '--:' : '---'))),
    ...rows.map(line),
  ].join('\n');
}

export const bullets = (lines: readonly string[]): string => lines.map((line) => `- ${line}`).join('\n');

/** Parts with a blank line between them; empty ones are left out. */
export const paragraphs = (...parts: readonly (string | undefined)[]): string =>
  `${parts.filter((part) => part !== undefined && part !== '').join('\n\n')}\n`;

/** A heading and what stands under it; nothing where there is nothing. */
export const section = (title: string, body: string, mark: '#' | '##' = '##'): string =>
  body === '' ? '' : `${mark} ${title}\n\n${body}`;
