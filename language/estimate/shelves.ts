// What lies on the shelves of a fleet, of its yards and of its rigs, for one material, and where.
import type { Fleet, Material } from '../resolve/types.ts';
import type { RigNeeds } from './pooled.ts';
import { type OnHand, onHandOf } from './stock.ts';

export interface Shelves {
  /** What lies on the rigs' own shelves, and that with the fleet's. */
  readonly own: OnHand;
  readonly all: OnHand;
  /** In a fleet of several yards: the same by the place where it lies, in the order of the yards, the fleet itself last. */
  readonly places: readonly { readonly place: string; readonly onHand: OnHand }[];
}

/** Those who need one material, and the others that need one of the same name that is sold in another way. */
export interface Sharing {
  readonly material: Material;
  readonly rigs: readonly RigNeeds[];
  readonly elsewhere: ReadonlySet<RigNeeds>;
  /** Of all of that name it comes first. */
  readonly isFirst: boolean;
}

/** The place of a rig or a shelf in a fleet of several yards: the name of its yard, else that of the fleet. */
export function placeOf(fleet: Fleet, { view: { rig } }: RigNeeds): string {
  return fleet.yardOf(rig)?.name ?? fleet.name;
}

/**
 * The shelves for one of the materials that are bought together. Where several are of one name, each has the shelves of its own
 * rigs; the fleet's and the yards', and those of rigs that need none, serve the first: nothing twice.
 */
export function shelvesOf(fleet: Fleet, rigs: readonly RigNeeds[], sharing: Sharing, asOf: string): Shelves {
  const { material, isFirst, elsewhere } = sharing;
  const from = isFirst ? rigs.filter((rig) => !elsewhere.has(rig)) : sharing.rigs;
  const mine = from.map((rig) => ({ place: placeOf(fleet, rig), onHand: onHandOf(rig.view.rig, material, asOf) }));
  const shared = isFirst ? ofPlaces(fleet, rigs, material, asOf) : [];
  const own = merged(mine.map(({ onHand }) => onHand));
  if (fleet.yards.length === 0)
    return { own, all: isFirst ? merged([own, ...shared.map(({ onHand }) => onHand)]) : own, places: [] };
  const places = [...new Set([...fleet.yards.map(({ name }) => name), fleet.name])].map((place) => {
    const here = [...mine, ...shared].filter((shelf) => shelf.place === place).map(({ onHand }) => onHand);
    const { lengths, ...rest } = merged(here);
    return { place, onHand: { ...rest, lengths: lengths.map((length) => ({ ...length, at: place })) } };
  });
  return { own, all: merged(places.map(({ onHand }) => onHand)), places };
}

/** The shelves of the yards and of the fleet: work of a rig takes from its own where it has one, else from that of its yard. */
function ofPlaces(fleet: Fleet, rigs: readonly RigNeeds[], material: Material, asOf: string): Shelves['places'] {
  const takers = new Map<string, RigNeeds[]>();
  for (const rig of rigs) {
    if (hasOwn(rig, material)) continue;
    const place = placeOf(fleet, rig);
    const known = takers.get(place);
    if (known) known.push(rig);
    else takers.set(place, [rig]);
  }
  const places = [...fleet.yards, { name: fleet.name, stock: fleet.stock }];
  return places.map(({ name, stock }) => {
    const events = (takers.get(name) ?? []).flatMap(({ view }) => view.rig.events);
    return { place: name, onHand: onHandOf({ stock, events }, material, asOf) };
  });
}

function hasOwn({ view }: RigNeeds, material: Material): boolean {
  return view.rig.stock.some((each) =>
    each.word === 'on-hand'
      ? each.stock.some(({ name }) => name === material.name)
      : each.material.name === material.name,
  );
}

function merged(shelves: readonly OnHand[]): OnHand {
  const origin = shelves.find((shelf) => shelf.origin)?.origin;
  return {
    lengths: shelves.flatMap(({ lengths }) => lengths),
    mL: shelves.reduce((sum, { mL }) => sum + mL, 0),
    questions: shelves.flatMap(({ questions }) => questions),
    ...(origin ? { origin } : {}),
  };
}
