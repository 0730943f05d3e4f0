// Readings of the moisture meter over time, each against the one before at the same place.
import { moistureLevels } from '../../seams/index.ts';
import { rounded } from '../../values/exact.ts';
import type { Content } from '../sheets/element.ts';
import { typed } from '../sheets/marks.ts';
import { shown } from '../sheets/shown.ts';
import type { ReadingTold } from './account.ts';
import { dateOf } from './telling.ts';

/**
 * Rows of date, place, reading and change in percentage points. Two readings are of one place if they name the same place
 * inside, or neither names any and they share an item.
 */
export function readingRows(readings: readonly ReadingTold[]): readonly (readonly Content[])[] {
  return readings.map((reading, i) => {
    const before = readings.slice(0, i).findLast((one) => samePlace(one, reading));
    return [dateOf(reading.event), whereOf(reading), callOf(reading), changeOf(reading, before)];
  });
}

function samePlace(a: ReadingTold, b: ReadingTold): boolean {
  if (a.inside !== undefined || b.inside !== undefined) return a.inside?.toLowerCase() === b.inside?.toLowerCase();
  return a.items.some((item) => b.items.includes(item));
}

function whereOf({ items, inside }: ReadingTold): Content {
  const names = items.map(shown).join(', ');
  return inside === undefined ? names || 'place not recorded' : [`${names}${names ? ': ' : ''}`, typed(inside)];
}

const callOf = ({ moisture }: ReadingTold): string =>
  moisture.percent > moistureLevels.tooWet ? `${moisture.text}, above ${moistureLevels.tooWet} %` : moisture.text;

function changeOf(reading: ReadingTold, before: ReadingTold | undefined): string {
  if (!before) return 'first reading there';
  const points = reading.moisture.percent - before.moisture.percent;
  if (points === 0) return 'unchanged';
  const size = rounded(Math.abs(points), 1).replace(/\.0$/, '');
  return `${points > 0 ? 'up' : 'down'} ${size} ${size === '1' ? 'point' : 'points'}`;
}
