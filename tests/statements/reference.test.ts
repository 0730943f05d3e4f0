import { describe, expect, it } from 'vitest';
import { referencePage } from '../../language/statements/reference.ts';
import { allTables } from '../../language/statements/vocabulary.ts';
import { clauseWords } from '../../language/statements/words.ts';
import { rows } from './rows.ts';

describe('the reference page', () => {
  const page = referencePage();
  const lines = page.split('\n');

  it('explains every row once, with its example', () => {
    const different = new Set(rows.map(({ row }) => row));
    const headings = lines.filter((line) => line.startsWith('### ') && !line.includes('several'));
    expect(headings).toHaveLength(different.size);
    for (const row of different) {
      expect(lines).toContain(row.help);
      expect(page).toContain(`\`\`\`rig\n${row.example}\n\`\`\``);
      for (const clause of Object.values(row.clauses)) expect(page).toContain(`: ${clause.help}`);
    }
  });

  it('has a section for every block, and its links lead to sections', () => {
    const sections = lines.filter((line) => line.startsWith('## '));
    expect(sections).toHaveLength(allTables().length + 1);
    const anchors = sections.map((line) => `#${line.slice(3).toLowerCase().replaceAll(' ', '-')}`);
    const links = [...page.matchAll(/\]\((#[^)]+)\)/g)].map(([, target]) => target);
    expect(links.length).toBeGreaterThan(allTables().length);
    expect(links.filter((target) => !anchors.includes(target ?? ''))).toEqual([]);
  });

  it('names every block in which a row may stand', () => {
    for (const { row, table } of rows) {
      const start = lines.findIndex((line) => line.startsWith('## ') && line.toLowerCase().endsWith(` ${table.name}`));
      const end = lines.findIndex((line, i) => i > start && line.startsWith('## '));
      expect(lines.slice(start, end).join('\n')).toContain(row.word === '' ? 'a finding' : `\`${row.word}\``);
    }
  });

  it('lists the reserved words', () => {
    const reserved = lines.find((line) => line.startsWith('Reserved'));
    for (const word of clauseWords) expect(reserved).toContain(`\`${word}\``);
  });
});
