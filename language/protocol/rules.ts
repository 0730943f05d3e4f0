import * as z from 'zod';
import { ask } from './ask.ts';

/** The scheme of the pages of rules: texts of the server that lie on no disk. */
export const ruleScheme = 'rigseam-rule';

/** Where an editor that shows such texts finds what a rule means. */
export const rulePageUri = (rule: string): string => `${ruleScheme}:/${rule}.md`;

const severity = z.enum(['error', 'warning', 'information', 'hint']);

/** Request from the client: all rules of the checker, by name. */
export const rulesAsk = ask(
  'rigseam/rules',
  z.object({}),
  z.array(z.object({ name: z.string(), severity, title: z.string() })).readonly(),
);
