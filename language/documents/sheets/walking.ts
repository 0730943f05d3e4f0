// The order in which a person looks: once round the rig from the door side, then over the roof from the rear forward.
import type { Item, Rig } from '../../resolve/types.ts';
import type { Side } from '../../statements/words.ts';

export interface Leg {
  readonly title: string;
  readonly items: readonly Item[];
}

const legs: readonly { readonly side: Side; readonly title: string }[] = [
  { side: 'curbside', title: 'Round the outside: curb side, where the door is, from the front to the rear' },
  { side: 'rear', title: 'Round the outside: the rear' },
  { side: 'roadside', title: 'Round the outside: road side, from the rear to the front' },
  { side: 'front', title: 'Round the outside: the front' },
];

/** Every item of a rig once. What lies at a side is seen from the ground or a ladder; the rest from the rear forward. */
export function walkingOrder(rig: Rig): readonly Leg[] {
  const sideOf = new Map(rig.items.map((item) => [item, atSide(item, rig)]));
  const along = (item: Item) => item.places[0]?.along.nm ?? Number.NEGATIVE_INFINITY;
  const sorted = (items: readonly Item[], way: 1 | -1) =>
    items.toSorted((a, b) => (along(a) === along(b) ? 0 : (along(a) < along(b) ? -1 : 1) * way));
  const round = legs.map(({ side, title }) => {
    const mine = rig.items.filter((item) => sideOf.get(item) === side);
    return { title, items: sorted(mine, side === 'roadside' ? -1 : 1) };
  });
  const over = rig.items.filter((item) => sideOf.get(item) === undefined);
  const flat = sorted(
    over.filter(({ kind }) => kind !== 'field'),
    -1,
  );
  const field = over.filter(({ kind }) => kind === 'field');
  return [...round, { title: 'On the roof, from the rear forward', items: [...flat, ...field] }].filter(
    ({ items }) => items.length > 0,
  );
}

/** The side that an item is looked at from: its own, or for a drain the one that it lies at. */
function atSide(item: Item, { roof }: Rig): Side | undefined {
  if (item.kind === 'edge' || item.kind === 'cap') return item.side ?? (item.name as Side);
  if (item.side !== undefined) return item.side;
  const place = item.places[0];
  if (item.kind !== 'drain' || place === undefined || roof === undefined) return undefined;
  const gaps: readonly (readonly [Side, number])[] = [
    ...(place.across === undefined
      ? []
      : ([
          ['curbside', place.across.nm],
          ['roadside', roof.across.nm - place.across.nm],
        ] as const)),
    ['rear', roof.along.nm - place.along.nm],
    ['front', place.along.nm],
  ];
  return gaps.reduce((best, gap) => (gap[1] < best[1] ? gap : best))[0];
}
