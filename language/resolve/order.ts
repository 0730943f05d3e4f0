// The order of records in time.
import type { Event } from './types.ts';

/** Of records on one day in different blocks and without a time: what must have come first. Common practice, no source. */
const verbOrder = [
  'found',
  'trip',
  'stored',
  'struck',
  'leaked',
  'inspected',
  'covered',
  'washed',
  'dried',
  'tightened',
  'removed',
  'stripped',
  'replaced',
  'rebedded',
  'patched',
  'primed',
  'sealed',
  'taped',
  'coated',
] as const;
const rank = new Map<string, number>(verbOrder.map((word, i) => [word, i]));

export interface Ordered extends Event {
  /** The block that it was written in. */
  readonly block: number;
}

/** Records in order of time; on one day as written within a block, by their times or the fixed order of verbs between blocks. Also the pairs that only the fixed order could settle. */
export function inOrder(events: readonly Ordered[]): {
  readonly events: readonly Ordered[];
  readonly guessed: readonly (readonly [Ordered, Ordered])[];
} {
  const byDay = new Map<string, Ordered[]>();
  for (const event of events) {
    const day = byDay.get(event.last);
    if (day) day.push(event);
    else byDay.set(event.last, [event]);
  }
  const out: Ordered[] = [];
  const guessed: [Ordered, Ordered][] = [];
  for (const day of [...byDay.keys()].sort()) {
    const here = byDay.get(day) as Ordered[];
    const oneBlock = here.every((event) => event.block === here[0]?.block);
    if (oneBlock) here.sort((a, b) => a.record.order - b.record.order);
    else {
      const timed = here.every((event) => event.time !== undefined);
      here.sort(
        (a, b) =>
          (timed ? compareText(a.time ?? '', b.time ?? '') : 0) ||
          verbRank(a) - verbRank(b) ||
          a.block - b.block ||
          a.record.order - b.record.order,
      );
      if (!timed)
        for (let i = 1; i < here.length; i++)
          if (sharePlace(here[i - 1] as Ordered, here[i] as Ordered))
            guessed.push([here[i - 1] as Ordered, here[i] as Ordered]);
    }
    out.push(...here);
  }
  return { events: out, guessed };
}

const verbRank = (event: Event) => rank.get(event.record.word) ?? verbOrder.length;
const compareText = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);

function sharePlace(a: Ordered, b: Ordered): boolean {
  if (a.block === b.block) return false;
  const items = new Set(a.places.map((place) => place.item));
  return b.places.some((place) => items.has(place.item));
}
