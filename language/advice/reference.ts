// The reference page of the table of advice, read off the table.
import type { AdviceRow, InterimRow } from './row.ts';
import { interimTable, table } from './table.ts';

/** The table of advice as Markdown: an overview in order of precedence, then a section for each row. */
export function advicePage(): string {
  const intro = [
    'The advice on a seam is an opinion by condition: what the records say of it on a date, not what the calendar says. The rows are tried from the top, for each stretch of each seam, and the first that holds decides. What is grave goes before what is slight, what lets water in before what may, and what was found before what was not looked at.',
    'The advice is worked out from what was recorded, and the labels, the maker’s manual, local rules and licensed trades come first. It never says that a place is dry, nor that a roof may be walked on.',
  ];
  const overview = [
    '| | row | when | action |',
    '|--:|---|---|---|',
    ...table.map((row, i) => `| ${i + 1} | [\`${row.id}\`](#${row.id}) | ${row.when} | ${row.action} |`),
  ];
  const covers = [
    '| row | when | action |',
    '|---|---|---|',
    ...interimTable.map((row) => `| [\`${row.id}\`](#${row.id}) | ${row.when} | ${row.action} |`),
  ];
  return `${[
    '# The table of advice',
    ...intro,
    overview.join('\n'),
    '## Until the repair',
    'Beside it stands what is done until then, where one of these holds:',
    covers.join('\n'),
    '## The rows',
    ...table.map(section),
    ...interimTable.map(section),
  ].join('\n\n')}\n`;
}

function section({ id, when, action, what, why, source, ...row }: AdviceRow | InterimRow): string {
  const facts = [
    `- when: ${when}`,
    `- action: ${action}`,
    ...('urgency' in row ? [`- how pressing: ${row.urgency}`] : []),
    `- source: ${source}`,
    ...('changes' in row ? (row.changes ?? []).map((text) => `- what would change it: ${text}`) : []),
  ];
  return `### ${id}\n\n${what} ${why}\n\n${facts.join('\n')}`;
}
