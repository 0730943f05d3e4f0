// What a rig's plans can hurt people with.

import { openPlans } from '../resolve/done.ts';
import type { RigView } from '../resolve/types.ts';
import { seamStates } from '../seams/index.ts';
import type { Dangers } from './cautions.ts';

const closing: ReadonlySet<string> = new Set(['tape', 'seal', 'cover', 'coat']);

/** From the plans that are not done, their materials, the seams that they touch, and the age of the rig. */
export function dangersOf({ rig, material, ...view }: RigView, asOf: string): Dangers {
  const plans = openPlans(rig, asOf);
  const words = new Set(plans.map((plan) => plan.statement.word));
  const materials = plans
    .flatMap((plan) => (plan.statement.materials ?? []).map((used) => material(used.name)))
    .filter((found) => found !== undefined);
  const kindOf = (name: string) => rig.items.find((item) => item.name === name)?.kind;
  const lays = words.has('tape') || words.has('seal') || words.has('coat');
  const states = seamStates({ rig, material, ...view }, asOf);
  const built = (rig.identity.built ?? rig.identity.inService)?.value;
  return {
    roofWork: plans.length > 0,
    solvents:
      lays ||
      materials.some((one) => one.kind === 'primer' || (one.kind === 'cleaner' && one.solvent?.value !== 'detergent')),
    urethane: materials.some((one) => one.family?.value === 'urethane' || one.kind === 'primer'),
    stripping: words.has('strip') || words.has('replace') || words.has('rebed'),
    washing: words.has('wash') || lays,
    closing: plans.some(
      ({ statement, places }) =>
        closing.has(statement.word) &&
        (places.length === 0 || places.some((place) => kindOf(place.item) === 'opening')),
    ),
    wet: [...states.values()].some((state) => state.stretches.some((stretch) => stretch.wet !== undefined)),
    old: built === undefined || built.first < '1980-01-01',
  };
}

/** The dangers of several rigs together. */
export function allDangers(all: readonly Dangers[]): Dangers {
  const any = (of: keyof Dangers) => all.some((dangers) => dangers[of]);
  return {
    roofWork: any('roofWork'),
    solvents: any('solvents'),
    urethane: any('urethane'),
    stripping: any('stripping'),
    washing: any('washing'),
    closing: any('closing'),
    wet: any('wet'),
    old: any('old'),
  };
}
