// What was found last at an item, in words, stretch by stretch.

import { moistureTrend, type SeamState, type Stretch } from '../../seams/index.ts';
import { lengthText, type System } from '../../values/display.ts';
import { shown } from './shown.ts';

/** `hairline 2026-04-04 from 9 ft to 14 ft; sound 2026-10-10`, the note and the reading beside it. */
export function lastFinding({ stretches }: SeamState, system: System): string {
  const whole = new Set(stretches.map(wordOf)).size === 1;
  const words = stretches.map((stretch) => {
    const part = whole ? '' : ` from ${lengthText(stretch.from, system)} to ${end(stretch, system)}`;
    return `${wordOf(stretch)}${part}`;
  });
  return [...new Set(words)].join('; ');
}

const end = ({ to }: Stretch, system: System) => (to === undefined ? 'its end' : lengthText(to, system));

function wordOf({ condition, notSeen, wet, defects, looked }: Stretch): string {
  const flags = [...(wet ? ['wet'] : []), ...defects].join(', ');
  const found = condition
    ? `${condition.word === 'renewed' ? 'new work, not looked at since' : condition.word} ${condition.event.last}`
    : looked
      ? `looked at ${looked.last}, no word written`
      : 'no finding is recorded';
  const unseen = notSeen ? `; could not be seen ${notSeen.last.last}` : '';
  return `${found}${flags ? ` (${flags})` : ''}${unseen}`;
}

/** The notes of the last look that speak of an item. */
export function lastNote({ item, stretches }: SeamState): string {
  const events = new Set(stretches.flatMap(({ condition, notSeen }) => [condition?.event, notSeen?.last]));
  const notes = [...events].flatMap((event) =>
    (event?.findings ?? [])
      .filter(({ places }) => places.some((place) => place.item === item.name))
      .flatMap(({ line }) => (line.note === undefined ? [] : [shown(line.note)])),
  );
  return [...new Set(notes)].join('; ');
}

/** A place with a reading: where, the last figure, and how it has changed. */
export interface ReadingPoint {
  readonly where: string;
  readonly last: string;
  readonly trend: string;
}

/** The last reading of each place, in the order of the items; one place is listed once. */
export function readingPoints(states: Iterable<SeamState>): readonly ReadingPoint[] {
  const points = new Map<string, ReadingPoint>();
  for (const { item, stretches } of states) {
    for (const stretch of stretches) {
      const reading = stretch.readings.at(-1);
      if (reading === undefined) continue;
      const where = reading.inside ? `${item.name}: ${reading.inside}` : item.name;
      const change = moistureTrend(stretch);
      const trend =
        change === undefined
          ? 'first reading'
          : change === 0
            ? 'unchanged'
            : `${change > 0 ? 'up' : 'down'} ${pointsText(change)}`;
      points.set(where, { where: shown(where), last: `${reading.text} on ${reading.event.last}`, trend });
    }
  }
  return [...points.values()];
}

function pointsText(change: number): string {
  const points = Math.round(Math.abs(change) * 10) / 10;
  return `${points} ${points === 1 ? 'point' : 'points'}`;
}
