// One cause, one finding: what one rule says of several seams at one place (`all`, `edges`) is said once.
import type { Located } from '../resolve/located.ts';
import { listed } from './listed.ts';

/** Problems of one rule at one place about different items become the first of them, with the names of the others. */
export function together(problems: readonly Located[]): Located[] {
  const groups = new Map<string, Located[]>();
  for (const problem of problems) {
    const key =
      problem.item === undefined
        ? `${groups.size} ${problem.message}`
        : `${problem.file}\n${problem.at.join()}\n${problem.rule}`;
    const group = groups.get(key);
    if (group) group.push(problem);
    else groups.set(key, [problem]);
  }
  return [...groups.values()].map((group) => {
    const [first] = group as [Located];
    const others = [...new Set(group.flatMap(({ item }) => (item === undefined || item === first.item ? [] : [item])))];
    if (others.length === 0) return first;
    return { ...first, message: `${first.message} The same holds for ${listed(others)}.` };
  });
}
