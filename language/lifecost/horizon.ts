// Over how many years the ways are compared: the least of what the policy says, how long the rig is kept, and its membrane.
import { endOfMembrane } from '../due/index.ts';
import type { Explained, Input } from '../explain.ts';
import type { RigView } from '../resolve/types.ts';
import { periodBetween } from '../values/calendar.ts';

/**
 * Whole years from the as-of date, at least one. A membrane past the end of its life does not end the comparison, nor one
 * whose renewal has a price: then the new roof is among the costs.
 */
export function horizonOf(view: RigView, asOf: string): Explained {
  const { policy, identity } = view.rig;
  const { value, origin } = policy.horizon;
  const until = (date: string) => Math.floor(periodBetween(asOf, date).months / 12);
  const inputs: Input[] = [
    {
      name: 'policy',
      value: Math.floor(value.months / 12 + value.days / 365.2425),
      unit: 'years',
      text: value.text,
      origin,
    },
  ];
  const kept = identity.keptUntil;
  if (kept && kept.value.last > asOf)
    inputs.push({
      name: 'kept',
      value: until(kept.value.last),
      unit: 'years',
      text: kept.value.text,
      origin: kept.origin,
    });
  const [membrane] = endOfMembrane(view);
  if (membrane && membrane.date > asOf && reroofs(view, asOf).length === 0)
    inputs.push({ name: 'membrane', value: until(membrane.date), unit: 'years', text: `to ${membrane.date}` });
  const years = Math.max(1, Math.min(...inputs.map((input) => input.value as number)));
  const shortest = inputs.find((input) => input.value === years) ?? (inputs[0] as Input);
  return {
    value: years,
    unit: 'years',
    text: years === 1 ? '1 year' : `${years} years`,
    rule: rules[shortest.name] ?? 'the horizon of the policy',
    formula: `max(1, min(${inputs.map(({ name }) => name).join(', ')}))`,
    inputs,
  };
}

/** The quotes for a new roof that hold. */
export const reroofs = ({ rig }: RigView, asOf: string): RigView['rig']['quotes'] =>
  rig.quotes.filter(({ job, until }) => job?.includes('reroof') && !(until && until.last < asOf));

const rules: Readonly<Record<string, string>> = {
  policy: 'the horizon of the policy',
  kept: 'as long as the rig is kept',
  membrane: 'to the end of the life of the membrane at the latest',
};
