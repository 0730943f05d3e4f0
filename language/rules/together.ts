// One cause, one finding: what one rule says of several seams at one place (`all`, `edges`) is said once.
import type { Located } from '../resolve/located.ts';
import { listed } from './listed.ts';

/**
 * Problems of one rule at one place about different items become the first of them, with the names of the others. What
 * is said of one item twice stays: those are two causes.
 */
export function together(problems: readonly Located[]): Located[] {
  const groups = new Map<
    string,
    { readonly first: Located; readonly items: Set<string>; readonly followed: string[] }
  >();
  const out: Located[] = [];
  for (const problem of problems) {
    const { item } = problem;
    const key = `${problem.file}\n${problem.at.join()}\n${problem.rule}`;
    const group = item === undefined ? undefined : groups.get(key);
    if (group && item !== undefined && !group.items.has(item)) {
      group.items.add(item);
      group.followed.push(...(problem.followUp?.items ?? []));
      continue;
    }
    if (!group && item !== undefined) groups.set(key, { first: problem, items: new Set([item]), followed: [] });
    out.push(problem);
  }
  for (const { first, items, followed } of groups.values()) {
    const others = [...items].slice(1);
    if (others.length === 0) continue;
    const { followUp } = first;
    out[out.indexOf(first)] = {
      ...first,
      message: `${first.message} The same holds for ${listed(others)}.`,
      ...(followUp && { followUp: { ...followUp, items: [...new Set([...followUp.items, ...followed])] } }),
    };
  }
  return out;
}
