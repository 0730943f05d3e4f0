// Which seams a place in the text speaks of: their own lines, and the records and plans that name them.
import type { Span } from '../../grammar/problem.ts';
import type { Place, Rig } from '../../resolve/types.ts';

interface Spoken {
  readonly at: Span;
  readonly items: readonly string[];
}

/** The items at an offset of a file. A name speaks of itself, a line of all that it names; none where nothing is named. */
export function itemsAt(rig: Rig, file: string, offset: number): readonly string[] {
  const here = spokenIn(rig, file).filter(({ at: [from, to] }) => from <= offset && offset <= to);
  const least = Math.min(...here.map(({ at: [from, to] }) => to - from));
  return [...new Set(here.filter(({ at: [from, to] }) => to - from === least).flatMap(({ items }) => items))];
}

function spokenIn(rig: Rig, file: string): readonly Spoken[] {
  const own = rig.items
    .filter(({ origin }) => origin.file === file)
    .map(({ name, origin }) => ({ at: origin.at, items: [name] }));
  const named = (at: Span, places: readonly Place[]): readonly Spoken[] => [
    { at, items: places.map(({ item }) => item) },
    ...places.map((place) => ({ at: place.at, items: [place.item] })),
  ];
  const records = rig.events
    .filter((event) => event.file === file)
    .flatMap(({ record, places, findings }) => [
      ...named(record.at, places),
      ...findings.flatMap(({ line, places: found }) => named(line.at, found)),
    ]);
  const plans = rig.plans
    .filter((plan) => plan.file === file)
    .flatMap(({ statement, places }) => named(statement.at, places));
  return [...own, ...records, ...plans];
}
