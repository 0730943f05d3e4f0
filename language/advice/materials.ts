// Which material: one that is at hand, else a generic one, the best that these surfaces take.
import type { Grade, Material, RigView, Stated } from '../resolve/types.ts';
import type { Scene } from './facts.ts';

export type KindOf<K extends Material['kind']> = Extract<Material, { readonly kind: K }>;

/** A material on the surfaces of a place, with its grade on each. */
export interface Choice<M extends Material = Material> {
  readonly material: M;
  readonly atHand: boolean;
  readonly grades: readonly { readonly surface: string; readonly grade?: Stated<Grade> }[];
}

/** What stands in where nothing is at hand, the usual one first. */
const generic: Readonly<Record<Material['kind'], readonly string[]>> = {
  tape: ['GenericSeamTape'],
  sealant: ['GenericSolventLap', 'GenericHybridLap', 'GenericHybrid', 'GenericUrethane', 'GenericSilicone'],
  coating: ['GenericAcrylicCoating', 'GenericUrethaneCoating', 'GenericSiliconeCoating'],
  cleaner: ['GenericIsopropyl'],
  primer: ['GenericTapePrimer'],
};

/** Sealants of these families are no beads for a roof: bedding, house caulk, bitumen, acid-cure silicone. */
const noBead: ReadonlySet<string> = new Set(['butyl', 'acrylic', 'asphalt', 'acetoxy-silicone']);

/** The materials that the record speaks of: on the shelf or bought, then planned, then used before, the latest first. */
export function atHandOf({ rig, material }: RigView, asOf: string): readonly Material[] {
  const names = new Set<string>();
  for (const line of rig.stock) {
    for (const { name } of line.word === 'bought' ? [line.material] : line.stock) names.add(name);
  }
  for (const { statement } of rig.plans) for (const { name } of statement.materials ?? []) names.add(name);
  for (const { record, last } of [...rig.events].reverse()) {
    if (last > asOf || !('materials' in record)) continue;
    for (const { name } of record.materials ?? []) names.add(name);
  }
  for (const name of [rig.policy.washWith?.value, rig.policy.wipeWith?.value]) if (name !== undefined) names.add(name);
  return [...names].map(material).filter((found) => found !== undefined);
}

const known = ['yes', 'label', 'test'] as const;

/** From 0, the best, to 4: not to be used. Each surface counts; without any, all that is said is that nothing is known. */
function standing({ grades }: Choice): number {
  return grades.reduce((worst, { grade }) => {
    const own = grade === undefined ? known.length : known.indexOf(grade.value as (typeof known)[number]);
    return Math.max(worst, own < 0 ? known.length + 1 : own);
  }, 0);
}
export const mustNot = (choice: Choice): boolean => standing(choice) > known.length;

export const gradesOf = (material: Material, surfaces: readonly string[]): Choice['grades'] =>
  surfaces.map((surface) => {
    const grade = material.bonding[surface];
    return grade ? { surface, grade } : { surface };
  });

/**
 * The material of a kind for these surfaces: the best that is at hand and of which something is known there, else the best
 * generic one, else one at hand of which nothing is known. Never one that must not lie on one of them. `first` names what
 * goes before all else where it may lie there, such as the sealant that lies there already.
 */
export function choose<K extends Material['kind']>(
  kind: K,
  surfaces: readonly string[],
  { view, atHand }: Scene,
  options: { readonly first?: string; readonly only?: (material: KindOf<K>) => boolean } = {},
): Choice<KindOf<K>> | undefined {
  const fits = (material: Material | undefined): material is KindOf<K> =>
    material?.kind === kind &&
    !(material.kind === 'sealant' && noBead.has(material.family?.value ?? '')) &&
    (options.only?.(material as KindOf<K>) ?? true);
  const own = [options.first === undefined ? undefined : view.material(options.first), ...atHand].filter(fits);
  const others = generic[kind].map(view.material).filter(fits);
  const candidates: Choice<KindOf<K>>[] = [
    ...own.map((material) => ({ material, atHand: true, grades: gradesOf(material, surfaces) })),
    ...others.map((material) => ({ material, atHand: false, grades: gradesOf(material, surfaces) })),
  ];
  const rank = (choice: Choice) => {
    const worst = standing(choice);
    if (worst === known.length) return 20;
    return choice.atHand ? worst : 10 + worst;
  };
  let best: Choice<KindOf<K>> | undefined;
  for (const one of candidates) if (!mustNot(one) && (best === undefined || rank(one) < rank(best))) best = one;
  return best;
}
