// How a figure came about, in one line of plain text.
import type { Explained } from '../explain.ts';

/** `area times passes, by what a volume covers: area * passes / covers; area = 143.1 sq-ft, covers = 400 sq-ft per gal`. */
export function explanationText({ rule, formula, inputs, source }: Explained): string {
  const figures = inputs.map(({ name, text }) => `${name} = ${text}`).join(', ');
  return `${rule}${figures === '' ? '' : `: ${formula}; ${figures}`}${source === undefined ? '' : `. Source: ${source}`}`;
}
