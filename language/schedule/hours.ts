// How long a part of a job takes one person: the labour of the estimate, part by part.
import { labourLine, type Quantity } from '../estimate/labour.ts';
import { roofArea } from '../measure/areas.ts';
import { run } from '../measure/figure.ts';
import type { Rig } from '../resolve/types.ts';
import type { Task } from '../statements/words.ts';

/** How much of a task there is: nanometres along seams, a number of times, or the whole roof. */
export type Amount = { readonly nm: number } | { readonly times: number } | 'roof';

/** The likely minutes of a task; 0 where the policy counts it with another or has no rate that fits. */
export function minutesOf(task: Task, amount: Amount, { policy, roof }: Pick<Rig, 'policy' | 'roof'>): number {
  const system = policy.units.value;
  const quantity = quantityOf(amount, roof, system);
  if (quantity === undefined) return 0;
  const line = labourLine(1, { task, quantity }, policy, system);
  return line && 'hours' in line ? line.hours.likely.value * 60 : 0;
}

const bare = { rule: 'a part of the work', formula: 'quantity', inputs: [] };

function quantityOf(amount: Amount, roof: Rig['roof'], system: Rig['policy']['units']['value']): Quantity | undefined {
  if (amount === 'roof') return roof && { kind: 'area', wide: roofArea(roof, system) };
  if ('nm' in amount) return { kind: 'length', long: run(amount.nm, system, bare) };
  const figure = { value: amount.times, unit: 'times', text: `${amount.times}`, ...bare };
  return { kind: 'times', count: amount.times, figure };
}
