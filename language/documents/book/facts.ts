// Small forms of the book: facts with what is not recorded said, tables that read on a phone.
import { type Content, type Element, el } from '../sheets/element.ts';
import { table } from '../sheets/marks.ts';

/** What is not written down is never guessed. */
export const notRecorded: Element = el('span', { class: 'unknown' }, 'not recorded');

/** Names with what is recorded of each. */
export function facts(rows: readonly (readonly [string, Content])[]): Element {
  return el('dl', {}, ...rows.flatMap(([name, value]) => [el('dt', {}, name), el('dd', {}, value ?? notRecorded)]));
}

export const paragraph = (...content: readonly Content[]): Element => el('p', {}, ...content);

/** Tables whose cells stand under each other on a phone; nothing to list is said in words. */
export function listing(
  caption: string,
  heads: readonly string[],
  rows: readonly (readonly Content[])[],
  none: string,
): Element {
  if (rows.length === 0) return paragraph(el('b', {}, `${caption}: `), none);
  return el(
    'div',
    { class: 'wide' },
    table(
      caption,
      heads,
      rows.map(([first, ...rest]) => [unbroken(first), ...rest]),
    ),
  );
}

/** A date stays on one line. */
const unbroken = (cell: Content): Content =>
  typeof cell === 'string' && /^\d{4}-\d\d-\d\d/.test(cell) ? el('span', { class: 'nowrap' }, cell) : cell;

/** Contents with blanks and marks between them. */
export function joined(parts: readonly Content[], mark = ', '): readonly Content[] {
  return parts.flatMap((part, i) => (i === 0 ? [part] : [mark, part]));
}
