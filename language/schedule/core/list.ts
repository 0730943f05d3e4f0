// Lists of activities, in which each one stands behind all that comes before it.

export type List = readonly number[];
/** Of each activity those that stand earlier on every list. */
export type Before = readonly (readonly number[])[];

/** The list on which, of all that may come next, what has the least rank comes first; ties go to the lower number. */
export function listBy(before: Before, rank: (activity: number) => number): List {
  return grow(before, (ready) =>
    ready.reduce((a, b) => {
      const difference = rank(a) - rank(b);
      return difference < 0 || (difference === 0 && a < b) ? a : b;
    }),
  );
}

/**
 * A list drawn at random, in favour of low ranks: the regret-based biased random sampling of Drexl (1991). What may come next
 * is drawn with the probability of its distance to the worst rank, plus one.
 */
export function drawnBy(before: Before, rank: (activity: number) => number, next: () => number): List {
  return grow(before, (ready) => {
    const worst = Math.max(...ready.map(rank));
    const shares = ready.map((activity) => worst - rank(activity) + 1);
    let left = next() * shares.reduce((sum, share) => sum + share, 0);
    const drawn = ready.find((_, i) => {
      left -= shares[i] as number;
      return left < 0;
    });
    return drawn ?? (ready[0] as number);
  });
}

function grow(before: Before, choose: (ready: readonly number[]) => number): List {
  const waiting = before.map((these) => these.length);
  const after: number[][] = before.map(() => []);
  for (const [activity, these] of before.entries()) for (const first of these) after[first]?.push(activity);
  const ready = waiting.flatMap((count, activity) => (count === 0 ? [activity] : []));
  const list: number[] = [];
  while (ready.length > 0) {
    const chosen = choose(ready);
    ready.splice(ready.indexOf(chosen), 1);
    list.push(chosen);
    for (const then of after[chosen] ?? []) {
      const left = (waiting[then] ?? 0) - 1;
      waiting[then] = left;
      if (left === 0) ready.push(then);
    }
  }
  if (list.length < before.length) throw new Error('activities wait for each other in a circle');
  return list;
}

/** The list with one activity taken to another place, or the same list where nothing lets it move there. */
export function shifted(list: List, from: number, to: number): List {
  const out = [...list];
  const [moved] = out.splice(from, 1);
  out.splice(to, 0, moved as number);
  return out;
}

/** The first and the last place at which an activity may stand if all others stay in order. */
export function roomOf(list: List, place: number, before: Before): readonly [number, number] {
  const activity = list[place] as number;
  const mine = new Set(before[activity]);
  let first = place;
  while (first > 0 && !mine.has(list[first - 1] as number)) first--;
  let last = place;
  while (last < list.length - 1 && !before[list[last + 1] as number]?.includes(activity)) last++;
  return [first, last];
}
