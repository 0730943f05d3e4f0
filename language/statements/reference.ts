// The reference page of the language, read off the statement table.
import type { BlockTable, Clause, Row } from './row.ts';
import type { Slot } from './slot.ts';
import { allTables } from './vocabulary.ts';
import { clauseWords, conditions, defects, sets, sides } from './words.ts';

/** The reference page as Markdown: blocks, their statements with their places and clauses, and the closed word lists. */
export function referencePage(): string {
  const tables = allTables();
  const shown = new Map<Row, BlockTable>();
  const sections = tables.map((table) => section(table, shown));
  return `${['# The words of the language', contents(tables), ...sections, words()].join('\n\n')}\n`;
}

const title = (table: BlockTable) =>
  table.name === 'file'
    ? 'At the top of a file'
    : table.name === 'findings'
      ? 'In a block of findings'
      : `In a ${table.name}`;
const anchor = (table: BlockTable) => title(table).toLowerCase().replaceAll(' ', '-');

const contents = (tables: readonly BlockTable[]) =>
  tables.map((table) => `- [${title(table)}](#${anchor(table)})`).join('\n');

function rowsOf(table: BlockTable): readonly Row[] {
  return [...table.rows.values(), ...(table.names ? [table.names] : [])];
}

/** One block. A row that another block has shown is named with a link to that. */
function section(table: BlockTable, shown: Map<Row, BlockTable>): string {
  const own = rowsOf(table).filter((row) => !shown.has(row));
  const others = [...new Set(rowsOf(table).flatMap((row) => shown.get(row) ?? []))];
  const links = others.map((other) => {
    const rows = rowsOf(table).filter((row) => shown.get(row) === other);
    return `As ${link(other)}: ${rows.map((row) => code(row.word)).join(', ')}.`;
  });
  for (const row of own) shown.set(row, table);
  const shared = sharedClauses(own);
  const common = shared.size === 0 ? [] : [`### What several of these may carry\n\n${[...shared].join('\n')}`];
  return [`## ${title(table)}`, ...links, ...own.map((row) => entry(row, shared)), ...common].join('\n\n');
}

const link = (table: BlockTable) => `[${title(table).toLowerCase()}](#${anchor(table)})`;

/** The clauses that three or more rows of a block have alike: they are explained once. */
function sharedClauses(rows: readonly Row[]): ReadonlySet<string> {
  const seen = new Map<string, number>();
  for (const row of rows)
    for (const clause of Object.values(row.clauses))
      seen.set(explained(clause), (seen.get(explained(clause)) ?? 0) + 1);
  return new Set([...seen].filter(([, n]) => n >= 3).map(([text]) => text));
}

function entry(row: Row, shared: ReadonlySet<string>): string {
  const own = Object.values(row.clauses)
    .map(explained)
    .filter((text) => !shared.has(text));
  return [
    `### ${row.word === '' ? 'a finding' : code(row.word)}`,
    row.help,
    `Written: ${synopsis(row)}`,
    ...(own.length > 0 ? [own.join('\n')] : []),
    `\`\`\`rig\n${row.example}\n\`\`\``,
  ].join('\n\n');
}

/** The form of a line: its word, its places by what they are, its clauses; brackets around what may be left out. */
function synopsis(row: Row): string {
  const places = Object.values(row.places).map(({ slot, optional }) => bracketed(`*${valueName(slot)}*`, optional));
  const clauses = Object.values(row.clauses).map((clause) => bracketed(clauseForm(clause), !clause.needed));
  return [...(row.word === '' ? [] : [code(row.word)]), ...places, ...clauses].join(' ');
}

const code = (text: string) => `\`${text}\``;
const bracketed = (text: string, optional: boolean) => (optional ? `[${text}]` : text);
const clauseForm = ({ word, slot }: Clause) =>
  slot.example === '' ? code(word) : `${code(word)} *${valueName(slot)}*`;

/** `a length`, without its article. */
const valueName = (slot: Slot<unknown>) => slot.what.replace(/^(an?|the) /, '').replaceAll('`', '');

const explained = (clause: Clause) => {
  const example = clause.slot.example === '' ? '' : ` ${clause.slot.example}`;
  return `- ${code(`${clause.word}${example}`)}: ${clause.help}${clause.needed ? ' Never left out.' : ''}`;
};

function words(): string {
  const list = (all: Iterable<string>) => [...all].map(code).join(', ');
  return [
    '## Words',
    `Conditions, from best to worst: ${list(conditions)}; beside them ${list(['not-seen', 'wet'])}.`,
    `Defects, and the condition each stands for when none is written:\n\n${Object.entries(defects)
      .map(([defect, condition]) => `- ${code(defect)}: ${code(condition)}`)
      .join('\n')}`,
    `Sides: ${list(sides)}. Sets: ${list(Object.keys(sets))}.`,
    `Reserved everywhere, so never a name: ${list([...clauseWords].sort())}.`,
  ].join('\n\n');
}
