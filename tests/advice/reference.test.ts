import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { advicePage, interimTable, table } from '../../language/advice/index.ts';

const page = (name: string) => readFileSync(new URL(`../../client/reference/${name}`, import.meta.url), 'utf8');

it('the page of the table of advice is the one that the table gives (npm run generate:reference)', () => {
  expect(page('advice.md')).toBe(advicePage());
});

it('has each row in order, with a section that its link leads to', () => {
  const text = advicePage();
  const links = [...text.matchAll(/\]\(#([a-z-]+)\)/g)].map(([, id]) => id);
  expect(links).toEqual([...table, ...interimTable].map(({ id }) => id));
  for (const id of links) expect(text).toContain(`\n### ${id}\n`);
});

it('is linked from the page of the rules', () => {
  expect(page('rules.md')).toContain('(advice.md)');
});
