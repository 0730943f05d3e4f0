// The reference page of the rules, read off the catalogue.
import { families } from './catalogue.ts';
import type { RuleEntry } from './rule.ts';

/** All rules as Markdown: an overview, then a section for each with its severity, why, what the quick fix does, its source. */
export function rulesPage(): string {
  const rules = families.flatMap((family) => Object.entries(family.rules)).sort(([a], [b]) => (a < b ? -1 : 1));
  const overview = [
    '| rule | severity | what |',
    '|---|---|---|',
    ...rules.map(([name, rule]) => `| [\`${name}\`](#${name}) | ${rule.severity} | ${rule.title} |`),
  ];
  const intro =
    'A policy can set the severity of a rule (`severity look-hard-due warning`), and a rig can accept one for a while (`accept look-hard-due until 2027-04-15 because "…"`). What could not be read or found cannot be accepted. Nothing that the calendar alone changes is an error. What the records say is to be done with each seam stands in [the table of advice](advice.md).';
  return `${['# The rules', intro, overview.join('\n'), ...rules.map(([name, rule]) => section(name, rule))].join('\n\n')}\n`;
}

/** One rule as Markdown. */
export function section(name: string, { severity, title, why, fix, source }: RuleEntry): string {
  const facts = [
    `- severity: ${severity}`,
    `- quick fix: ${fix}`,
    ...(source === undefined ? [] : [`- source: ${source}`]),
  ];
  return `## ${name}\n\n${title}. ${why}\n\n${facts.join('\n')}`;
}
