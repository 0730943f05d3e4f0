// All rules by name: the one place that the checker, the pages, the editor and the tests read.
import { accepting } from './accept.ts';
import { naming } from './naming.ts';
import { reading } from './reading.ts';
import type { RuleEntry, RuleFamily } from './rule.ts';

/** The families in the order of the reference page. */
export const families: readonly RuleFamily[] = [reading, naming, accepting];

export const catalogue: ReadonlyMap<string, RuleEntry> = new Map(
  families.flatMap(({ rules }) => Object.entries(rules)),
);
