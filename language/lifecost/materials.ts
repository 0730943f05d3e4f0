// Which sealant and which tape the ways to keep the seams are counted with.
import type { Material, RigView, Sealant, Tape } from '../resolve/types.ts';

type Kind = 'tape' | 'sealant';
type OfKind<K extends Kind> = K extends 'tape' ? Tape : Sealant;

/** A material with the reason why it was taken. */
export interface Chosen<M> {
  readonly material: M;
  readonly because: string;
}

/**
 * The tape or sealant of a rig: the one that an open plan names, else the one that a record used last up to the as-of
 * date, else the first with a price that is visible where the rig is written. Undefined where none has a price.
 */
export function materialFor<K extends Kind>(view: RigView, kind: K, asOf: string): Chosen<OfKind<K>> | undefined {
  const priced = (name: string) => {
    const found = view.material(name);
    return found?.kind === kind && hasPrice(found) ? (found as OfKind<K>) : undefined;
  };
  const first = (names: Iterable<string>, because: string) => {
    for (const name of names) {
      const material = priced(name);
      if (material) return { material, because };
    }
    return undefined;
  };
  const { plans, events } = view.rig;
  const planned = plans.flatMap(({ statement }) => (statement.materials ?? []).map(({ name }) => name));
  const used = events
    // What was found there is not what is used here.
    .filter(({ last, record }) => last <= asOf && record.word !== 'found' && record.word !== 'inspected')
    .reverse()
    .flatMap(({ record }) => ('materials' in record ? (record.materials ?? []).map(({ name }) => name) : []));
  return (
    first(planned, 'a plan names it') ??
    first(used, 'it was used last') ??
    first(view.materialNames(), `it is the first ${kind} here that has a price`)
  );
}

function hasPrice(material: Material): boolean {
  if (material.kind === 'tape') return material.rolls.some(({ price }) => price !== undefined);
  if (material.kind !== 'sealant') return false;
  return [...material.cartridges, ...material.cases].some(({ price }) => price !== undefined);
}
