// A statement as a snippet: its word, and its example to type over.
import type { Row } from '../../language/statements/row.ts';

/** Records are of today until another date is typed. */
export function snippetOf(row: Row, today: string): string {
  const { word, example, block } = row;
  const [heading = ''] = example.slice(word.length).trim().split(/\s*\{/);
  const dated = row.class === 'record' ? heading.replace(/^\d{4}-\d{2}-\d{2}/, today) : heading;
  const rest = dated === '' ? '' : ` ${placeholder(dated)}`;
  return example.includes('{') && block ? `${word}${rest} {\n\t$0\n}` : `${word}${rest}`;
}

/** Texts and names are selected without their quotes; everything else as a whole. */
function placeholder(text: string): string {
  const quoted = /^"([^"]*)"$/.exec(text);
  return quoted ? `"\${1:${escaped(quoted[1] as string)}}"` : `\${1:${escaped(text)}}`;
}

const escaped = (text: string) => text.replace(/[\\$}]/g, '\\$&');
