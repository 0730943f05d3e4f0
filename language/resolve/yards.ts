// Which yard serves which rig, and a fleet as each of its yards sees it.
import type { Fleet, FleetFrame, FleetYard, RigView, Served } from './types.ts';

/** The yard that serves a rig: the first that names it or its group. A look-up by name, whatever the number of rigs. */
export function servedBy(yards: readonly FleetYard[]): (rig: Served) => FleetYard | undefined {
  const byName = new Map<string, { readonly yard: FleetYard; readonly turn: number }>();
  for (const [turn, yard] of yards.entries())
    for (const { name } of yard.serves) if (!byName.has(name)) byName.set(name, { yard, turn });
  return ({ name, group }) => {
    const own = byName.get(name);
    const shared = group && byName.get(group.value);
    return own && shared ? (own.turn <= shared.turn ? own : shared).yard : (own ?? shared)?.yard;
  };
}

/** One place of a fleet with the rigs that it serves, in the order of the fleet. */
export interface Site {
  readonly fleet: Fleet;
  readonly views: readonly RigView[];
}

/**
 * The places of a fleet where there is work: its yards as they are written, then what stands directly in it for the rigs that no
 * yard serves. A fleet without yards is one place.
 */
export function sitesOf(fleet: Fleet, views: readonly RigView[]): readonly Site[] {
  if (fleet.yards.length === 0) return [{ fleet, views }];
  const served = new Map<FleetYard | undefined, RigView[]>();
  for (const view of views) {
    const yard = fleet.yardOf(view.rig);
    const known = served.get(yard);
    if (known) known.push(view);
    else served.set(yard, [view]);
  }
  return [...fleet.yards, undefined].flatMap((yard): Site[] => {
    const mine = served.get(yard);
    return mine ? [{ fleet: { ...seenFrom(yard, fleet), rigs: mine.map(({ rig }) => rig) }, views: mine }] : [];
  });
}

/** All that lies on the shelves of a fleet and of its yards. */
export function shelvesOf({ stock, yards }: FleetFrame): FleetFrame['stock'] {
  return yards.length === 0 ? stock : [...yards.flatMap((yard) => yard.stock), ...stock];
}

/** A fleet as it is for the rigs of a yard: the yard's own crews and bays; closed days and the shelf of both. */
export function seenFrom<F extends FleetFrame>(yard: FleetYard | undefined, fleet: F): F {
  if (!yard) return fleet;
  const { crews, bays } = yard;
  const [crew] = crews;
  const { crew: _, ...rest } = fleet;
  return {
    ...rest,
    ...(crew ? { crew } : {}),
    crews,
    bays,
    closed: [...fleet.closed, ...yard.closed],
    stock: [...yard.stock, ...fleet.stock],
    yard,
  } as unknown as F;
}
