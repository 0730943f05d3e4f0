// A computed figure with the sum behind it, as Markdown for hovers and tooltips.
import { plain } from '../../language/documents/markdown.ts';
import type { Explained } from '../../language/explain.ts';
import { isLibrary } from '../../language/resolve/origin.ts';
import type { Origin } from '../../language/resolve/types.ts';
import { locationOf, type Texts } from '../places.ts';

/** What people typed, within a line of Markdown. */
export const inline = (text: string): string => plain(`x${text}`).slice(1);

/** A sentence of ours, within a line of Markdown: what it shows as code stays code. */
export const sentence = (text: string): string =>
  inline(text).replace(
    /\\`(.*?)\\`/g,
    (_, code: string) => `\`${code.replace(/\\(.)/g, '$1').replace(/&amp;/g, '&')}\``,
  );

/** The figure, its rule, its formula, and each input with a link to where it was written. */
export function explained(figure: Explained, texts: Texts, title?: string): string {
  const { text, rule, formula, inputs, source } = figure;
  const head = `**${inline(text)}**${title === undefined ? '' : ` ${inline(title)}`}: ${inline(rule)}`;
  const lines = inputs.map((input) => {
    const from = input.origin ? ` ${whereFrom(input.origin, texts)}` : '';
    return `- \`${input.name}\` = ${inline(input.text)}${from}`;
  });
  const sum = inputs.length > 0 ? `\`${formula}\`` : '';
  return [head, sum, lines.join('\n'), source === undefined ? '' : `Source: ${inline(source)}`]
    .filter((part) => part !== '')
    .join('\n\n');
}

/** Where a value was written: a link, or the kind of a built-in figure. */
export function whereFrom({ file, at, kind, source }: Origin, texts: Texts): string {
  if (isLibrary(file)) return `(built in: ${inline(source ?? kind)})`;
  const { uri, range } = locationOf(texts, file, at);
  const line = range.start.line + 1;
  return `([${inline(file.slice(file.lastIndexOf('/') + 1))}:${line}](${uri}#L${line}))`;
}
