import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { catalogue, families } from '../../language/rules/catalogue.ts';
import { rulesPage } from '../../language/rules/reference.ts';
import { referencePage } from '../../language/statements/reference.ts';

const page = (name: string) => readFileSync(new URL(`../../client/reference/${name}`, import.meta.url), 'utf8');

describe('the reference pages', () => {
  it('are those that the tables give (npm run generate:reference)', () => {
    expect(page('language.md')).toBe(referencePage());
    expect(page('rules.md')).toBe(rulesPage());
  });
});

describe('the catalogue', () => {
  it('has each rule once', () => {
    expect(families.reduce((n, family) => n + Object.keys(family.rules).length, 0)).toBe(catalogue.size);
  });
  it.each([...catalogue])(
    '%s says what is wrong, why, and what the quick fix does or why there is none',
    (name, rule) => {
      expect(name).toMatch(/^[a-z]+(-[a-z0-9]+)*$/);
      expect(rule.title).toMatch(/^[A-Z].{8,}[^.]$/);
      expect(rule.why).toMatch(/^[A-Z`].{8,}[.?]$/s);
      expect(rule.fix).toMatch(/^[A-Z`].*\.$/s);
    },
  );
});
