// What a schedule calls the plans of a rig, so that the next schedule knows them again.
import { itemsOf } from '../resolve/done.ts';
import type { Plan, Rig } from '../resolve/types.ts';

/**
 * The name of each plan: its word and all the items that it names, the second of a name with its number. What is done of a
 * plan, or of one before it, changes no name.
 */
export function planKeys({ plans }: Pick<Rig, 'plans'>): ReadonlyMap<Plan, string> {
  const given = new Map<string, number>();
  return new Map(
    plans.map((plan) => {
      const stem = [plan.statement.word, [...itemsOf(plan)].sort().join('+')].filter((part) => part !== '').join(' ');
      const times = (given.get(stem) ?? 0) + 1;
      given.set(stem, times);
      return [plan, times === 1 ? stem : `${stem}/${times}`];
    }),
  );
}
