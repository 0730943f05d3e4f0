// The search for a better list: whatever turns a list into a schedule is handed in.
import { type Cost, compareCost } from './cost.ts';
import { type Before, type List, roomOf, shifted } from './list.ts';
import { streamOf } from './random.ts';

/** A way to make a schedule of a list, and what such a schedule costs. */
export interface Decoder<S> {
  readonly before: Before;
  decode(list: List): S;
  cost(schedule: S): Cost;
  /** Whether nothing can be better than this. */
  isBest?(cost: Cost): boolean;
  /** Activities that would gain by standing earlier. */
  pressed?(schedule: S): readonly number[];
  /** The schedule pushed together from both ends, and its list; counts as two schedules. */
  justified?(schedule: S): { readonly list: List; readonly schedule: S };
}

export interface Found<S> {
  readonly list: List;
  readonly schedule: S;
  readonly cost: Cost;
  /** How many schedules were made. */
  readonly schedules: number;
}

/** After so many schedules without gain, the search goes on from the best one, shaken. */
const patience = 60;
/** How many activities are moved when a list is shaken. */
const shaking = 4;

/**
 * The best schedule of the lists that are handed in and of what a local search finds from there: one activity at a time is taken
 * to another place, and what is no worse is kept. The budget is counted in schedules, never in seconds; the same
 * input and seed give the same answer. At least the first list is tried.
 */
export function search<S>(decoder: Decoder<S>, starts: Iterable<List>, budget: number, seed: number): Found<S> {
  const next = streamOf(seed);
  let schedules = 0;
  const tried = (list: List): Omit<Found<S>, 'schedules'> => {
    const schedule = decoder.decode(list);
    const cost = decoder.cost(schedule);
    schedules++;
    if (!decoder.justified) return { list, schedule, cost };
    const tight = decoder.justified(schedule);
    schedules += 2;
    const tightCost = decoder.cost(tight.schedule);
    return compareCost(tightCost, cost) <= 0 ? { ...tight, cost: tightCost } : { list, schedule, cost };
  };
  const isOver = (best: Omit<Found<S>, 'schedules'>) => schedules >= budget || decoder.isBest?.(best.cost) === true;

  let best: Omit<Found<S>, 'schedules'> | undefined;
  for (const list of starts) {
    const found = tried(list);
    if (!best || compareCost(found.cost, best.cost) < 0) best = found;
    if (isOver(best)) break;
  }
  if (!best) throw new Error('no list to begin with');
  if (best.list.length < 2) return { ...best, schedules };
  let current = best;
  let idle = 0;
  while (!isOver(best)) {
    let { list } = current;
    if (idle >= patience) {
      list = best.list;
      for (let i = 0; i < shaking; i++) list = moved(list, decoder.before, next);
      current = tried(list);
      idle = 0;
    } else {
      const found = tried(moved(list, decoder.before, next, decoder.pressed?.(current.schedule)));
      if (compareCost(found.cost, current.cost) <= 0) current = found;
      idle++;
    }
    if (compareCost(current.cost, best.cost) < 0) {
      best = current;
      idle = 0;
    }
  }
  return { ...best, schedules };
}

/** The list with one activity elsewhere: every other time one that is pressed, further to the front. */
function moved(list: List, before: Before, next: () => number, pressed: readonly number[] = []): List {
  const draw = (count: number) => Math.floor(next() * count);
  const forward = pressed.length > 0 && next() < 0.5;
  const place = forward ? list.indexOf(pressed[draw(pressed.length)] as number) : draw(list.length);
  const [first, last] = roomOf(list, place, before);
  const end = forward ? place : last;
  // Places of the room without its own.
  const free = end - first;
  if (free <= 0) return list;
  const to = first + draw(free);
  return shifted(list, place, to >= place ? to + 1 : to);
}
