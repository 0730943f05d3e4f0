// What is opened is closed before the next item is opened, where no roof is over it.
import { describe, expect, test } from 'vitest';
import type { Schedule } from '../../language/schedule/index.ts';
import { fleetOf, onlyVisit, scheduleOf, tasksOf } from './yard.ts';

const summer = '2027-05-02';
const works = ['strip', 'lay', 'frame', 'gun', 'gun-around', 'rebed'] as const;
const order = (lines: string) => tasksOf(onlyVisit(scheduleOf(lines, summer)), ...works);
const both = 'strip curbside, roadside\n seal curbside, roadside with Lap';

/** Items that are stripped on one day and closed on a later one. */
function openOverNight({ visits }: Schedule): readonly string[] {
  return visits.flatMap(({ tasks }) =>
    tasks
      .filter(({ task }) => task === 'strip')
      .flatMap(({ items, date }) => {
        const closed = tasks.filter((one) => /^(lay|frame|gun)/.test(one.task) && one.items[0] === items[0]);
        return closed.some((one) => one.date > date) ? items : [];
      }),
  );
}

describe('the order in a visit', () => {
  test('outdoors seam by seam', () => {
    expect(order(both)).toEqual(['strip curbside', 'gun curbside', 'strip roadside', 'gun roadside']);
    expect(order('strip edges\n tape edges with Strip')).toEqual([
      'strip roadside',
      'lay roadside',
      'strip curbside',
      'lay curbside',
    ]);
  });
  test('in a bay all is stripped first', () => {
    const visit = onlyVisit(fleetOf('bay Hall indoor 40 ft', { Auk: both }, summer));
    expect(visit.bay).toBe('Hall');
    expect(tasksOf(visit, ...works)).toEqual(['strip curbside', 'strip roadside', 'gun curbside', 'gun roadside']);
  });
  test('a bay that the rig does not go into keeps no rain off', () => {
    const visit = onlyVisit(fleetOf('bay Hall indoor 10 ft', { Auk: both }, summer));
    expect(tasksOf(visit, ...works)).toEqual(['strip curbside', 'gun curbside', 'strip roadside', 'gun roadside']);
  });
  test('where tape crosses, nothing is stripped under tape that is laid already', () => {
    expect(order('strip rear, curbside, vent\n tape rear, curbside with Strip\n seal vent with Lap')).toEqual([
      'strip rear',
      'strip curbside',
      'strip vent',
      'gun-around vent',
      'lay rear',
      'lay curbside',
    ]);
    expect(order('strip curbside\n seal curbside with Lap\n tape front with Strip')).toEqual([
      'strip curbside',
      'lay front',
      'gun curbside',
    ]);
  });
  test('bedded and sealed in one go; sealed over its tape when all tape is laid', () => {
    expect(order('rebed skylight\n strip vent\n seal openings with Lap')).toEqual([
      'strip vent',
      'gun-around vent',
      'rebed skylight',
      'gun-around skylight',
    ]);
    expect(order('strip edges\n tape edges with Strip\n seal curbside with Lap').at(-1)).toBe('gun curbside');
  });
});

describe('over several days', () => {
  test('no seam that a day can hold is open over night', () => {
    for (const hours of [4, 5, 6, 8]) {
      const crew = `crew 1 for ${hours} h each on sat to sun`;
      const schedule = fleetOf(crew, { Auk: both }, summer);
      const visit = onlyVisit(schedule);
      expect(visit.days.length, `${hours} h`).toBeGreaterThan(1);
      expect(openOverNight(schedule), `${hours} h`).toEqual([]);
      expect(visit.because.join(' ')).not.toContain('Open over night');
    }
  });
  test('what takes longer than a day is open, and that is said', () => {
    const schedule = fleetOf('crew 1 for 2 h each on sat to sun', { Auk: both }, summer);
    expect(openOverNight(schedule)).toEqual(['curbside', 'roadside']);
    expect(onlyVisit(schedule).because.join(' ')).toContain('Open over night: curbside');
  });
});
