// The page of each rule, as a text that lies on no disk.
import { URI } from 'langium';
import { catalogue } from '../language/rules/catalogue.ts';
import { section } from '../language/rules/reference.ts';

export const ruleScheme = 'rigseam-rule';

/** Where an editor that shows such texts finds what a rule means. */
export const rulePageUri = (rule: string): string => URI.from({ scheme: ruleScheme, path: `/${rule}.md` }).toString();

/** The text of such a page; undefined for a rule that is not in the catalogue. */
export function rulePage(uri: URI): string | undefined {
  const rule = uri.path.replace(/^\//, '').replace(/\.md$/, '');
  const entry = catalogue.get(rule);
  return entry && `${section(rule, entry).replace(/^## /, '# ')}\n`;
}
