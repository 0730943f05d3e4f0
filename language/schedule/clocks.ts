// The clocks that run after a visit: from when the rig may be rained on, driven, washed, covered with tape.
import type { Material } from '../resolve/types.ts';
import { clocksOf, firstDay } from '../seams/index.ts';
import type { Visit } from './types.ts';

/** Planned work of a day is taken to be over by then (common practice); what is recorded later counts from its own time. */
export const workEnds = '18:00';

export type Clock = Visit['clocks'][number];

/** What was laid and on which day. */
export interface Laid {
  readonly material: Material;
  readonly day: string;
}

const order: readonly Clock['clock'][] = ['rain', 'drive', 'wash', 'cover'];

/**
 * Of each clock the days of the material that takes longest: not before the day of the low figure, safe from the first whole
 * day after the high one.
 */
export function clocksAfter(laid: readonly Laid[]): readonly Clock[] {
  const all = laid.flatMap(({ material, day }) =>
    clocksOf({ last: day, time: workEnds }, material).map(({ name, ends }) => ({
      name,
      material: material.name,
      notBefore: ends.earliest.date,
      safeFrom: firstDay(ends.safe),
    })),
  );
  return order.flatMap((clock): Clock[] => {
    const mine = all.filter(({ name }) => name === clock);
    if (mine.length === 0) return [];
    const latest = (days: readonly string[]) => [...days].sort().at(-1) as string;
    return [
      {
        clock,
        materials: [...new Set(mine.map(({ material }) => material))],
        notBefore: latest(mine.map(({ notBefore }) => notBefore)),
        safeFrom: latest(mine.map(({ safeFrom }) => safeFrom)),
      },
    ];
  });
}
