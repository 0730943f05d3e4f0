// The rules as the editor can ask for them: the list, and for each a page that lies on no disk.
import type { URI } from 'langium';
import { catalogue } from '../language/rules/catalogue.ts';
import { section } from '../language/rules/reference.ts';
import type { Severity } from '../language/statements/words.ts';

/** The text of a page; undefined for a rule that is not in the catalogue. */
export function rulePage(uri: URI): string | undefined {
  const rule = uri.path.replace(/^\//, '').replace(/\.md$/, '');
  const entry = catalogue.get(rule);
  return entry && `${section(rule, entry).replace(/^## /, '# ')}\n`;
}

export interface RuleName {
  readonly name: string;
  readonly severity: Exclude<Severity, 'off'>;
  readonly title: string;
}

/** All rules, by name. */
export const ruleNames = (): readonly RuleName[] =>
  [...catalogue]
    .map(([name, { severity, title }]) => ({ name, severity, title }))
    .sort((a, b) => (a.name < b.name ? -1 : 1));
