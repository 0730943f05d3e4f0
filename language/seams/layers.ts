// What a record lays on a seam, and what a seam has from the beginning.
import type { Event, Item, Material, MaterialsOf, Rig } from '../resolve/types.ts';
import { type Used, unknownMaterial } from '../statements/slots/amounts.ts';
import type { Layer } from './state.ts';

type LayerKind = Layer['kind'];

/** The layer that a material makes by its own nature; a cleaner makes none. */
const natural: Readonly<Record<Material['kind'], LayerKind | undefined>> = {
  sealant: 'sealant',
  tape: 'tape',
  primer: 'primer',
  coating: 'coating',
  cleaner: undefined,
};

/**
 * The layers of a record, from the bottom. The verb decides what the work is (`kind`); cleaners leave nothing, primers
 * lie under it; of several materials of the kind each is a layer. A record that names none still lays one.
 */
export function layersOf(
  event: Event,
  used: readonly Used[] | undefined,
  kind: LayerKind,
  by: Layer['by'],
  material: MaterialsOf,
): readonly Layer[] {
  const under: Layer[] = [];
  const over: Layer[] = [];
  for (const { name } of used ?? []) {
    if (name === unknownMaterial) {
      over.push(layer(event, kind, by, 'unknown'));
      continue;
    }
    const known = material(name);
    if (!known) {
      over.push(layer(event, kind, by, 'undeclared', name));
      continue;
    }
    const own = natural[known.kind];
    if (own === undefined) continue;
    const laid = own === 'primer' || kind === 'patch' || by === 'found' ? own : kind;
    (laid === 'primer' ? under : over).push({
      ...layer(event, laid, by, 'named', name),
      ...(known.family ? { family: known.family.value } : {}),
    });
  }
  if (over.length === 0 && (kind !== 'primer' || under.length === 0)) over.push(layer(event, kind, by, 'unnamed'));
  return [...under, ...over];
}

function layer(event: Event, kind: LayerKind, by: Layer['by'], known: Layer['known'], material?: string): Layer {
  return {
    kind,
    by,
    known,
    ...(material === undefined ? {} : { material }),
    // What was found lay there before: only its latest day is known.
    ...(by === 'found' ? {} : { first: event.first }),
    last: event.last,
    event,
  };
}

/**
 * The bead with which a seam begins. A part with a `since` came later than the factory's sealant, so that only its own
 * first bead is known of, not what it is. Counts as the first coat.
 */
export function firstBead(item: Item, rig: Rig, material: MaterialsOf): Layer {
  if (item.since)
    return { kind: 'sealant', by: 'factory', known: 'unnamed', first: item.since.first, last: item.since.last };
  const made = (rig.identity.built ?? rig.identity.inService)?.value;
  const dated = made ? { first: made.first, last: made.last } : {};
  const name = rig.factory?.value;
  if (name === undefined) return { kind: 'sealant', by: 'factory', known: 'unnamed', ...dated };
  const known = material(name);
  return {
    kind: 'sealant',
    by: 'factory',
    material: name,
    known: known ? 'named' : 'undeclared',
    ...(known?.family ? { family: known.family.value } : {}),
    ...dated,
  };
}
