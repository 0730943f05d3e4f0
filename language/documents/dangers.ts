// What a rig's plans can hurt people with.
import type { RigView } from '../resolve/types.ts';
import { isDone } from '../schedule/done.ts';
import { seamStates } from '../seams/index.ts';
import type { Dangers } from './cautions.ts';

/** From the plans that are not done, their materials, the seams that they touch, and the age of the rig. */
export function dangersOf({ rig, material, ...view }: RigView, asOf: string): Dangers {
  const plans = rig.plans.filter((plan) => !isDone(plan, rig, asOf));
  const words = new Set(plans.map((plan) => plan.statement.word));
  const named = [
    ...plans.flatMap((plan) => (plan.statement.materials ?? []).map((used) => used.name)),
    ...(rig.policy.wipeWith ? [rig.policy.wipeWith.value] : []),
  ];
  const materials = named.map(material).filter((found) => found !== undefined);
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
    openings: plans.some((plan) =>
      plan.places.some((place) => rig.items.find((item) => item.name === place.item)?.kind === 'opening'),
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
    openings: any('openings'),
    wet: any('wet'),
    old: any('old'),
  };
}
